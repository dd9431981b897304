// What the user wrote: plain structs, one per JSON object, keys equal to member names.
//
// States: none. Inputs: a scenario file (see validate.hpp). Validity: ranges stand in describe.hpp, once per
// field. An empty optional means "not stated"; validation fills it and marks the default, but for the few
// that describe.hpp says stay empty. Units are in the names.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/scenario/uncertain.hpp"

namespace bide::scenario {

struct Position {
  double latitude_deg = 0;
  double longitude_deg = 0;

  bool operator==(const Position&) const = default;
};

// Replaces a quantity that a weather file lacks, or lacks for longer than `longest_gap_h`.
struct WeatherFallback {
  std::optional<double> air_temperature_degC;
  std::optional<double> water_temperature_degC;
  std::optional<double> dew_point_degC;
  std::optional<double> wind_speed_m_s;
  std::optional<double> pressure_hPa;

  bool operator==(const WeatherFallback&) const = default;
};

enum class WeatherKind { constant, daily_cycle, variable, csv, ndbc };

struct Weather {
  WeatherKind kind = WeatherKind::constant;
  // constant, daily_cycle and variable (there they are means); with csv and ndbc these are errors, except
  // cloud and rain (never in ndbc files).
  std::optional<double> air_temperature_degC;  // daily mean for daily_cycle
  std::optional<double> water_temperature_degC;
  std::optional<double> relative_humidity_pct;  // default 80
  std::optional<double> wind_speed_m_s;         // at 10 m
  std::optional<double> cloud_cover_fraction;   // default 0.7
  std::optional<double> rain_mm_h;              // default 0
  std::optional<double> wave_height_m;          // significant; default from wind
  std::optional<double> wave_period_s;          // mean zero-crossing; default from wind
  std::optional<double> pressure_hPa;           // default 1013.25
  // daily_cycle and variable
  std::optional<double> air_temperature_swing_K;  // half the difference of day and night
  std::optional<double> warmest_hour_local_h;     // local solar time, default 14
  // variable
  std::optional<double> wind_spread_fraction;      // of each component, over the mean speed
  std::optional<double> air_temperature_spread_K;  // standard deviation without the daily cycle
  std::optional<double> rain_hours_fraction;       // share of hours with rain
  std::optional<int> seed;                         // which of many weathers
  // csv and ndbc
  std::optional<std::string> file;            // relative to the scenario file
  std::optional<double> longest_gap_h;        // interpolated up to here, default 3
  std::optional<double> anemometer_height_m;  // default 5 for ndbc, 10 for csv
  std::optional<WeatherFallback> fallback;

  bool operator==(const Weather&) const = default;
};

enum class FloorKind { single, inflated, foam };
enum class CanopyKind { none, one_skin, two_skins };

struct Raft {
  std::string kind;  // catalogue key
  // Each overrides the catalogue entry.
  std::optional<int> capacity_persons;
  std::optional<FloorKind> floor;
  std::optional<CanopyKind> canopy;
  std::optional<double> floor_area_m2;  // default 0.372 m2 per person of capacity (LSA Code 4.2.3)
  std::optional<double> canopy_height_m;
  std::optional<double> tube_diameter_m;
  std::optional<double> opening_area_m2;  // all entrances, fully open
  std::optional<double> rain_catch_area_m2;
  // Unmeasured: where in the published range of each (0 = lowest heat loss, 0.5 = central, 1 = highest).
  std::optional<double> canopy_heat_loss_position;
  std::optional<double> leakage_position;

  bool operator==(const Raft&) const = default;
};

enum class Sex { female, male };
enum class Seat { floor, lifejacket, foam_pad };

struct Person {
  Sex sex = Sex::male;
  double age_years = 35;
  double height_m = 1.75;
  double mass_kg = 75;
  std::optional<double> body_fat_pct;          // default from BMI, sex and age
  std::optional<double> vo2max_mL_kg_min;      // default from sex and age
  std::string clothing = "temperate_sailing";  // catalogue key of an ensemble
  std::optional<bool> lifejacket;              // default true
  std::optional<bool> thermal_protective_aid;  // wears one in the raft; default false
  std::optional<Seat> seat;                    // default floor
  std::optional<bool> injured;                 // default false
  std::optional<bool> seasick_medicine;  // takes it as soon as aboard, if the stores hold any; default true
  std::optional<double> seasick_susceptibility;  // 1 = population mean
  // Starting state
  std::optional<double> hours_since_meal_h;   // default 4
  std::optional<double> hours_since_drink_h;  // default 1
  std::optional<double> hours_since_sleep_h;  // default 8
  std::optional<double> water_deficit_pct;    // % of body mass at the start; default 0
  std::optional<double> exertion_met;         // metabolic level in the last hour before; default 1.5
  std::optional<double> blood_alcohol_mg_dL;  // default 0
  std::optional<bool> already_seasick;        // default false
  // This person beside the average one: factors, default 1, and a shift, default 0.
  std::optional<double> shivering_drive_factor, shivering_ceiling_factor, resting_metabolism_factor,
      sweat_factor;
  std::optional<double> core_limit_shift_K;  // of the limits of the cold

