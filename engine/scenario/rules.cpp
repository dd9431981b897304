#include "bide/scenario/rules.hpp"

#include <algorithm>
#include <cmath>

#include "bide/constants/people.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/first_minutes.hpp"
#include "bide/scenario/resolve.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

struct Rules {
  const Scenario& scenario;
  Reader& reader;

  bool sound(std::initializer_list<std::string_view> pointers) const {
    return std::all_of(pointers.begin(), pointers.end(), [&](std::string_view p) { return reader.sound(p); });
  }
  // `present` must hold exactly when `wanted` does (`needed`: must be stated; else it may be left out).
  void only_with(bool wanted, bool needed, bool present, const std::string& pointer,
                 const std::string& when) {
    if (!reader.sound(pointer)) return;
    if (present && !wanted) reader.report(pointer, fmt::format("found a value; allowed only with {}", when));
    if (!present && wanted && needed) reader.report(pointer, fmt::format("missing; required with {}", when));
  }
  template <class Kinds>
  void known_key(const Kinds& kinds, const std::string& key, const std::string& pointer) {
    if (!reader.sound(pointer)) return;
    std::vector<std::string_view> keys;
    for (const auto& kind : kinds) keys.push_back(kind.key);
    if (std::find(keys.begin(), keys.end(), key) == keys.end())
      reader.report(pointer, fmt::format("found {}; allowed {}{}", in_quotes(key), joined(keys),
                                         did_you_mean(key, keys)));
  }
};

void check_heading(Rules& r) {
  if (r.sound({"/format"}) && r.scenario.format != format_word)
    r.reader.report("/format",
                    fmt::format("found {}; allowed \"{}\"", in_quotes(r.scenario.format), format_word));
  if (r.sound({"/start_time_utc"}) && !start_of(r.scenario))
    r.reader.report(
        "/start_time_utc",
        fmt::format("found {}; allowed a time in UTC from 1970 to 2100, such as \"2031-02-03T18:00:00Z\"",
                    in_quotes(r.scenario.start_time_utc)));
}

// At most the duration; and a row of the table holds every person, some 700 bytes each.
void check_interval(Rules& r) {
  if (!r.sound({"/duration_h", "/output_interval_min"})) return;
  constexpr double most_person_rows = 1e6;
  const Scenario& s = r.scenario;
  const double duration_min = s.duration_h * (hour_s / minute_s),
               persons = static_cast<double>(s.crew.size()),
               least_min = std::ceil(duration_min * persons / most_person_rows);
  if (s.output_interval_min > duration_min)
    r.reader.report("/output_interval_min",
                    fmt::format("found {} min, longer than the duration of {} h; allowed at most {}",
                                s.output_interval_min, s.duration_h, duration_min));
  if (s.output_interval_min < least_min)
    r.reader.report("/output_interval_min",
                    fmt::format("found {} min; allowed at least {} min for {} people over {} h",
                                s.output_interval_min, least_min, persons, s.duration_h));
}

