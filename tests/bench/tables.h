// The figures of all groups, as tables.
#pragma once

#include "bench/groups.h"
#include "bench/score.h"
#include "bench/table.h"

namespace luft::bench {

/// A group and what was scored in it.
struct GroupScores {
    std::string name;
    Kind kind = Kind::solo;
    Scores scores;
};

Table pitch_table(const std::vector<GroupScores>& groups);
Table breath_table(const std::vector<GroupScores>& groups);
Table note_table(const std::vector<GroupScores>& groups);
Table sound_table(const std::vector<GroupScores>& groups);
Table onset_table(const std::vector<GroupScores>& groups);
Table calibration_table(const std::vector<GroupScores>& groups);

/// All of them, in that order.
std::vector<Table> score_tables(const std::vector<GroupScores>& groups);

} // namespace luft::bench
