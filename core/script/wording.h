// The words of a first draft: short sentences that read well aloud.
#pragma once

#include "script/cue_sheet.h"

#include <map>
#include <set>
#include <span>
#include <string>

namespace luft::script {

/// Words a script from its start to its end. Each kind of sentence has several forms, taken in turn, so that
/// no form comes twice in a row; the same calls give the same words.
class Wording {
  public:
    explicit Wording(const Source& source) : source_(source) {}

    /// Who sings what, from where, what to listen for, and what else is heard: of `middle`, the stops and
    /// asides as they will stand between opening and closing.
    std::string opening(const std::vector<const project::Moment*>& moments,
                        const std::vector<project::ScriptItem>& middle);
    /// The coach's remark first; then the shades, each by the footing of its facet (measured, hint, coach's
    /// view); the evidence; the drill; and what is heard next, if the item says so: another performance, and
    /// the moment again.
    std::string talk(const project::Moment& moment, const project::ScriptItem& item);
    /// Strengths, what to watch, what to practise.
    std::string closing(const std::vector<const project::Moment*>& moments);

  private:
    std::string shade(const project::Moment& moment, const vocabulary::Tag& tag, bool first);
    /// What the evidence of one moment has come to so far.
    struct Evidence {
        std::set<std::string> said;
        std::string written;     ///< what the ear noted, for want of something that can be spoken
        bool spoken = false;     ///< a mark spoke for a shade
        bool measurable = false; ///< there is a shade that is measured at all
    };
    /// What the marks say about one shade.
    std::string measured(const project::Moment& moment, const vocabulary::Tag& tag, Evidence& evidence);
    /// What all of it rests on: noted evidence, a doubt, or the ear alone.
    std::string footing(const project::Moment& moment, const Evidence& evidence);
    std::string drill(const project::Moment& moment);
    std::string heard_next(const project::ScriptItem& item);
    /// Another performance, as one speaks of it.
    [[nodiscard]] std::string spoken_name(const project::Performance& other) const;
    [[nodiscard]] std::string compared(const std::vector<project::ScriptItem>& middle) const;
    std::vector<std::string> drills_to_take_home(const std::vector<const project::Moment*>& moments);
    std::string nouns(const std::vector<const project::Moment*>& moments, project::Verdict verdict);
    /// The next form of a kind of sentence.
    const char* next(std::span<const char* const> forms);

    const Source& source_;
    std::map<const void*, std::size_t> turn_; ///< how often each kind of sentence was used
    std::set<vocabulary::Tag> said_;          ///< shades already explained
};

} // namespace luft::script
