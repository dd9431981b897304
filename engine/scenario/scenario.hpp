// What the user wrote: plain structs, one per JSON object, keys equal to member names.
//
// States: none. Inputs: a scenario file (see validate.hpp). Validity: ranges stand in describe.hpp, once per
// field, and so do the defaults, which validation fills in before anybody reads a scenario (resolve.hpp):
// what is set here stands nowhere. An empty optional is a state of its own, such as no raft; what it means is
// in describe.hpp. Units are in the names.
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
  std::optional<double> relative_humidity_pct;
  std::optional<double> wind_speed_m_s;        // at 10 m
  std::optional<double> cloud_cover_fraction;  // default 0.7
  std::optional<double> rain_mm_h;             // default 0
  std::optional<double> wave_height_m;         // significant; default from wind
  std::optional<double> wave_period_s;         // mean zero-crossing; default from wind
  std::optional<double> pressure_hPa;          // default 1013.25
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
  int capacity_persons = 0;
  FloorKind floor = FloorKind::single;
  CanopyKind canopy = CanopyKind::none;
  double floor_area_m2 = 0;
  double canopy_height_m = 0;
  double tube_diameter_m = 0;
  double opening_area_m2 = 0;  // all entrances, fully open
  double rain_catch_area_m2 = 0;
  // Unmeasured: where in the published range of each (0 = lowest heat loss, 0.5 = central, 1 = highest).
  double canopy_heat_loss_position = 0;
  double leakage_position = 0;

  bool operator==(const Raft&) const = default;
};

enum class Sex { female, male };
enum class Seat { floor, lifejacket, foam_pad };
enum class Hands { sound, no_fine_work, useless };

struct Person {
  Sex sex = Sex::male;
  double age_years = 35;
  double height_m = 1.75;
  double mass_kg = 75;
  double body_fat_pct = 0;
  double vo2max_mL_kg_min = 0;
  std::string clothing;         // catalogue key of an ensemble
  std::string gloves = "none";  // catalogue keys of what else hands and feet have
  std::string boots = "none";
  bool lifejacket = false;
  bool thermal_protective_aid = false;  // wears one in the raft
  Seat seat = Seat::floor;
  bool injured = false;
  double blood_loss_pct = 0;          // of all blood, before the start
  double burned_pct = 0;              // of the skin
  double fever_K = 0;                 // rise of the set point
  Hands hands = Hands::sound;         // what hurt hands can still do
  bool fit_for_work = true;           // pumping, bailing and the like
  bool seasick_medicine = false;      // takes it as soon as aboard, if the stores hold any
  double seasick_susceptibility = 0;  // 1 = population mean
  // What this person alone needs (needs.hpp); the run does not depend on it.
  double medicine_doses_per_day = 0;  // of their own medicine, as prescribed
  double medicine_doses = 0;          // of it, carried
  bool inhaler = false;               // needs one at hand
  std::string food_allergy{};         // "none", or to what
  // Starting state
  double hours_since_meal_h = 0;
  double hours_since_drink_h = 0;
  double hours_since_sleep_h = 0;
  double water_deficit_pct = 0;  // % of body mass at the start
  double exertion_met = 0;       // metabolic level in the last hour before
  double blood_alcohol_mg_dL = 0;
  bool already_seasick = false;
  bool lost_in_first_minutes = false;  // in the water: dead from the start
  double heat_acclimatised = 0;        // 0 not used to heat, 1 used to it
  // This person beside the average one: factors, and a shift
  double shivering_drive_factor = 0, shivering_ceiling_factor = 0, resting_metabolism_factor = 0,
         sweat_factor = 0, swim_endurance_factor = 0;
  double core_limit_shift_K = 0;  // of the limits of the cold

  bool operator==(const Person&) const = default;
};

enum class BoardingKind { dry, swim, float_free, none };
enum class InWater { still, swimming, knees_drawn_up, huddled };

struct Boarding {
  BoardingKind kind = BoardingKind::dry;  // none: nobody reaches a raft, immersion to the end
  double minutes_in_water = 0;
  InWater in_water = InWater::still;      // what people do there
  std::optional<double> release_depth_m;  // float_free alone (MSC/Circ.811: 2 to 4 m)
  double water_shipped_L = 0;             // on the floor at boarding
  double wet_fraction = 0;                // of the clothing, 0 dry to 1 soaked