void check_weather(Rules& r, const std::filesystem::path& folder) {
  if (!r.sound({"/weather/kind"})) return;
  const Weather& w = r.scenario.weather;
  const bool varies = w.kind == WeatherKind::variable, daily = w.kind == WeatherKind::daily_cycle;
  const bool steady = w.kind == WeatherKind::constant || daily, stated = steady || varies;
  const auto at = [](const char* key) { return fmt::format("/weather/{}", key); };
  const std::string fixed = "weather kind constant, daily_cycle or variable",
                    from_file = "weather kind csv or ndbc";
  const std::string waves = "weather kind constant or daily_cycle";
  r.only_with(stated, true, w.air_temperature_degC.has_value(), at("air_temperature_degC"), fixed);
  r.only_with(stated, true, w.water_temperature_degC.has_value(), at("water_temperature_degC"), fixed);
  r.only_with(stated, true, w.wind_speed_m_s.has_value(), at("wind_speed_m_s"), fixed);
  r.only_with(stated, false, w.relative_humidity_pct.has_value(), at("relative_humidity_pct"), fixed);
  r.only_with(stated, false, w.pressure_hPa.has_value(), at("pressure_hPa"), fixed);
  r.only_with(steady, false, w.wave_height_m.has_value(), at("wave_height_m"), waves);
  r.only_with(steady, false, w.wave_period_s.has_value(), at("wave_period_s"), waves);
  const std::string cycle = "weather kind daily_cycle or variable", varying = "weather kind variable";
  r.only_with(daily || varies, daily, w.air_temperature_swing_K.has_value(), at("air_temperature_swing_K"),
              daily ? "weather kind daily_cycle" : cycle);
  r.only_with(daily || varies, false, w.warmest_hour_local_h.has_value(), at("warmest_hour_local_h"), cycle);
  r.only_with(varies, false, w.wind_spread_fraction.has_value(), at("wind_spread_fraction"), varying);
  r.only_with(varies, false, w.air_temperature_spread_K.has_value(), at("air_temperature_spread_K"), varying);
  r.only_with(varies, false, w.rain_hours_fraction.has_value(), at("rain_hours_fraction"), varying);
  r.only_with(varies, false, w.seed.has_value(), at("seed"), varying);
  r.only_with(!stated, true, w.file.has_value(), at("file"), from_file);
  r.only_with(!stated, false, w.longest_gap_h.has_value(), at("longest_gap_h"), from_file);
  r.only_with(!stated, false, w.anemometer_height_m.has_value(), at("anemometer_height_m"), from_file);
  r.only_with(!stated, false, w.fallback.has_value(), at("fallback"), from_file);
  std::error_code ignored;
  if (!stated && w.file && r.sound({"/weather/file"}) &&
      !std::filesystem::is_regular_file(folder / std::filesystem::path(*w.file), ignored))
    r.reader.report(
        "/weather/file",
        fmt::format("found no file {} beside the scenario; allowed a file that exists", in_quotes(*w.file)));
}

void check_raft(Rules& r) {
  const Scenario& s = r.scenario;
  if (r.sound({"/boarding/kind", "/raft"})) {
    const bool none = s.boarding.kind == BoardingKind::none;
    if (none && s.raft) r.reader.report("/raft", "found a raft with boarding kind none; allowed no raft");
    if (!none && !s.raft)
      r.reader.report("/raft", fmt::format("missing; required with boarding kind {}", word(s.boarding.kind)));
  }
  if (!s.raft) return;
  r.known_key(catalogue().rafts, s.raft->kind, "/raft/kind");
  if (!r.sound({"/raft/kind", "/raft/canopy", "/raft/canopy_height_m"})) return;
  constexpr double lowest_canopy_m = 0.4;  // a canopy that a sitting person's shoulders would carry
  const bool covered = s.raft->canopy != CanopyKind::none;
  const double height = s.raft->canopy_height_m;
  if (covered && height < lowest_canopy_m)
    r.reader.report("/raft/canopy_height_m",
                    fmt::format("found {} m; allowed at least {} m with a canopy", height, lowest_canopy_m));
  if (!covered && height > 0)
    r.reader.report("/raft/canopy_height_m", fmt::format("found {} m without a canopy; allowed 0", height));
}

