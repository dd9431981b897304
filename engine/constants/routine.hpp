// The crew's day: when things are done where the scenario does not say.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced check_interval_s{600, "s", "", "conditions of people are read every ten minutes",
                                          Trust::judgement};
inline constexpr Sourced lapse_s{1800, "s", "", "unable longer than this counts as unable for good",
                                 Trust::judgement};
inline constexpr Sourced bedtime_h{23, "h", "", "local solar time", Trust::judgement, 20, 24};
inline constexpr Sourced signal_hour_h{21, "h", "", "local solar time of planned signals", Trust::judgement,
                                       19, 24};
inline constexpr Sourced wring_after_h{
    0.5, "h", "", "clothes are wrung half an hour after boarding", Trust::judgement, 0.1, 2};
inline constexpr Sourced medicine_after_h{0.1, "h", "", "tablets are taken as soon as aboard",
                                          Trust::common_practice};
inline constexpr Sourced medicine_interval_h{8, "h", "", "six doses last 48 h, so one in eight hours",
                                             Trust::derived};

inline constexpr Sourced heat_rule_span_K{
    2, "K", "", "entrances opened for heat are shut again this much below", Trust::judgement, 1, 4};
inline constexpr Sourced open_for_air_least_s{
    3600, "s", "", "nobody opens and shuts an entrance every ten minutes", Trust::judgement, 1800, 7200};
inline constexpr Sourced damp_above_degC{
    30, "degC", "", "inside temperature above which clothes are kept damp by day", Trust::judgement, 27, 33};
inline constexpr Sourced damp_wetness{0.5, "-", "", "of what soaked cloth holds", Trust::judgement, 0.3, 1.0};

// ---- labour: share of the greatest oxygen uptake that can be kept up for t minutes, (log 5700 - log t)
// / 3.1
inline constexpr Sourced sustained_none_min{5700, "min", "bonjer1968",
                                            "at which the share would be 0, recalled", Trust::from_memory};
inline constexpr Sourced sustained_decades{3.1, "-", "bonjer1968", "recalled", Trust::from_memory};
inline constexpr Sourced sustained_longest_h{8, "h", "bonjer1968", "a working day, recalled: 0.35",
                                             Trust::from_memory};

}  // namespace bide::constants
