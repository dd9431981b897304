#include "bide/scenario/resolve.hpp"

#include <algorithm>

#include "bide/climate/month.hpp"
#include "bide/constants/boarding.hpp"
#include "bide/constants/growth.hpp"
#include "bide/constants/people.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/due.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/rules.hpp"
#include "bide/scenario/shape.hpp"
#include "bide/scenario/study_file.hpp"

namespace bide::scenario {
namespace {

void set_from(const Absent& absent, const Shape& shape, void* value) {
  using Kind = Shape::Kind;
  if (shape.kind == Kind::truth) as<bool>(value) = absent.truth;
  if (shape.kind == Kind::whole) as<int>(value) = static_cast<int>(absent.number);
  if (shape.kind == Kind::number) as<double>(value) = absent.number;
  if (shape.kind == Kind::text) as<std::string>(value) = std::string(absent.words);
  if (shape.kind == Kind::word) {
    const auto at = std::find(shape.words.begin(), shape.words.end(), absent.words);
    shape.set_word(value, static_cast<std::size_t>(at - shape.words.begin()));
  }
}

bool is_value(const Absent& absent) {
  using enum Absent::Kind;
  return absent.kind == number || absent.kind == truth || absent.kind == word;
}

// The defaults that describe() states as values.
void fill_stated(const Node* node, const std::string& pointer, const Shape& shape, void* out,
                 std::vector<std::string>& defaults) {
  for (const Part& part : shape.parts) {
    const Node* value = member(node, part.field.key);
    const std::string here = child(pointer, part.field.key);
    const Shape& of = *part.shape;
    const Absent& absent = part.field.absent;
    if (of.kind == Shape::Kind::parts) {
      if (value || absent.kind != Absent::Kind::empty)
        fill_stated(value, here, of, part.engaged_in(out), defaults);
    } else if (of.kind == Shape::Kind::list && of.entry->kind == Shape::Kind::parts) {
      void* list = part.engaged_in(out);
      for (std::size_t i = 0; i < of.size(list); ++i)
        fill_stated(&value->items[i], child(here, i), *of.entry, of.at(list, i), defaults);
    } else if (!value && is_value(absent)) {
      set_from(absent, of, part.engaged_in(out));
      defaults.push_back(here);
    }
  }
}

// One object of the file, and the defaults in it that follow from the rest of the scenario.
struct Filler {
  const Node* object;  // null: left out
  std::string pointer;
  std::vector<std::string>& defaults;

