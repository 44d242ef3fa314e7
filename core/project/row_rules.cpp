#include "project/row_rules.h"

#include <algorithm>
#include <cmath>

namespace luft::project {
namespace {

constexpr RowRule kRules[] = {
    {"script_settings", "words_per_minute > 0 AND least_between_stops_s >= 0 AND longest_quote_s > 0 AND "
                        "frame_rate_num >= 0 AND frame_rate_den > 0 AND drop_frame IN (0, 1)"},
    {"script_settings", "most_quoted_share BETWEEN 0 AND 1"},
    {"performance",
     "media_size > 0 AND length(media_sha256) = 64 AND duration_s >= 0 AND sample_rate_hz >= 0 AND "
     "channels >= 0 AND frame_rate_num >= 0 AND frame_rate_den > 0 AND has_video IN (0, 1)"},
    {"mark", "start_s >= 0 AND end_s >= start_s AND end_s < 1e12 AND confidence BETWEEN 0 AND 1"},
    {"moment", "start_s >= 0 AND end_s > start_s AND end_s < 1e12 AND confidence BETWEEN 0 AND 1"},
    {"sung_word", "ordinal > 0 AND length(text) > 0 AND joins IN (0, 1) AND at_s >= 0 AND at_s < 1e12 AND "
                  "placed IN (0, 1)"},
    {"script_item", "position > 0 AND at_s >= 0 AND at_s < 1e12 AND replay_speed BETWEEN 0.25 AND 1"},
    {"script_item", "replay_start_s >= 0"},
    {"script_item", "replay_end_s > replay_start_s"},
    {"script_item", "(replay_start_s IS NULL) = (replay_end_s IS NULL)"},
    {"script_item", "resume_s >= 0"},
    {"script_item", "rehearsed_s >= 0"},
    {"moment_beside", "start_s >= 0 AND end_s > start_s AND end_s < 1e12"},
    {"script_quote", "start_s >= 0 AND end_s > start_s AND end_s < 1e12"},
    {"pin", "first_s >= 0 AND first_s < 1e12 AND second_s >= 0 AND second_s < 1e12 AND first < second"},
    {"listening", "tuning_hz > 0 AND duration_s >= 0 AND frames >= 0 AND one_register IN (0, 1)"},
};

} // namespace

std::span<const RowRule> row_rules() {
    return kRules;
}

bool can_be_curve(std::string_view name, std::span<const float> values) {
    const bool share = name == "voicing" || name == "head_register";
    return std::ranges::none_of(values,
                                [&](float v) { return std::isinf(v) || (share && (v < 0 || v > 1)); });
}

} // namespace luft::project
