#include "cli/script_text.h"

#include "base/text.h"
#include "cli/table.h"

namespace luft::cli {
namespace {

using project::ScriptItem;
using project::ScriptItemKind;

constexpr int kIndent = 6;

bool has_place(const ScriptItem& item) {
    return item.kind == ScriptItemKind::stop || item.kind == ScriptItemKind::aside;
}

std::string rate_text(const project::ScriptSettings& settings) {
    if (settings.frame_rate_num == 0) return "the video's, or 25 without video";
    if (settings.frame_rate_den == 1) return std::to_string(settings.frame_rate_num);
    return std::to_string(settings.frame_rate_num) + "/" + std::to_string(settings.frame_rate_den);
}

} // namespace

std::string_view word(ScriptItemKind kind) {
    switch (kind) {
    case ScriptItemKind::opening:
        return "opening";
    case ScriptItemKind::stop:
        return "stop";
    case ScriptItemKind::aside:
        return "aside";
    case ScriptItemKind::closing:
        return "closing";
    }
    return {};
}

std::string item_name(const ScriptItem& item) {
    return std::string(word(item.kind)) + " " + std::to_string(item.id.value) +
           (has_place(item) ? " at " + clock_text(item.at) : "");
}

std::string item_text(const ScriptItem& item, const Labels& labels) {
    std::string id = std::to_string(item.id.value);
    if (id.size() < 4) id.insert(0, 4 - id.size(), ' ');
    std::string text = id + "  " + std::string(word(item.kind));
    if (has_place(item)) text += " at " + clock_text(item.at);
    const std::string speed = " at " + fixed(100 * item.replay_speed, 0) + " %";
    if (item.quote) text += ", quotes " + quote_text(*item.quote, labels) + speed;
    if (item.replay)
        text += ", replays " + clock_text(item.replay->start) + "-" + clock_text(item.replay->end) + speed;
    if (item.resume) text += ", goes on at " + clock_text(*item.resume);
    if (item.moment) text += ", about moment " + std::to_string(item.moment->value);
    if (item.rehearsed) text += ", rehearsed " + fixed(item.rehearsed->value(), 1) + " s";
    if (item.own_words) text += ", own words";
    return text + "\n" + paragraph(item.text, kIndent);
}

Json item_value(const ScriptItem& item, const Labels& labels) {
    Json replay = nullptr;
    if (item.replay) replay = {{"start_s", item.replay->start.value()}, {"end_s", item.replay->end.value()}};
    return {{"id", item.id.value},
            {"kind", word(item.kind)},
            {"at_s", has_place(item) ? Json(item.at.value()) : Json(nullptr)},
            {"moment", item.moment ? Json(item.moment->value) : Json(nullptr)},
            {"quote", quote_value(item.quote, labels)},
            {"replay", replay},
            {"replay_speed", item.replay_speed},
            {"resume_s", item.resume ? Json(item.resume->value()) : Json(nullptr)},
            {"text", item.text},
            {"own_words", item.own_words},
            {"rehearsed_s", item.rehearsed ? Json(item.rehearsed->value()) : Json(nullptr)}};
}

std::string settings_text(const project::ScriptSettings& settings) {
    return "Talk:                " + fixed(settings.words_per_minute, 0) + " words a minute\n" +
           "Least between stops: " + fixed(settings.least_between_stops.value(), 1) + " s\n" +
           "Longest quote:       " + fixed(settings.longest_quote.value(), 1) + " s without a word\n" +
           "Most quoted:         " +
           (settings.most_quoted_share ? fixed(100 * *settings.most_quoted_share, 0) + " % of the recording"
                                       : std::string("not limited")) +
           "\nFrame rate:          " + rate_text(settings) +
           (settings.drop_frame ? ", drop-frame where it applies" : ", never drop-frame") + "\n";
}

Json settings_value(const project::ScriptSettings& settings) {
    return {
        {"words_per_minute", settings.words_per_minute},
        {"least_between_stops_s", settings.least_between_stops.value()},
        {"longest_quote_s", settings.longest_quote.value()},
        {"most_quoted_share", settings.most_quoted_share ? Json(*settings.most_quoted_share) : Json(nullptr)},
        {"frame_rate", settings.frame_rate_num == 0 ? Json(nullptr) : Json(rate_text(settings))},
        {"drop_frame", settings.drop_frame}};
}

} // namespace luft::cli