void check_boarding(Rules& r) {
  const Boarding& b = r.scenario.boarding;
  if (!r.sound({"/boarding/kind"})) return;
  r.only_with(b.kind == BoardingKind::float_free, false, b.release_depth_m.has_value(),
              "/boarding/release_depth_m", "boarding kind float_free");
  if (b.kind == BoardingKind::none && b.water_shipped_L > 0 && r.sound({"/boarding/water_shipped_L"}))
    r.reader.report("/boarding/water_shipped_L",
                    fmt::format("found {} L with boarding kind none; allowed 0", b.water_shipped_L));
  if (b.kind == BoardingKind::dry && b.minutes_in_water > 0 && r.sound({"/boarding/minutes_in_water"}))
    r.reader.report("/boarding/minutes_in_water",
                    fmt::format("found {} min with boarding kind dry; allowed 0", b.minutes_in_water));
  if (b.kind == BoardingKind::dry && b.in_water != InWater::still && r.sound({"/boarding/in_water"}))
    r.reader.report("/boarding/in_water",
                    fmt::format("found {} with boarding kind dry; allowed still", word(b.in_water)));
  const bool through_water = b.kind == BoardingKind::swim || b.kind == BoardingKind::float_free;
  if (through_water && !(b.minutes_in_water > 0) && r.sound({"/boarding/minutes_in_water"}))
    r.reader.report("/boarding/minutes_in_water",
                    fmt::format("found 0 min with boarding kind {}; allowed above 0, or boarding kind dry",
                                word(b.kind)));
  // Water wets whoever swims in it: 1 is what stands then, and what is written back.
  if (b.kind != BoardingKind::dry && b.wet_fraction < 1 && r.sound({"/boarding/wet_fraction"}))
    r.reader.report("/boarding/wet_fraction",
                    fmt::format("found {} with boarding kind {}; allowed 1, since water soaks all clothing",
                                b.wet_fraction, word(b.kind)));
  const double duration_min = r.scenario.duration_h * hour_min;
  if (b.kind == BoardingKind::none && b.minutes_in_water < duration_min &&
      r.sound({"/boarding/minutes_in_water", "/duration_h"}))
    r.reader.report("/boarding/minutes_in_water",
                    fmt::format("found {} min with boarding kind none; allowed the whole duration, {} min",
                                b.minutes_in_water, duration_min));
  if (b.minutes_in_water > duration_min && r.sound({"/boarding/minutes_in_water", "/duration_h"}))
    r.reader.report("/boarding/minutes_in_water",
                    fmt::format("found {} min, longer than the duration of {} h; allowed at most {}",
                                b.minutes_in_water, r.scenario.duration_h, duration_min));
}

// False if some of the stores are not known, so that nothing can be said of what is aboard.
bool check_stores(Rules& r) {
  const Scenario& s = r.scenario;
  r.known_key(catalogue().packs, s.stores.pack, "/stores/pack");
  if (r.sound({"/stores/pack", "/boarding/kind", "/raft"}) && !s.raft &&
      s.boarding.kind == BoardingKind::none && s.stores.pack != "none")
    r.reader.report("/stores/pack", fmt::format("found {} without a raft to carry it; allowed \"none\"",
                                                in_quotes(s.stores.pack)));
  bool known = r.sound({"/stores/pack", "/stores/extra", "/raft/kind", "/raft/capacity_persons"});
  for (std::size_t i = 0; i < s.stores.extra.size(); ++i) {
    const std::string here = child("/stores/extra", i);
    r.known_key(catalogue().items, s.stores.extra[i].kind, here + "/kind");
    known = known && r.sound({here, here + "/kind", here + "/quantity", here + "/expired"});
  }
  return known;
}

void check_body(Rules& r, const Person& person, const std::string& here);

