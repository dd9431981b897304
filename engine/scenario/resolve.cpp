#include "bide/scenario/resolve.hpp"

#include <algorithm>

#include "bide/constants/boarding.hpp"
#include "bide/constants/people.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/reader.hpp"

namespace bide::scenario {
namespace {

const Node* member(const Node* node, std::string_view key) {
  if (!node || node->kind != Node::Kind::object) return nullptr;
  for (const auto& [name, value] : node->members)
    if (name == key) return &value;
  return nullptr;
}

template <class T>
void set_from(const Absent& absent, T& value) {
  if constexpr (std::is_same_v<T, bool>) {
    value = absent.truth;
  } else if constexpr (std::is_arithmetic_v<T>) {
    value = static_cast<T>(absent.number);
  } else if constexpr (std::is_same_v<T, std::string>) {
    value = std::string(absent.words);
  } else if constexpr (std::is_enum_v<T>) {
    const auto words = words_of<T>;
    value = static_cast<T>(std::find(words.begin(), words.end(), absent.words) - words.begin());
  }
}

struct Filler {
  std::vector<std::string>& defaults;

  // The defaults that describe() states as values.
  template <class S>
  void stated_values(const Node* node, const std::string& pointer, S& out) {
    describe(As<S>{}, [&](auto field_member, const Field& field) {
      auto& slot = out.*field_member;
      using M = std::remove_reference_t<decltype(slot)>;
      using T = Plain<M>;
      const std::string here = child(pointer, field.key);
      const Node* value = member(node, field.key);
      if constexpr (detail::is_list<T>) {
        if constexpr (detail::is_described<typename T::value_type>)
          for (std::size_t i = 0; i < slot.size(); ++i)
            stated_values(&value->items[i], child(here, i), slot[i]);
      } else if constexpr (detail::is_named<T>) {
        return;  // nothing uncertain has a default
      } else if constexpr (detail::is_described<T>) {
        if (!value && field.absent.kind == Absent::Kind::empty) return;
        stated_values(value, here, engage(slot));
      } else {
        using Kind = Absent::Kind;
        const Kind kind = field.absent.kind;
        if (value || (kind != Kind::number && kind != Kind::truth && kind != Kind::word)) return;
        set_from(field.absent, engage(slot));
        defaults.push_back(here);
      }
    });
  }

  // A default that follows from the rest of the scenario.
  template <class T>
  void rule(std::optional<T>& slot, const std::string& pointer, T value) {
    if (slot) return;
    slot = value;
    defaults.push_back(pointer);
  }

