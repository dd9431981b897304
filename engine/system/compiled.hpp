// A scenario made ready to march: numbers of one scalar type, and the structure that all lanes share.
//
// States: none, immutable. Inputs: a ValidScenario and its weather. Validity: as the scenario's. Any number
// in RaftBuild, Amounts, Fitted, Build and the stock may differ from lane to lane; Structure may not.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "bide/body/build.hpp"
#include "bide/body/rhythm.hpp"
#include "bide/cabin/envelope.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/stores/inventory.hpp"
#include "bide/system/fitted.hpp"
#include "bide/system/limits.hpp"
#include "bide/system/schedule.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

// Holds nothing but T.
template <class T>
struct RaftBuild {
  T floor_area_m2, canopy_area_m2;
  T volume_m3;  // of the air: 0 or less where people fill the cabin, which make_ready() refuses
  T gap_m2K_W, tube_side_area_m2, entrance_area_m2, minimum_opening_m2;
  T catch_area_m2, capacity_persons;
  T canopy_position, leakage_position;  // in the unmeasured ranges, 0..1
  T has_canopy, two_skins, two_entrances, sky_view;
  T behind_tubes;  // share of a seated person that sits lower than their top
  T seated_m2K_W, free_m2K_W, flat_seated_m2K_W, flat_free_m2K_W;  // floor as built, and without its air
  T insulated_floor, foam_floor;  // an inflatable or a foam floor is built in
  T opening_fraction_day, opening_fraction_night, open_above_co2_fraction, open_above_degC;
  T keeps_sustained,
      sustained_factor;     // shivering's endurance: 0 where exhaustion takes all; of what is kept up
  T shivering_tires_per_s;  // at the peak
  T swims;                  // whether people in the water want to
  body::Rhythm<T> rhythm;
  std::array<T, body::segment_count> folded;  // share of each segment's skin that the posture in the water
                                              // keeps from it
};

// Amounts at boarding, of the routine and of the rations; which actions happen, and when, is fixed by
// Structure.
template <class T>
struct Amounts {
  T water_shipped_kg, wet_fraction;    // at boarding
  T water_L_per_day, food_kJ_per_day;  // of each person
  T flares_per_night;
};

template <class T>
struct Compiled {
  Structure structure;
  RaftBuild<T> raft;
  Amounts<T> amounts;
  Levels<T> limits;
  Fitted<T> fitted;
  std::vector<body::Build<T>> persons;  // in the order of crew_order.hpp
  stores::Stock<T> stock;
  std::vector<std::size_t> file_place;  // of each person, in the file's crew; empty for lanes, whose crews
                                        // may be ordered differently
};

// Without a look at whether it can be run: make_ready() in ready.hpp has one.
Compiled<double> compile(const scenario::ValidScenario& scenario, const weather::Record& weather);

}  // namespace bide::system