void check_crew(Rules& r, bool stores_known) {
  const Scenario& s = r.scenario;
  double aids = 0, pads = 0;
  bool sound = stores_known;
  for (std::size_t i = 0; i < s.crew.size(); ++i) {
    const Person& person = s.crew[i];
    const std::string here = child("/crew", i);
    r.known_key(catalogue().ensembles, person.clothing, here + "/clothing");
    r.known_key(catalogue().gloves, person.gloves, here + "/gloves");
    r.known_key(catalogue().boots, person.boots, here + "/boots");
    check_body(r, person, here);
    if (person.seat == Seat::lifejacket && !person.lifejacket &&
        r.sound({here + "/seat", here + "/lifejacket"}))
      r.reader.report(here + "/seat", "found lifejacket with lifejacket false; allowed floor or foam_pad");
    if (hurt(person) && !person.injured && r.sound({here + "/injured"}))
      r.reader.report(here + "/injured",
                      "found false with blood loss, burns, hurt hands or unfit for work; allowed true");
    if (person.lost_in_first_minutes && !enter_water(s) &&
        r.sound({here + "/lost_in_first_minutes", "/boarding/kind"}))
      r.reader.report(here + "/lost_in_first_minutes",
                      "found true with boarding kind dry, where nobody enters the water; allowed false");
    aids += person.thermal_protective_aid ? 1 : 0;
    pads += person.seat == Seat::foam_pad ? 1 : 0;
    sound = sound && r.sound({here + "/seat", here + "/thermal_protective_aid"});
  }
  if (!sound || !r.sound({"/crew"})) return;
  const Stock stock = stock_of(s);
  const double aids_aboard = quantity_of(stock.aboard, ItemRole::protective_aid);
  const double pads_aboard = quantity_of(stock.aboard, ItemRole::foam_pad);
  if (aids > aids_aboard)
    r.reader.report("/crew", fmt::format("found {} in thermal protective aids; allowed at most the {} aboard",
                                         aids, aids_aboard));
  if (pads > pads_aboard)
    r.reader.report("/crew",
                    fmt::format("found {} on foam pads; allowed at most the {} aboard", pads, pads_aboard));
}

void check_rationing(Rules& r) {
  if (!r.sound({"/rationing/rule"})) return;
  const Rationing& rationing = r.scenario.rationing;
  r.only_with(rationing.rule == RationingRule::spread, true, rationing.spread_days.has_value(),
              "/rationing/spread_days", "rationing rule spread");
  r.only_with(
      rationing.rule == RationingRule::fixed_per_day || rationing.rule == RationingRule::none_first_day,
      false, rationing.water_L_per_day.has_value(), "/rationing/water_L_per_day",
      "rationing rule fixed_per_day or none_first_day");
}

void check_routine(Rules& r) {
  if (!r.sound({"/routine/bail_every_h"})) return;
  constexpr double shortest_h = 0.25;  // judgement: bailing more often is bailing without pause
  const double period_h = r.scenario.routine.bail_every_h;
  if (period_h > 0 && period_h < shortest_h)
    r.reader.report(
        "/routine/bail_every_h",
        fmt::format("found {} h; allowed 0, which is never, or at least {} h", period_h, shortest_h));
}

// Age, height and mass that no person has together.
void check_body(Rules& r, const Person& person, const std::string& here) {
  namespace c = constants;
  if (!r.sound({here + "/age_years", here + "/height_m", here + "/mass_kg"})) return;
  const double years = person.age_years - c::growth_from_years;
  const double shortest_m =
      std::min(c::shortest_adult_m.value, c::shortest_infant_m + c::shortest_growth_m_year * years);
  const double tallest_m = c::tallest_infant_m + c::tallest_growth_m_year * years;
  const bool too_short = person.height_m < shortest_m;
  if (too_short || person.height_m > tallest_m)
    return r.reader.report(
        here + "/height_m",
        fmt::format("found {} m at {} years; allowed at {} {:.3g} m at that age", person.height_m,
                    person.age_years, too_short ? "least" : "most", too_short ? shortest_m : tallest_m));
  const double bmi = person.mass_kg / (person.height_m * person.height_m);
  if (bmi < c::least_bmi || bmi > c::greatest_bmi)
    r.reader.report(
        here + "/mass_kg",
        fmt::format("found {} kg at {} m, a body mass index of {:.3g} kg/m2; allowed {:g} to {:g}",
                    person.mass_kg, person.height_m, bmi, c::least_bmi.value, c::greatest_bmi.value));
}