  bool operator==(const Boarding&) const = default;
};

// One kind of item, of the catalogue of foods, water, gear, medicine and signals.
struct Item {
  std::string kind;
  double quantity = 0;
  bool expired = false;  // counts as absent, and is listed

  bool operator==(const Item&) const = default;
};

struct Stores {
  std::string pack;         // catalogue key; contents follow from the raft's capacity
  std::vector<Item> extra;  // grab bag

  bool operator==(const Stores&) const = default;
};

enum class RationingRule { fixed_per_day, none_first_day, spread, by_thirst };

struct Rationing {
  RationingRule rule = RationingRule::fixed_per_day;
  std::optional<double> water_L_per_day;  // per person; none_first_day and fixed_per_day alone
  std::optional<double> spread_days;      // days the stock is to last; spread alone
  double food_kJ_per_day = 0;             // per person
  int issues_per_day = 0;
  bool injured_first = false;  // water on the first day for the injured
  bool food_only_with_water = false;

  bool operator==(const Rationing&) const = default;
};

struct Routine {
  double opening_fraction_day = 0;  // of the entrance area
  double opening_fraction_night = 0;
  double minimum_opening_m2 = 0;     // never less
  double open_above_degC = 0;        // entrances opened above this inside, by day or night
  double open_above_co2_ppm = 0;     // opened above this for 1 h or more, shut below half
  bool huddle = false;               // sit close together
  double bail_every_h = 0;           // 0 = never
  bool wring_clothes = false;        // once aboard and after a soaking
  bool inflate_floor = false;        // pump up an inflatable floor
  double desalinator_h_per_day = 0;  // shared among the able
  bool catch_rain = false;
  bool damp_clothes_in_heat = false;  // by day when inside is above 30 C
  double sleep_h_per_night = 0;
  double flares_per_night = 0;  // signals planned

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
  desalinator_lost,
  lamp_dead
};

struct Failure {
  FailureKind kind = FailureKind::canopy_torn;
  double at_h = 0;
  std::optional<double> in_waves_from_m = {};  // significant; lower at that hour: it does not happen

  bool operator==(const Failure&) const = default;
};

// Physiological thresholds.
struct Limits {
  double able_core_low_degC = 0;
  double able_core_high_degC = 0;
  double able_water_deficit_pct = 0;
  double unconscious_core_degC = 0;
  double lethal_core_low_degC = 0;
  double lethal_core_high_degC = 0;
  double lethal_water_deficit_pct = 0;
  double lethal_osmolality_mOsm_kg = 0;
  double able_osmolality_low_mOsm_kg = 0;
  double lethal_osmolality_low_mOsm_kg = 0;
  double able_co2_ppm = 0;
  double lethal_co2_ppm = 0;

  bool operator==(const Limits&) const = default;
};

enum class ShiveringEndurance { tires, tires_late, gives_out };

// Choices between published laws where nobody has measured, and coefficient factors for sensitivity work.
struct Model {
  ShiveringEndurance shivering_endurance = ShiveringEndurance::tires;
  // Places in the ranges of the model's own error, 0 least, 0.5 as computed, 1 most.
  double heat_made_position = 0, tissue_conductance_position = 0, clothing_conductance_position = 0,
         water_loss_position = 0;

  bool operator==(const Model&) const = default;
};

// Pointers of the places in the ranges of the model's own error.
inline constexpr const char* model_error_positions[] = {
    "/model/heat_made_position", "/model/tissue_conductance_position", "/model/clothing_conductance_position",
    "/model/water_loss_position"};

// The longest stay that is simulated, h.
inline constexpr double longest_h = 1440;

struct Scenario {
  std::string format;
  std::string name;
  std::string setting;         // where this is made up
  std::string start_time_utc;  // ISO 8601, "2031-02-03T18:00:00Z"
  double duration_h = 120;
  double output_interval_min = 0;
  Position position;
  Weather weather;
  std::optional<Raft> raft;  // absent only with boarding kind none
  std::vector<Person> crew;
  Boarding boarding;
  Stores stores;
  std::optional<Readiness> readiness;  // empty: dates and stowage have no bearing
  Rationing rationing;
  Routine routine;
  std::vector<Failure> failures;
  Limits limits;
  Model model;
  std::optional<Uncertain> uncertain;

  bool operator==(const Scenario&) const = default;
};

}  // namespace bide::scenario
