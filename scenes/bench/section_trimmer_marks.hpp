#pragma once

#include "scenes/bench/section_marks.hpp"
#include "scenes/bench/section_trimmer_plan.hpp"

#include <vector>

// The words and figures of the hand-held machine's drawing, by what they belong to.

namespace scenes {

std::vector<Mark> pump_marks(const TrimmerPlan& p);
std::vector<Mark> metering_marks(const TrimmerPlan& p);
std::vector<Mark> throat_marks(const TrimmerPlan& p);
std::vector<Mark> engine_marks(const TrimmerPlan& p);
std::vector<Mark> supply_marks(const TrimmerPlan& p);

} // namespace scenes