void check_failures(Rules& r, bool stores_known) {
  const Scenario& s = r.scenario;
  const Stock stock = stock_of(s);
  for (std::size_t i = 0; i < s.failures.size(); ++i) {
    const Failure& failure = s.failures[i];
    const std::string here = child("/failures", i);
    if (r.sound({here + "/at_h", "/duration_h"}) && failure.at_h > s.duration_h)
      r.reader.report(here + "/at_h", fmt::format("found {} h, beyond the duration; allowed at most {} h",
                                                  failure.at_h, s.duration_h));
    if (!r.sound({here + "/kind", "/raft", "/raft/kind", "/boarding/kind"})) continue;
    const auto refuse = [&](std::string_view lacks) {
      r.reader.report(here + "/kind", fmt::format("found {}; allowed only {}", word(failure.kind), lacks));
    };
    if (!s.raft) {
      refuse("with a raft");
      continue;
    }
    switch (failure.kind) {
      case FailureKind::floor_not_inflated:
        if (r.sound({"/raft/floor"}) && s.raft->floor != FloorKind::inflated)
          refuse("with an inflated floor");
        break;
      case FailureKind::canopy_torn:
      case FailureKind::closure_lost:
        if (r.sound({"/raft/canopy"}) && s.raft->canopy == CanopyKind::none) refuse("with a canopy");
        break;
      case FailureKind::pump_lost:
        if (stores_known && !(quantity_of(stock.aboard, ItemRole::pump) > 0)) refuse("with a pump aboard");
        break;
      case FailureKind::bailer_lost:
        if (stores_known && !(quantity_of(stock.aboard, ItemRole::bailer) > 0))
          refuse("with a bailer aboard");
        break;
      case FailureKind::desalinator_lost:
        if (stores_known && !(quantity_of(stock.aboard, ItemRole::desalinator) > 0))
          refuse("with a desalinator aboard");
        break;
      case FailureKind::lamp_dead:
        if (stores_known && !(quantity_of(stock.aboard, ItemRole::lamp) > 0)) refuse("with a lamp aboard");
        break;
      case FailureKind::tube_leaking:
      case FailureKind::capsize:
        break;
    }
  }
}

void check_limits(Rules& r) {
  const Limits& l = r.scenario.limits;
  const auto below = [&](const char* low_key, double low, const char* high_key, double high) {
    const std::string low_at = fmt::format("/limits/{}", low_key),
                      high_at = fmt::format("/limits/{}", high_key);
    if (r.sound({low_at, high_at}) && !(low < high))
      r.reader.report(low_at, fmt::format("found {}; allowed below {}, which is {}", low, high_key, high));
  };
  below("unconscious_core_degC", l.unconscious_core_degC, "able_core_low_degC", l.able_core_low_degC);
  below("lethal_core_low_degC", l.lethal_core_low_degC, "unconscious_core_degC", l.unconscious_core_degC);
  below("able_core_high_degC", l.able_core_high_degC, "lethal_core_high_degC", l.lethal_core_high_degC);
  below("able_water_deficit_pct", l.able_water_deficit_pct, "lethal_water_deficit_pct",
        l.lethal_water_deficit_pct);
  below("lethal_osmolality_low_mOsm_kg", l.lethal_osmolality_low_mOsm_kg, "able_osmolality_low_mOsm_kg",
        l.able_osmolality_low_mOsm_kg);
  below("able_co2_ppm", l.able_co2_ppm, "lethal_co2_ppm", l.lethal_co2_ppm);
}

}  // namespace

std::optional<double> start_of(const Scenario& scenario) {
  const std::string& text = scenario.start_time_utc;
  if (text.empty() || text.back() != 'Z') return std::nullopt;
  constexpr double start_of_1970_s = 0, start_of_2101_s = 4133980800;
  const std::optional<double> time = parse_time_utc(text);
  return time && *time >= start_of_1970_s && *time < start_of_2101_s ? time : std::nullopt;
}

void check_rules(const Scenario& scenario, const std::filesystem::path& folder, Reader& reader) {
  Rules rules{scenario, reader};
  check_heading(rules);
  check_weather(rules, folder);
  check_raft(rules);
  check_boarding(rules);
  const bool stores_known = check_stores(rules);
  check_crew(rules, stores_known);
  check_rationing(rules);
  check_routine(rules);
  check_interval(rules);
  check_failures(rules, stores_known);
  check_readiness(scenario, reader);
  check_limits(rules);
  check_uncertain(scenario, reader);
}

}  // namespace bide::scenario