  bool operator==(const Person&) const = default;
};

enum class BoardingKind { dry, swim, float_free, none };
enum class InWater { still, swimming, knees_drawn_up, huddled };

struct Boarding {
  BoardingKind kind = BoardingKind::dry;   // none: nobody reaches a raft, immersion to the end
  std::optional<double> minutes_in_water;  // swim: default 10; float_free: from release depth if absent
  std::optional<InWater> in_water;         // what people do there; default swimming for swim, else still
  std::optional<double> release_depth_m;   // float_free: default 3 (MSC/Circ.811: 2 to 4 m)
  std::optional<double> water_shipped_L;   // on the floor at boarding; default by kind
  std::optional<double> wet_fraction;      // of the clothing, 0 dry to 1 soaked; default by kind

  bool operator==(const Boarding&) const = default;
};

// One kind of item, of the catalogue of foods, water, gear, medicine and signals.
struct Item {
  std::string kind;
  double quantity = 1;
  std::optional<bool> expired;  // counts as absent, and is listed

  bool operator==(const Item&) const = default;
};

struct Stores {
  std::string pack = "none";  // catalogue key; contents follow from the raft's capacity
  std::vector<Item> extra;    // grab bag

  bool operator==(const Stores&) const = default;
};

enum class RationingRule { fixed_per_day, none_first_day, spread, by_thirst };

struct Rationing {
  RationingRule rule = RationingRule::none_first_day;
  std::optional<double> water_L_per_day;     // per person; default 0.5 (none_first_day, fixed_per_day)
  std::optional<double> spread_days;         // spread: days the stock is to last
  std::optional<double> food_kJ_per_day;     // per person; default 3350
  std::optional<int> issues_per_day;         // default 3
  std::optional<bool> injured_first;         // default true; water on the first day for the injured
  std::optional<bool> food_only_with_water;  // default true

  bool operator==(const Rationing&) const = default;
};

struct Routine {
  std::optional<double> opening_fraction_day;    // of the entrance area; default 0.3
  std::optional<double> opening_fraction_night;  // default 0.05
  std::optional<double> minimum_opening_m2;      // never less; default 0.01
  std::optional<double> open_above_degC;  // entrances opened above this inside, by day or night; default 27
  std::optional<double>
      open_above_co2_ppm;              // opened above this for 1 h or more, shut below half; default 15000
  std::optional<bool> huddle;          // sit close together; default true
  std::optional<double> bail_every_h;  // 0 = never; default 2
  std::optional<bool> wring_clothes;   // once aboard and after a soaking; default true
  std::optional<bool> inflate_floor;   // pump up an inflatable floor; default true
  std::optional<double> desalinator_h_per_day;  // shared among the able; default 2 if one is aboard
  std::optional<bool> catch_rain;               // default true
  std::optional<bool> damp_clothes_in_heat;     // by day when inside is above 30 C; default false
  std::optional<double> sleep_h_per_night;      // default 6
  std::optional<double> flares_per_night;       // signals planned; default 0

  bool operator==(const Routine&) const = default;
};

enum class FailureKind {
  floor_not_inflated,
  canopy_torn,
  closure_lost,
  tube_leaking,
  pump_lost,
  capsize,
  bailer_lost,
  desalinator_lost
};

struct Failure {
  FailureKind kind = FailureKind::canopy_torn;
  double at_h = 0;

  bool operator==(const Failure&) const = default;
};

// Physiological thresholds; an empty one takes the sourced default (constants/limits.hpp).
struct Limits {
  std::optional<double> able_core_low_degC;
  std::optional<double> able_core_high_degC;
  std::optional<double> able_water_deficit_pct;
  std::optional<double> unconscious_core_degC;
  std::optional<double> lethal_core_low_degC;
  std::optional<double> lethal_core_high_degC;
  std::optional<double> lethal_water_deficit_pct;
  std::optional<double> lethal_osmolality_mOsm_kg;
  std::optional<double> able_co2_ppm;
  std::optional<double> lethal_co2_ppm;

  bool operator==(const Limits&) const = default;
};

enum class ShiveringEndurance { tires, never_tires, gives_out };

// Choices between published laws where nobody has measured, and coefficient factors for sensitivity work.
struct Model {
  std::optional<ShiveringEndurance> shivering_endurance;  // default tires

  bool operator==(const Model&) const = default;
};

struct Scenario {
  std::string format = "bide scenario 1";
  std::string name;
  std::string setting;         // where this is made up
  std::string start_time_utc;  // ISO 8601, "2031-02-03T18:00:00Z"
  double duration_h = 120;
  std::optional<double> output_interval_min;  // default 10
  Position position;
  Weather weather;
  std::optional<Raft> raft;  // absent only with boarding kind none
  std::vector<Person> crew;
  Boarding boarding;
  Stores stores;
  std::optional<Rationing> rationing;
  std::optional<Routine> routine;
  std::vector<Failure> failures;
  std::optional<Limits> limits;
  std::optional<Model> model;
  std::optional<Uncertain> uncertain;

  bool operator==(const Scenario&) const = default;
};

}  // namespace bide::scenario
