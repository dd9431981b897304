#include "validation/hands/foot.hpp"

#include <array>
#include <vector>

#include "bide/body/control.hpp"
#include "bide/body/hands.hpp"
#include "bide/cabin/films.hpp"
#include "bide/constants/control.hpp"
#include "bide/core/units.hpp"

namespace bide::validation::hands {

namespace {

constexpr double blood_degC = 36.8, other_skin_degC = 31.8;

// The body's block with all cores at the blood's and all other skin at one temperature.
std::vector<double> body_of(const body::Build<double>& b) {
  std::vector<double> x(static_cast<std::size_t>(body::at::count), blood_degC);
  for (int s = 0; s < body::segment_count; ++s)
    x[static_cast<std::size_t>(body::at::node(s, body::skin))] = other_skin_degC;
  for (int l = 0; l < body::tissue_count; ++l)
    x[static_cast<std::size_t>(body::at::node(body::feet, l))] =
        b.setpoint_degC[body::feet][static_cast<std::size_t>(l)];
  return x;
}

// Heat that the blood brings to each layer of the foot, W/K.
std::array<double, body::tissue_count> perfusion(const body::Build<double>& b, const std::vector<double>& x) {
  using namespace body;
  constexpr double shift_K = 0, rhythm_K = 0;
  const Commands<double> c = commands(b, x.data(), shift_K, rhythm_K);
  const double open = unconstricted(b.constriction_share[feet], c);
  const auto& basal = b.basal_flow_L_h[feet];
  const double muscle_warmer_K = x[at::node(feet, muscle)] - b.setpoint_degC[feet][muscle];
  std::array<double, tissue_count> flow{
      basal[core], basal[muscle] * cold_tissue_factor(muscle_warmer_K), fat_flow_L_h(basal[fat], open),
      skin_flow_L_h(basal[skin], b.dilatation_share[feet], open, c, c.local[feet])};
  const double deep = smoothstep(c.constriction, 0.0, constants::countercurrent_full_constriction.value);
  const double reaching = perfusion_per_flow(flow[core] + flow[muscle] + flow[fat] + flow[skin],
                                             b.countercurrent_W_K[feet] * deep);
  for (double& each : flow) each *= reaching;
  return flow;
}

}  // namespace

double toe_in_still_water_degC(const system::Compiled<double>& compiled, double water_degC, double from_min,
                               double to_min) {
  using namespace body;
  constexpr double step_s = 0.5;
  const Build<double>& b = compiled.persons[0];
  std::vector<double> x = body_of(b);
  double* foot = x.data() + at::node(feet, core);
  const double film_W_K = cabin::water_film_W_m2K(0.0) * b.area_m2[feet];
  double sum_degC = 0;
  int count = 0;
  for (double t_s = 0; t_s < to_min * minute_s; t_s += step_s) {
    const auto blood_W_K = perfusion(b, x);
    const double at_rest = cold_tissue_factor(foot[core] - b.setpoint_degC[feet][core]);
    if (t_s >= from_min * minute_s) {
      const double share = constants::toe_area_share;
      sum_degC += toe_degC(foot[core], share * blood_W_K[skin], share * film_W_K, water_degC);
      ++count;
    }
    std::array<double, tissue_count> gain_W;
    for (std::size_t l = 0; l < tissue_count; ++l)
      gain_W[l] = at_rest * b.basal_W[feet][l] + blood_W_K[l] * (blood_degC - foot[l]);
    for (std::size_t l = 0; l + 1 < tissue_count; ++l) {
      const double outward_W = b.conductance_W_K[feet][l] * (foot[l] - foot[l + 1]);
      gain_W[l] -= outward_W, gain_W[l + 1] += outward_W;
    }
    gain_W[skin] -= film_W_K * (foot[skin] - water_degC);
    for (std::size_t l = 0; l < tissue_count; ++l) foot[l] += step_s * gain_W[l] / b.capacity_J_K[feet][l];
  }
  return sum_degC / count;
}

}  // namespace bide::validation::hands