  template <class T>
  static T& engage(std::optional<T>& slot) {
    return slot ? *slot : slot.emplace();
  }
  template <class T>
  static T& engage(T& slot) {
    return slot;
  }
};

void fill_weather(Filler& fill, Weather& weather) {
  constexpr double humidity_pct = 80, standard_pressure_hPa = 1013.25, warmest_local_h = 14, gap_h = 3;
  constexpr double ndbc_height_m = 5, csv_height_m = 10;
  if (weather.kind == WeatherKind::constant || weather.kind == WeatherKind::daily_cycle) {
    fill.rule(weather.relative_humidity_pct, "/weather/relative_humidity_pct", humidity_pct);
    fill.rule(weather.pressure_hPa, "/weather/pressure_hPa", standard_pressure_hPa);
    if (weather.kind == WeatherKind::daily_cycle)
      fill.rule(weather.warmest_hour_local_h, "/weather/warmest_hour_local_h", warmest_local_h);
    return;
  }
  fill.rule(weather.longest_gap_h, "/weather/longest_gap_h", gap_h);
  fill.rule(weather.anemometer_height_m, "/weather/anemometer_height_m",
            weather.kind == WeatherKind::ndbc ? ndbc_height_m : csv_height_m);
}

void fill_raft(Filler& fill, Raft& raft, const RaftKind& kind) {
  fill.rule(raft.capacity_persons, "/raft/capacity_persons", kind.capacity_persons);
  fill.rule(raft.floor, "/raft/floor", kind.floor);
  fill.rule(raft.canopy, "/raft/canopy", kind.canopy);
  const bool same = *raft.capacity_persons == kind.capacity_persons;
  const double share = static_cast<double>(*raft.capacity_persons) / kind.capacity_persons;
  const bool covered = *raft.canopy != CanopyKind::none;
  fill.rule(raft.floor_area_m2, "/raft/floor_area_m2",
            same ? kind.floor_area_m2 : constants::floor_per_person_m2 * *raft.capacity_persons);
  fill.rule(raft.canopy_height_m, "/raft/canopy_height_m", covered ? kind.canopy_height_m : 0.0);
  fill.rule(raft.tube_diameter_m, "/raft/tube_diameter_m", kind.tube_diameter_m);
  fill.rule(raft.opening_area_m2, "/raft/opening_area_m2", kind.opening_area_m2);
  fill.rule(raft.rain_catch_area_m2, "/raft/rain_catch_area_m2",
            covered ? kind.rain_catch_area_m2 * share : 0.0);
}

void fill_crew(Filler& fill, std::vector<Person>& crew) {
  for (std::size_t i = 0; i < crew.size(); ++i) {
    Person& person = crew[i];
    const std::string here = child("/crew", i);
    fill.rule(person.body_fat_pct, here + "/body_fat_pct",
              default_body_fat_pct(person.sex, person.age_years, person.height_m, person.mass_kg));
    fill.rule(person.vo2max_mL_kg_min, here + "/vo2max_mL_kg_min",
              default_vo2max_mL_kg_min(person.sex, person.age_years));
  }
}

void fill_boarding(Filler& fill, const Scenario& scenario, Boarding& boarding) {
  constexpr double minutes_per_hour = 60;
  const auto persons = static_cast<double>(scenario.crew.size());
  double minutes = 0, shipped_L = constants::shipped_swim_L_per_person * persons, wet = 1;
  switch (boarding.kind) {
    case BoardingKind::dry:
      shipped_L = constants::shipped_dry_L_per_person * persons;
      wet = 0;
      break;
    case BoardingKind::swim:
      minutes = constants::swim_min;
      break;
    case BoardingKind::float_free:
      fill.rule(boarding.release_depth_m, "/boarding/release_depth_m", constants::release_depth_m.value);
      minutes = float_free_minutes(*boarding.release_depth_m);
      break;
    case BoardingKind::none:
      minutes = scenario.duration_h * minutes_per_hour;
      shipped_L = 0;
      break;
  }
  fill.rule(boarding.minutes_in_water, "/boarding/minutes_in_water", minutes);
  fill.rule(boarding.in_water, "/boarding/in_water",
            boarding.kind == BoardingKind::swim ? InWater::swimming : InWater::still);
  fill.rule(boarding.water_shipped_L, "/boarding/water_shipped_L", shipped_L);
  fill.rule(boarding.wet_fraction, "/boarding/wet_fraction", wet);
}

}  // namespace

double default_body_fat_pct(Sex sex, double age_years, double height_m, double mass_kg) {
  namespace c = constants;
  const double bmi = mass_kg / (height_m * height_m);
  const double pct = c::body_fat_intercept_pct - c::body_fat_per_inverse_bmi / bmi -
                     (sex == Sex::male ? c::body_fat_male_pct.value : 0) +
                     c::body_fat_per_year_pct * age_years;
  return std::clamp(pct, c::body_fat_lowest_pct.value, c::body_fat_highest_pct.value);
}

double default_vo2max_mL_kg_min(Sex sex, double age_years) {
  namespace c = constants;
  const double young = sex == Sex::male ? c::vo2max_male_25_mL_kg_min : c::vo2max_female_25_mL_kg_min;
  const double old = sex == Sex::male ? c::vo2max_male_75_mL_kg_min : c::vo2max_female_75_mL_kg_min;
  const double age = std::clamp(age_years, c::vo2max_youngest_years.value, c::vo2max_oldest_years.value);
  return young + (old - young) * (age - c::vo2max_younger_age_years) /
                     (c::vo2max_older_age_years - c::vo2max_younger_age_years);
}

double float_free_minutes(double release_depth_m) {
  return release_depth_m / constants::container_rise_m_s / minute_s + constants::inflation_min +
         constants::swim_min;
}

Stock stock_of(const Scenario& scenario, const RaftKind* raft_kind) {
  Stock stock;
  const auto add = [](std::vector<StockItem>& list, const ItemKind* kind, double quantity) {
    if (!kind || !(quantity > 0)) return;
    const auto at =
        std::find_if(list.begin(), list.end(), [&](const StockItem& each) { return each.kind == kind; });
    if (at == list.end())
      list.push_back({kind, quantity});
    else
      at->quantity += quantity;
  };
  const PackKind* pack = find_pack(scenario.stores.pack);
  if (pack && scenario.raft && raft_kind) {
    const int capacity = scenario.raft->capacity_persons.value_or(raft_kind->capacity_persons);
    for (const PackItem& item : pack->items)
      add(stock.aboard, find_item(item.item), pack_quantity(item, capacity));
  }
  for (const Item& item : scenario.stores.extra)
    add(item.expired.value_or(false) ? stock.expired : stock.aboard, find_item(item.kind), item.quantity);
  return stock;
}

double quantity_of(const std::vector<StockItem>& items, ItemRole role) {
  double sum = 0;
  for (const StockItem& item : items)
    if (item.kind->role == role) sum += item.quantity;
  return sum;
}

void fill_defaults(const Node& root, const RaftKind* raft_kind, Scenario& scenario,
                   std::vector<std::string>& defaults) {
  Filler fill{defaults};
  fill.stated_values(&root, "", scenario);
  fill_weather(fill, scenario.weather);
  if (scenario.raft && raft_kind) fill_raft(fill, *scenario.raft, *raft_kind);
  fill_crew(fill, scenario.crew);
  fill_boarding(fill, scenario, scenario.boarding);
  constexpr double half_litre = 0.5, desalinator_h = 2;
  const RationingRule rule = scenario.rationing->rule;
  if (rule == RationingRule::none_first_day || rule == RationingRule::fixed_per_day)
    fill.rule(scenario.rationing->water_L_per_day, "/rationing/water_L_per_day", half_litre);
  const bool makes_water = quantity_of(stock_of(scenario, raft_kind).aboard, ItemRole::desalinator) > 0;
  fill.rule(scenario.routine->desalinator_h_per_day, "/routine/desalinator_h_per_day",
            makes_water ? desalinator_h : 0.0);
}

}  // namespace bide::scenario
