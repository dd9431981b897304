// Two results beside each other: what sets them apart, and by which flows of heat and water.
//
// States: none. Inputs: timelines and the outcomes read off them. Output: numbers; no words. Validity: means
// are taken over the time in which both crews are whole and aboard. What counts as apart stands in
// constants/evidence.hpp.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "bide/outcome/outcome.hpp"

namespace bide::outcome {

// Who comes later (or is warmer, drier...): the first, the second, or no difference that the model can tell.
enum class Ahead { first, second, indistinguishable };

// Times that may lie beyond a horizon. Later counts as ahead; a time beyond the horizon is later than any
// that comes well before it, and two such times cannot be separated.
// @param first_s, second_s                 s; empty beyond the horizon
// @param first_horizon_s, second_horizon_s until when each was followed, s, above 0
Ahead later(const std::optional<double>& first_s, double first_horizon_s,
            const std::optional<double>& second_s, double second_horizon_s);

// The time in which two runs are compared flow by flow: from when everybody is aboard in both until the first
// death in either, or the nearer horizon.
struct Window {
  double from_s = 0, to_s = 0;
};
Window common_window(const timeline::Timeline& first, const timeline::Timeline& second);

// Means over a window. Losses are positive when they leave the cabin.
struct CabinHeat {
  double inside_degC = 0, outside_degC = 0;
  double bodies_W = 0, sun_W = 0;
  double canopy_W = 0, sea_W = 0, air_W = 0;
};
CabinHeat cabin_heat(const timeline::Timeline& timeline, const Window& window);

// Why one cabin is warmer than another, in kelvins that add up to the difference. Both sit above the outside
// by (heat that leaves to the outside) / (heat passed for each kelvin), so with q = canopy + air and u = q /
// excess
//   d(excess) = dq (1/u1 + 1/u2) / 2  -  (q1 + q2) / 2 * du / (u1 u2),
// which is exact; dq falls apart into bodies, sun, sea and the rest (condensation, and heat stored), du into
// canopy and air. Positive: makes the second warmer.
struct WarmerBecause {
  double outside_K = 0, bodies_K = 0, sun_K = 0, sea_K = 0, rest_K = 0, canopy_K = 0, air_K = 0;
  // For each kelvin between inside and outside, of first and second.
  std::array<double, 2> canopy_W_K{}, air_W_K{};
};
// Nothing when a cabin is too near to the outside for its losses to be given for each kelvin.
std::optional<WarmerBecause> warmer_because(const CabinHeat& first, const CabinHeat& second);

// Means over a window and over the persons, W; positive leaves the body.
struct BodyHeat {
  double made_W = 0, shivering_W = 0;
  double air_W = 0, canopy_W = 0, floor_W = 0, water_W = 0, evaporation_W = 0, breath_W = 0;
};
BodyHeat body_heat(const timeline::Timeline& timeline, const Window& window);

// To the end of the window, for each person in the mean.
struct WaterFlows {
  double drunk_L = 0, urine_L = 0, sweat_L = 0, deficit_pct = 0;
};
WaterFlows water_flows(const timeline::Timeline& timeline, const Window& window);

// The coldest air inside after boarding.
struct Coldest {
  double degC = 0, time_s = 0;
  bool dark = false;      // no daylight outside
  bool settling = false;  // in the first hour aboard, before the cabin has warmed
};

// What became of one person in a run; an empty time lies beyond the horizon.
struct PersonEnd {
  std::optional<double> able_s, alive_s;
  system::Limit able_limit = system::Limit::none, alive_limit = system::Limit::none,
                next_limit = system::Limit::none;  // next: the nearest not yet reached
  double next_margin_fraction = 0;                 // of the margin to it, what is left
};

// How long a crew lasts in one run.
struct Endurance {
  CrewTimes able, alive;
  // Of the first person to reach one; and the nearest that somebody has not reached.
  system::Limit able_limit = system::Limit::none, alive_limit = system::Limit::none,
                next_limit = system::Limit::none;
  double next_margin_fraction = 0;  // of the margin to it, what is left
  // Who reaches a limit of being able first; where nobody does, who is nearest to a limit, to a whole per
  // cent of the margin. Places in the crew, from 0.
  std::vector<int> first_persons;
};
// @param persons the crew, in its order
Endurance endurance_of(const std::vector<PersonEnd>& persons);

// What a comparison shows of one run.
struct Figures : Endurance {
  Evidence able_evidence, alive_evidence;
  std::optional<Coldest> coldest_inside;
  double lowest_core_degC = 0, highest_core_degC = 0, worst_water_deficit_pct = 0;
  double foul_air_h = 0;  // CO2 above the workday limit
  double highest_co2_ppm = 0;
  std::vector<StoreOutcome> stores;
  double horizon_s = 0;
  bool in_raft = true;
};
Figures figures_of(const Outcome& outcome, const timeline::Timeline& timeline);

// Two rafts of one crew: the worse of each figure. The times of the crew are not put together here, and
// persons and evidence are those of the first.
Figures worse(const Figures& first, const Figures& second);

}  // namespace bide::outcome
