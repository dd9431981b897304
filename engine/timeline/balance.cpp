#include "timeline/balance.hpp"

#include <cmath>

#include "constants/fuel.hpp"

namespace bide::timeline {

namespace {

// Entry `i` at the end less at the start.
struct Change {
  const double *start, *end;
  double operator()(int i) const { return end[i] - start[i]; }
};

constexpr double fat_kJ_kg = constants::fat_kJ_g.value * constants::g_kg;
constexpr double protein_kJ_kg = constants::protein_kJ_g.value * constants::g_kg;

struct Account {
  double residual = 0, throughput = 0;
  void stored(double x) { residual += x; }
  void came(double x) { residual -= x, throughput += std::abs(x); }
  void went(double x) { residual += x, throughput += std::abs(x); }
};

}  // namespace

std::vector<Ledger> ledgers(const system::System<double>& system, const std::vector<double>& start,
                            const std::vector<double>& end) {
  namespace cabin_at = system::at;
  const Change cabin{start.data(), end.data()};
  const auto& compiled = system.compiled();
  const auto& held = system.held;
  const double volume = compiled.raft.volume_m3;
  Account heat, water, co2, food;

  heat.stored(cabin(cabin_at::total_stored));
  heat.residual -= cabin(cabin_at::total_from_bodies);  // cancels against the bodies below
  heat.came(cabin(cabin_at::total_from_sun));
  heat.came(cabin(cabin_at::total_latent));
  heat.went(cabin(cabin_at::total_through_canopy));
  heat.went(cabin(cabin_at::total_to_sea));
  heat.went(cabin(cabin_at::total_by_air));

  water.stored(volume * cabin(cabin_at::vapour) + cabin(cabin_at::film_mass) + cabin(cabin_at::water_mass));
  water.came(cabin(cabin_at::total_water_in));
  water.went(cabin(cabin_at::total_vapour_out));
  water.came(held.water_shipped_kg);
  water.went(held.water_bailed_kg);
  water.came(held.air_replaced_kg);
  water.throughput += cabin(cabin_at::total_absolute_water);

  co2.stored(volume * cabin(cabin_at::co2));
  co2.came(cabin(cabin_at::total_co2_made));
  co2.went(cabin(cabin_at::total_co2_out));
  co2.came(held.co2_replaced_m3);

  for (int p = 0; p < compiled.structure.persons; ++p) {
    namespace at = body::at;
    const auto offset = static_cast<std::size_t>(system::person_offset(p));
    const Change person{start.data() + offset, end.data() + offset};
    const system::HeldPerson<double>& books = held.persons[static_cast<std::size_t>(p)];
    heat.stored(person(at::total_stored));
    heat.residual +=
        person(at::total_to_air) + person(at::total_to_canopy) + person(at::total_to_floor_water);
    heat.came(person(at::total_metabolic));
    heat.came(person(at::total_sun));
    heat.went(person(at::total_to_floor));
    heat.went(person(at::total_to_sea));
    heat.went(person(at::total_to_tube));
    heat.went(person(at::total_evaporation));
    heat.went(person(at::total_breath));  // its dry part comes back in what the cabin had from bodies
    heat.throughput += person(at::total_absolute_heat);

    double clothing = 0;
    for (int s = 0; s < body::segment_count; ++s) clothing += person(at::clothing_water + s);
    water.stored(person(at::body_water) + person(at::gut_water) + clothing);
    water.came(person(at::total_metabolic_water));
    water.came(person(at::total_wetting));
    water.came(books.drunk_kg);
    water.came(books.soaked_kg);
    water.went(books.wrung_kg);
    water.went(person(at::total_urine));
    water.went(person(at::total_vomit));
    water.went(person(at::total_overboard));

    food.stored(person(at::glycogen) + fat_kJ_kg * person(at::fat_mass) +
                protein_kJ_kg * person(at::protein_mass) + person(at::gut_carbohydrate) +
                person(at::gut_fat) + person(at::gut_protein));
    food.came(books.eaten_kJ);
    food.went(person(at::total_oxidised));
  }
  return {{"heat", heat.residual, heat.throughput},
          {"water", water.residual, water.throughput},
          {"co2", co2.residual, co2.throughput},
          {"food_energy", food.residual, food.throughput}};
}

}  // namespace bide::timeline
