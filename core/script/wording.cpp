#include "script/wording.h"

#include "base/text.h"
#include "script/forms.h"
#include "script/others.h"
#include "script/phrases.h"
#include "script/spoken.h"
#include "script/title.h"

#include <algorithm>
#include <cctype>

namespace luft::script {
namespace {

using project::Moment;
using project::Verdict;
using vocabulary::Basis;
using vocabulary::Tag;

/// More than this of one moment is too much for one halt. Common practice, no source.
constexpr std::size_t kMostShades = 3;

/// A detection less sure than this is spoken of with a doubt.
constexpr Confidence kDoubt{0.65};

/// A form with its places filled, in one pass: what is put in is not searched again.
std::string put(std::string_view form, const std::string& thing, const std::string& words) {
    std::string out;
    for (std::size_t i = 0; i < form.size(); ++i) {
        const auto mark = form.substr(i, 3);
        if (mark == "{n}" || mark == "{c}") {
            out += mark == "{n}" ? thing : words;
            i += 2;
        } else {
            out += form[i];
        }
    }
    return out;
}

std::string lower_first(std::string text) {
    if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
    return text;
}

std::string without_stop(std::string text) {
    while (!text.empty() && (text.back() == '.' || std::isspace(static_cast<unsigned char>(text.back()))))
        text.pop_back();
    return text;
}

std::string quoted(const std::string& text) {
    return "“" + one_line(text) + "”";
}

/// The coach's words as they are; a full stop is added where the sentence has no end.
std::string as_written(std::string text) {
    while (!text.empty() && std::isspace(static_cast<unsigned char>(text.back())))
        text.pop_back();
    if (text.empty()) return text;
    const auto last = static_cast<unsigned char>(text.back());
    return std::isalnum(last) ? text + "." : text;
}

void say(std::string& text, const std::string& more) {
    if (more.empty()) return;
    if (!text.empty()) text += ' ';
    text += more;
}

Basis basis(const Source& source, const Tag& tag) {
    const auto* facet = source.vocabulary.facet(tag.facet);
    return facet ? facet->basis : Basis::coach;
}

} // namespace

const char* Wording::next(std::span<const char* const> forms) {
    return forms[turn_[forms.data()]++ % forms.size()];
}

std::string Wording::shade(const Moment& moment, const Tag& tag, bool first) {
    const Basis footing = basis(source_, tag);
    const Noun thing = noun(source_.vocabulary, tag);
    if (!said_.insert(tag).second)
        return put(next(footing == Basis::hint    ? std::span<const char* const>(forms::kAgainHint)
                        : footing == Basis::coach ? std::span<const char* const>(forms::kAgainCoach)
                                                  : std::span<const char* const>(forms::kAgain)),
                   thing.with_article(), {});
    const auto words = clause(tag);
    if (!words) { // one of the coach's own shades: by its name and the coach's own description
        const auto* shade = source_.vocabulary.shade(tag);
        const std::string name = "I call this " + quoted(thing.name) + ".";
        return shade && !shade->description.empty() ? name + " " + sentence(shade->description) : name;
    }
    std::span<const char* const> forms = forms::kExplain;
    if (footing == Basis::hint)
        forms = forms::kHint;
    else if (footing == Basis::coach)
        forms = forms::kCoach;
    else if (!first)
        forms = forms::kAlso;
    else if (moment.verdict == Verdict::strength)
        forms = forms::kStrength;
    else if (moment.verdict == Verdict::watch)
        forms = forms::kWatch;
    return put(next(forms), {}, *words);
}

std::string Wording::measured(const Moment& moment, const Tag& tag, Evidence& evidence) {
    if (basis(source_, tag) != Basis::measured) return {};
    evidence.measurable = true;
    const auto spoken = spoken_evidence(tag, moment.span, source_.marks);
    if (!spoken) {
        if (evidence.written.empty()) evidence.written = written_evidence(tag, moment.span, source_.marks);
        return {};
    }
    evidence.spoken = true;
    return evidence.said.insert(*spoken).second ? *spoken : std::string();
}

std::string Wording::footing(const Moment& moment, const Evidence& evidence) {
    std::string text;
    if (!evidence.spoken && !evidence.written.empty())
        text = put(next(forms::kMeasured), {}, as_written(one_line(evidence.written)));
    const bool proposed = moment.origin == project::Origin::detected;
    if (proposed && moment.confidence < kDoubt) say(text, next(forms::kUnsure));
    if (text.empty() && !evidence.spoken && evidence.measurable && !source_.marks.empty())
        text = next(forms::kByEar);
    return text;
}

std::string Wording::drill(const Moment& moment) {
    const auto* drill = source_.vocabulary.drill(moment.drill);
    if (!drill) return {};
    const std::string title = quoted(drill->title);
    if (drill->own || drill->aim.empty())
        return put(next(forms::kOwnDrill), title, sentence(one_line(drill->aim)));
    const auto forms = moment.verdict == Verdict::strength
                           ? std::span<const char* const>(forms::kDrillStrength)
                           : std::span<const char* const>(forms::kDrill);
    return put(next(forms), title, lower_first(without_stop(one_line(drill->aim))));
}

std::string Wording::heard_next(const project::ScriptItem& item) {
    const bool slow = item.replay_speed < 1;
    if (const Other* other = item.quote ? other_of(source_, item.quote->performance) : nullptr) {
        std::span<const char* const> forms = slow ? std::span<const char* const>(forms::kSlowQuote)
                                                  : std::span<const char* const>(forms::kQuote);
        if (item.replay)
            forms = slow ? std::span<const char* const>(forms::kSlowQuoteAndReplay)
                         : std::span<const char* const>(forms::kQuoteAndReplay);
        return put(next(forms), spoken_name(other->performance), {});
    }
    if (!item.replay) return {};
    return next(slow ? std::span<const char* const>(forms::kSlowReplay)
                     : std::span<const char* const>(forms::kReplay));
}

std::string Wording::talk(const Moment& moment, const project::ScriptItem& item) {
    std::string text = as_written(moment.remark);
    Evidence evidence;
    evidence.written = moment.evidence;
    for (std::size_t i = 0; i < std::min(moment.shades.size(), kMostShades); ++i) {
        say(text, shade(moment, moment.shades[i], i == 0));
        say(text, measured(moment, moment.shades[i], evidence));
    }
    say(text, footing(moment, evidence));
    say(text, drill(moment));
    say(text, heard_next(item));
    return text;
}

} // namespace luft::script
