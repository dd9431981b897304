// The two-node model of a person: one skin, one core. It is the plain predictor that the engine's many nodes
// have to beat to be worth having; nothing in the engine uses it.
//
// Gagge, Stolwijk & Nishi 1971 (ASHRAE Trans. 77), in the form of Gagge, Fobelets & Berglund 1986; the
// constants at second hand, from a public library's transcription. Made for sedentary people between about 5
// and 45 degC of air; in cold water it is far outside that, and is run there as the naive answer that it is.
#pragma once

namespace bide::validation {

struct TwoNodePlace {
  double around_degC = 22;
  double vapour_pressure_Pa = 1200;
  double film_W_m2K = 3.1;       // convection of air, or of water when in it
  double radiation_W_m2K = 4.7;  // 0 in water
  double clothing_m2K_W = 0;
  double metabolic_W_m2 = 58.2;  // without shivering
  bool in_water = false;         // no sweat leaves the skin
};

struct TwoNodePerson {
  double mass_kg = 70, area_m2 = 1.8;
};

inline constexpr double two_node_start_degC = 36.8;  // of the core

struct TwoNodeEnd {
  double core_degC, skin_degC;
  double metabolic_W;  // mean over the time asked for
};

// From the neutral state (skin 33.7, core 36.8 degC), carried for `to_s`; the mean is over the time after
// `from_s`.
TwoNodeEnd two_node(const TwoNodePlace& place, const TwoNodePerson& person, double to_s, double from_s = 0);

}  // namespace bide::validation
