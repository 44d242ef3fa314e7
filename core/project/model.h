// The domain: a piece, its performances, their marks, the coach's moments, and the script made of them.
#pragma once

#include "marks/listen.h"
#include "vocabulary/vocabulary.h"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace luft::project {

/// Row ids, each kind a type of its own. 0 means 'not stored yet' and never names a row.
template <class Tag>
struct Id {
    std::int64_t value = 0;
    constexpr auto operator<=>(const Id&) const = default;
};
using PerformanceId = Id<struct PerformanceTag>;
using MarkId = Id<struct MarkTag>;
using MomentId = Id<struct MomentTag>;
using ScriptItemId = Id<struct ScriptItemTag>;
using SungWordId = Id<struct SungWordTag>;

/// The song itself. Everything but the title may be empty.
struct Piece {
    std::string title;
    std::string writer;
    std::string key;
    std::string metre;
    std::string words; ///< one sung line a line
};

/// How a performance's recording is found and known again.
struct MediaLink {
    std::string path;      ///< relative to the project file's folder, '/' between parts; the name if carried
    std::int64_t size = 0; ///< bytes
    std::string fingerprint; ///< SHA-256, see base/fingerprint.h
    bool carried = false;    ///< the bytes themselves are in the project file
};

/// What the media file says of itself; kept so that a project tells it without the media at hand.
struct MediaFacts {
    Seconds duration;
    int sample_rate_hz = 0;
    int channels = 0;
    bool has_video = false;
    std::int64_t frame_rate_num = 0; ///< frames a second as a fraction; 0/1 without video
    std::int64_t frame_rate_den = 1;
};

/// One recorded rendition of the piece.
struct Performance {
    PerformanceId id;
    std::string label; ///< short name, unique in the project: "A", "mara-live"
    std::string performer;
    std::string source;     ///< where the recording is from
    std::string permission; ///< under which permission it is quoted
    MediaLink media;
    MediaFacts facts;
};

/// Summary of the last detection; the curves are read apart (Project::curves).
struct Listening {
    voice::Setting setting = voice::Setting::alone;
    Hertz tuning{440};
    voice::Loudness loudness;
    bool one_register = true;
    Seconds duration;
};

enum class MarkState { proposed, kept, dropped };
enum class Origin { detected, coach };
enum class MarkKind { note, breath, phrase, register_switch };

/// A mark as the project keeps it. `what` holds span, confidence and evidence of its own kind; a mark the
/// coach set has confidence 1. Dropped marks stay stored, so that detecting again doesn't bring them back.
struct Mark {
    MarkId id;
    PerformanceId performance;
    MarkState state = MarkState::proposed;
    Origin origin = Origin::detected;
    std::variant<marks::Note, marks::Breath, marks::Phrase, marks::Switch> what;

    [[nodiscard]] MarkKind kind() const { return static_cast<MarkKind>(what.index()); }
    [[nodiscard]] Span span() const; ///< a switch has length 0
    [[nodiscard]] Confidence confidence() const;
    [[nodiscard]] const std::string& evidence() const;
};

enum class Verdict { strength, watch, explain };

/// A span of another performance that is heard beside one's own.
struct Quote {
    PerformanceId performance;
    Span span;
    bool operator==(const Quote&) const = default;
};

/// Places of two performances that belong together, as the coach says: aligning goes through them.
struct Pin {
    Seconds a, b;
    bool operator==(const Pin&) const = default;
};

/// A span that the coach means to speak about.
struct Moment {
    MomentId id;
    PerformanceId performance;
    Span span;
    MarkState state = MarkState::kept;
    Origin origin = Origin::coach;
    Verdict verdict = Verdict::explain;
    std::string remark;   ///< the coach's words; never written by the program
    std::string evidence; ///< what was measured (proposals; may be empty)
    Confidence confidence{1};
    std::vector<vocabulary::Tag> shades;
    std::string drill;                ///< key of a drill; may be empty
    std::optional<Quote> beside = {}; ///< the counterpart that the remark compares with
};

/// One sung syllable, or a word that isn't divided, where it stands under the line.
struct SungWord {
    SungWordId id;
    PerformanceId performance;
    std::string text;    ///< without white space and without the hyphen
    bool joins = false;  ///< a hyphen ties it to the next one: a part of the same word
    Seconds at;          ///< its left edge
    bool placed = false; ///< by the coach: spreading the words again leaves it there
    bool operator==(const SungWord&) const = default;
};

enum class ScriptItemKind { opening, stop, aside, closing };

/// One part of the script, in order of `position`.
struct ScriptItem {
    ScriptItemId id;
    PerformanceId performance;
    int position = 0;
    ScriptItemKind kind = ScriptItemKind::stop;
    std::optional<MomentId> moment;   ///< what it speaks about
    Seconds at;                       ///< stop: where playback halts; aside: where the words start
    std::optional<Span> replay;       ///< stop: span played again after the talk
    std::optional<Quote> quote = {};  ///< stop: played after the talk, before the replay
    double replay_speed = 1;          ///< of replay and quote, 0.25 to 1
    std::optional<Seconds> resume;    ///< stop: where playback goes on; none = where it halted
    std::string text;                 ///< the words to speak
    bool own_words = false;           ///< the coach wrote or changed the text: a new draft leaves it alone
    std::optional<Seconds> rehearsed; ///< measured talk time; overrides the words-a-minute estimate
};

/// What the script is laid out by. Defaults as in the guide; each can be set per project.
struct ScriptSettings {
    double words_per_minute = 150;
    Seconds least_between_stops{8};          ///< two stops closer than this are reported
    Seconds longest_quote{30};               ///< a longer stretch of recording without a word is reported
    std::optional<double> most_quoted_share; ///< 0 to 1 of the recording; none = not limited
    std::int64_t frame_rate_num = 0;         ///< programme frame rate; 0 = the video's, or 25 without video
    std::int64_t frame_rate_den = 1;
    bool drop_frame = true; ///< timecode counts drop-frame where the rate is 29.97 or 59.94
};

/// One entry of the journal, as `undo` and `redo` name it.
struct JournalEntry {
    std::int64_t id = 0;
    std::string label; ///< what was done: "drop breath at 0:12.3"
    std::string when;  ///< UTC, ISO 8601
    bool undone = false;
};

} // namespace luft::project