  template <class Slot, class T>
  void rule(Slot& slot, std::string_view key, T value) {
    if (member(object, key)) return;
    slot = value;
    defaults.push_back(child(pointer, key));
  }
};

void fill_weather(Filler fill, Weather& weather, double latitude_deg) {
  constexpr double humidity_pct = 80, standard_pressure_hPa = 1013.25, warmest_local_h = 14;
  constexpr double ndbc_height_m = 5, csv_height_m = 10;
  const bool varies = weather.kind == WeatherKind::variable;
  if (weather.kind == WeatherKind::constant || weather.kind == WeatherKind::daily_cycle || varies) {
    fill.rule(weather.relative_humidity_pct, "relative_humidity_pct", humidity_pct);
    fill.rule(weather.pressure_hPa, "pressure_hPa", standard_pressure_hPa);
    if (weather.kind != WeatherKind::constant)
      fill.rule(weather.warmest_hour_local_h, "warmest_hour_local_h", warmest_local_h);
    if (!varies) return;
    constexpr double open_sea_swing_K = 0.5;
    fill.rule(weather.air_temperature_swing_K, "air_temperature_swing_K", open_sea_swing_K);
    fill.rule(weather.wind_spread_fraction, "wind_spread_fraction", constants::no_prevailing_direction.value);
    fill.rule(weather.air_temperature_spread_K, "air_temperature_spread_K",
              climate::by_latitude(&constants::Zone::air_temperature_spread_K, latitude_deg));
    fill.rule(weather.rain_hours_fraction, "rain_hours_fraction",
              climate::by_latitude(&constants::Zone::rain_share, latitude_deg));
    fill.rule(weather.seed, "seed", 1);
    return;
  }
  fill.rule(weather.longest_gap_h, "longest_gap_h", usual_longest_gap_h);
  fill.rule(weather.anemometer_height_m, "anemometer_height_m",
            weather.kind == WeatherKind::ndbc ? ndbc_height_m : csv_height_m);
}

void fill_raft(Filler fill, Raft& raft, const RaftKind& kind) {
  fill.rule(raft.capacity_persons, "capacity_persons", kind.capacity_persons);
  fill.rule(raft.floor, "floor", kind.floor);
  fill.rule(raft.canopy, "canopy", kind.canopy);
  const bool same = raft.capacity_persons == kind.capacity_persons;
  const double share = static_cast<double>(raft.capacity_persons) / kind.capacity_persons;
  const bool covered = raft.canopy != CanopyKind::none;
  fill.rule(raft.floor_area_m2, "floor_area_m2",
            same ? kind.floor_area_m2 : constants::floor_per_person_m2 * raft.capacity_persons);
  fill.rule(raft.canopy_height_m, "canopy_height_m", covered ? kind.canopy_height_m : 0.0);
  fill.rule(raft.tube_diameter_m, "tube_diameter_m", kind.tube_diameter_m);
  fill.rule(raft.opening_area_m2, "opening_area_m2", kind.opening_area_m2);
  fill.rule(raft.rain_catch_area_m2, "rain_catch_area_m2", covered ? kind.rain_catch_area_m2 * share : 0.0);
}

void fill_person(Filler fill, Person& person) {
  fill.rule(person.body_fat_pct, "body_fat_pct",
            default_body_fat_pct(person.sex, person.age_years, person.height_m, person.mass_kg));
  fill.rule(person.vo2max_mL_kg_min, "vo2max_mL_kg_min",
            default_vo2max_mL_kg_min(person.sex, person.age_years));
  fill.rule(person.injured, "injured", hurt(person));
}

void fill_boarding(Filler fill, const Scenario& scenario, Boarding& boarding) {
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
      fill.rule(boarding.release_depth_m, "release_depth_m", constants::release_depth_m.value);
      minutes =
          float_free_minutes(boarding.release_depth_m.value(), constants::inflation_min, constants::swim_min);
      break;
    case BoardingKind::none:
      minutes = scenario.duration_h * hour_min;
      shipped_L = 0;
      break;
  }
  fill.rule(boarding.minutes_in_water, "minutes_in_water", minutes);
  fill.rule(boarding.water_shipped_L, "water_shipped_L", shipped_L);
  fill.rule(boarding.wet_fraction, "wet_fraction", wet);
}

}  // namespace

bool hurt(const Person& p) {
  return p.blood_loss_pct > 0 || p.burned_pct > 0 || p.hands != Hands::sound || !p.fit_for_work;
}

double default_body_fat_pct(Sex sex, double age_years, double height_m, double mass_kg) {
  namespace c = constants;
  const double bmi = mass_kg / (height_m * height_m);
  if (age_years < c::grown_years) {
    constexpr double oldest_years = 15;
    const double pct = c::child_fat_per_bmi * bmi -
                       c::child_fat_per_year * std::min(age_years, oldest_years) -
                       (sex == Sex::male ? c::child_fat_boys.value : 0) + c::child_fat_fixed;
    return std::clamp(pct, c::body_fat_lowest_pct.value, c::body_fat_highest_pct.value);
  }
  const double pct = c::body_fat_intercept_pct - c::body_fat_per_inverse_bmi / bmi -
                     (sex == Sex::male ? c::body_fat_male_pct.value : 0) +
                     c::body_fat_per_year_pct * age_years;
  return std::clamp(pct, c::body_fat_lowest_pct.value, c::body_fat_highest_pct.value);
}

double default_vo2max_mL_kg_min(Sex sex, double age_years) {
  namespace c = constants;
  if (age_years < c::grown_years)
    return sex == Sex::male ? c::vo2max_boys_mL_kg_min : c::vo2max_girls_mL_kg_min;
  const double young = sex == Sex::male ? c::vo2max_male_25_mL_kg_min : c::vo2max_female_25_mL_kg_min;
  const double old = sex == Sex::male ? c::vo2max_male_75_mL_kg_min : c::vo2max_female_75_mL_kg_min;
  const double age = std::clamp(age_years, c::vo2max_youngest_years.value, c::vo2max_oldest_years.value);
  return young + (old - young) * (age - c::vo2max_younger_age_years) /
                     (c::vo2max_older_age_years - c::vo2max_younger_age_years);
}

double float_free_minutes(double release_depth_m, double inflation_min, double swim_min) {
  return release_depth_m / constants::container_rise_m_s / minute_s + inflation_min + swim_min;
}

