#include "validation/judge/parameters.hpp"

#include <cmath>

#include "bide/body/anthropometry.hpp"
#include "bide/body/model_error.hpp"
#include "bide/constants/people.hpp"
#include "bide/constants/regions.hpp"

namespace bide::validation {

namespace {

constexpr double ln_2 = 0.693;
const double error_farthest = std::log(constants::error_farthest_factor);

}  // namespace

// Farthest: a factor of two or more, or three standard deviations of what is better known.
const std::array<Parameter, parameter_count> parameters{{
    {"heat made by shivering", constants::spread_shivering_drive, error_farthest},
    {"tissue conductance",
     {0.25, "-", "", "conductivities of muscle and fat differ by a quarter between tables (recalled)",
      Trust::judgement, 0.15, 0.4},
     error_farthest},
    {"clothing conductance",
     {0.15, "-", "", "insulation of one outfit differs by 10 to 20 % between manikins (recalled)",
      Trust::judgement, 0.1, 0.3},
     error_farthest},
    {"water lost through skin", constants::spread_sweat, error_farthest},
    {"ceiling of shivering", constants::spread_shivering_ceiling, 0.48},
    {"resting heat", constants::spread_resting_metabolism, 0.27},
    {"resting flow of muscle",
     {0.33, "-", "", "1 to 3 mL/(100 g min) as a 90 % range (recalled): ln 3 / 3.29", Trust::judgement, 0.2,
      0.5},
     ln_2},
    {"counter-current exchange",
     {0.35, "-", "", "known within a factor of two or so; no spread is published", Trust::judgement, 0.2,
      0.7},
     ln_2},
}};

void scale(const Point& point, system::Compiled<double>& compiled) {
  const auto factor = [&](std::size_t i) { return std::exp(point[i]); };
  for (body::Build<double>& b : compiled.persons) {
    body::apply({factor(of_heat_made), factor(of_tissue), factor(of_clothing), factor(of_water_loss)}, b);
    b.shivering_ceiling_W *= factor(of_ceiling);
    double basal_W = b.finger_basal_W *= factor(of_resting_heat);
    for (int s = 0; s < body::segment_count; ++s) {
      for (double& node : b.basal_W[s]) basal_W += node *= factor(of_resting_heat);
      b.basal_flow_L_h[s][body::muscle] *= factor(of_muscle_flow);
      b.countercurrent_W_K[s] *= factor(of_countercurrent);
    }
    b.basal_total_W = basal_W;
    b.shivering_sustained_W =
        factor(of_heat_made) *
        body::sustained_shivering_W(basal_W, b.shivering_ceiling_W / factor(of_heat_made));
  }
}

}  // namespace bide::validation
