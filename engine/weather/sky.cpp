#include "bide/weather/sky.hpp"

#include "bide/core/interpolate.hpp"

namespace bide::weather {

double diffuse_share(double clearness) {
  using namespace constants;
  if (clearness > diffuse_clear_from) return diffuse_clear;
  if (clearness <= diffuse_cloudy_to) return 1 - diffuse_cloudy_slope * clearness;
  double share = 0;
  for (std::size_t i = std::size(diffuse_polynomial); i-- > 0;)
    share = share * clearness + diffuse_polynomial[i];
  return share;
}

double seated_irradiance_W_m2(double apparent_elevation_deg, double distance_AU, double global_W_m2) {
  using namespace constants;
  const double sine = std::sin(apparent_elevation_deg * (std::numbers::pi / 180));
  if (sine <= 0) return 0;
  const double without_air_W_m2 = solar_constant_W_m2 / (distance_AU * distance_AU);
  const double clearness = global_W_m2 / (without_air_W_m2 * sine);
  const double diffuse = diffuse_share(clearness);
  const double beam_W_m2 = (1 - diffuse) * clearness * without_air_W_m2;
  return interpolate_linear(seated_elevation_deg, seated_projected_share, apparent_elevation_deg) *
             beam_W_m2 +
         0.5 * diffuse * global_W_m2;
}

}  // namespace bide::weather