ResolvedWeather resolved_weather(const Weather& w) {
  if (w.kind == WeatherKind::csv || w.kind == WeatherKind::ndbc)
    return FileWeather{w.kind,
                       w.file.value(),
                       w.longest_gap_h.value(),
                       w.anemometer_height_m.value(),
                       w.cloud_cover_fraction.value(),
                       w.rain_mm_h.value(),
                       w.fallback.value_or(WeatherFallback{})};
  const SteadyWeather steady{w.air_temperature_degC.value(),
                             w.water_temperature_degC.value(),
                             w.relative_humidity_pct.value(),
                             w.wind_speed_m_s.value(),
                             w.cloud_cover_fraction.value(),
                             w.rain_mm_h.value(),
                             w.pressure_hPa.value(),
                             w.wave_height_m,
                             w.wave_period_s};
  if (w.kind == WeatherKind::constant) return steady;
  const DailyWeather daily{steady, w.air_temperature_swing_K.value(), w.warmest_hour_local_h.value()};
  if (w.kind == WeatherKind::daily_cycle) return daily;
  return VariableWeather{daily, w.wind_spread_fraction.value(), w.air_temperature_spread_K.value(),
                         w.rain_hours_fraction.value(), w.seed.value()};
}

const RaftKind* raft_kind_of(const Scenario& scenario) {
  return scenario.raft ? find_raft(scenario.raft->kind) : nullptr;
}

Stock stock_of(const Scenario& scenario) {
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
  const Readiness known = scenario.readiness.value_or(Readiness{});
  const double start_s = start_of(scenario).value_or(0);
  const bool old_pack = is_past(known.pack_expires, start_s),
             old_medicines = is_past(known.medicines_expire, start_s);
  const auto place = [&](const ItemKind* kind, bool old) -> std::vector<StockItem>& {
    return old || (old_medicines && kind && kind->role == ItemRole::seasick_medicine) ? stock.expired
                                                                                      : stock.aboard;
  };
  const PackKind* pack = find_pack(scenario.stores.pack);
  if (pack && scenario.raft)
    for (const PackItem& item : pack->items) {
      const ItemKind* kind = find_item(item.item);
      const bool eaten = kind && (kind->role == ItemRole::water || kind->role == ItemRole::food);
      add(place(kind, old_pack && eaten), kind, pack_quantity(item, scenario.raft->capacity_persons));
    }
  for (const Item& item : scenario.stores.extra) {
    const ItemKind* kind = find_item(item.kind);
    add(place(kind, item.expired), kind, item.quantity);
  }
  if (const auto fails = signals_that_fail(scenario))
    for (StockItem& item : stock.aboard)
      if (is_pyrotechnic(item.kind->role))
        item.quantity = signals_working(static_cast<int>(item.quantity), *fails, known.signals_position);
  std::erase_if(stock.aboard, [](const StockItem& item) { return !(item.quantity > 0); });
  return stock;
}

double quantity_of(const std::vector<StockItem>& items, ItemRole role) {
  double sum = 0;
  for (const StockItem& item : items)
    if (item.kind->role == role) sum += item.quantity;
  return sum;
}

std::vector<std::string> fill_defaults(const Node& root, Scenario& scenario) {
  std::vector<std::string> defaults;
  fill_stated(&root, "", shape_of<Scenario>(), &scenario, defaults);
  const auto object = [&](const char* key) { return Filler{member(&root, key), child("", key), defaults}; };
  fill_weather(object("weather"), scenario.weather, scenario.position.latitude_deg);
  if (const RaftKind* kind = raft_kind_of(scenario)) fill_raft(object("raft"), *scenario.raft, *kind);
  for (std::size_t i = 0; i < scenario.crew.size(); ++i)
    fill_person({&member(&root, "crew")->items[i], child("/crew", i), defaults}, scenario.crew[i]);
  fill_boarding(object("boarding"), scenario, scenario.boarding);
  constexpr double half_litre = 0.5, desalinator_h = 2;
  const RationingRule rule = scenario.rationing.rule;
  if (rule == RationingRule::none_first_day || rule == RationingRule::fixed_per_day)
    object("rationing").rule(scenario.rationing.water_L_per_day, "water_L_per_day", half_litre);
  const bool makes_water = quantity_of(stock_of(scenario).aboard, ItemRole::desalinator) > 0;
  object("routine").rule(scenario.routine.desalinator_h_per_day, "desalinator_h_per_day",
                         makes_water ? desalinator_h : 0.0);
  return defaults;
}

void fill_defaults(const Node& root, StudyFile& study) {
  std::vector<std::string> defaults;
  fill_stated(&root, "", shape_of<StudyFile>(), &study, defaults);
}

}  // namespace bide::scenario
