// Every field of a scenario, listed once: key, unit, range, default and one sentence.
//
// describe(As<S>{}, visitor) calls visitor(&S::member, Field) for each member of S in file order. Reading,
// range checks, defaults, writing, the JSON Schema and the field tables all go through here, so a field that
// is missing here does not exist for any of them (a test counts the members). Ranges are what the engine
// accepts, wider than what has been measured; cautions.hpp says when a value is outside what has been
// measured.
#pragma once

#include "bide/constants/climate.hpp"
#include "bide/constants/injury.hpp"
#include "bide/scenario/describe_readiness.hpp"
#include "bide/scenario/describe_uncertain.hpp"
#include "bide/scenario/field.hpp"
#include "bide/scenario/limits.hpp"
#include "bide/scenario/resolved_weather.hpp"
#include "bide/scenario/scenario.hpp"
#include "bide/scenario/weather_ranges.hpp"

namespace bide::scenario {

template <class V>
void describe(As<Position>, V&& v) {
  v(&Position::latitude_deg, number("latitude_deg", "deg", -90, 90, required, "Latitude, north positive."));
  v(&Position::longitude_deg,
    number("longitude_deg", "deg", -180, 180, required, "Longitude, east positive."));
}

template <class V>
void describe(As<WeatherFallback>, V&& v) {
  using W = WeatherFallback;
  constexpr Absent none = stays_empty("a long gap in this quantity is an error");
  v(&W::air_temperature_degC, number("air_temperature_degC", "degC", air_range_degC.low, air_range_degC.high,
                                     none, "Air temperature in long gaps."));
  v(&W::water_temperature_degC, number("water_temperature_degC", "degC", sea_range_degC.low,
                                       sea_range_degC.high, none, "Sea surface temperature in long gaps."));
  v(&W::dew_point_degC, number("dew_point_degC", "degC", dew_point_range_degC.low, dew_point_range_degC.high,
                               none, "Dew point in long gaps."));
  v(&W::wind_speed_m_s, number("wind_speed_m_s", "m/s", wind_range_m_s.low, wind_range_m_s.high, none,
                               "Wind speed at 10 m in long gaps."));
  v(&W::pressure_hPa, number("pressure_hPa", "hPa", pressure_range_hPa.low, pressure_range_hPa.high, none,
                             "Air pressure in long gaps."));
}

template <class V>
void describe(As<Weather>, V&& v) {
  using W = Weather;
  constexpr Absent stated =
      stays_empty("required for constant, daily_cycle and variable, refused for csv and ndbc");
  constexpr Absent steady = stays_empty("worked out from the wind; refused for variable, csv and ndbc");
  constexpr Absent daily =
      by_rule("required for daily_cycle, 0.5 for variable, refused for every other kind");
  v(&W::kind, word_of("kind", required,
                      "Steady, a daily cycle, hours that vary about means, or a file of observations."));
  v(&W::air_temperature_degC, number("air_temperature_degC", "degC", air_range_degC.low, air_range_degC.high,
                                     stated, "Air temperature; the mean for daily_cycle and variable."));
  v(&W::water_temperature_degC, number("water_temperature_degC", "degC", sea_range_degC.low,
                                       sea_range_degC.high, stated, "Sea surface temperature."));
  v(&W::relative_humidity_pct,
    number("relative_humidity_pct", "%", 0, 100, by_rule("80 unless it is from the file"),
           "Relative humidity of the outside air, over water."));
  v(&W::wind_speed_m_s, number("wind_speed_m_s", "m/s", wind_range_m_s.low, wind_range_m_s.high, stated,
                               "Wind speed at 10 m; the mean for variable."));
  v(&W::cloud_cover_fraction, number("cloud_cover_fraction", "1", 0, 1, otherwise(0.7),
                                     "Share of the sky covered by cloud; the mean for variable."));
  v(&W::rain_mm_h, number("rain_mm_h", "mm/h", rain_range_mm_h.low, rain_range_mm_h.high, otherwise(0),
                          "Rain rate; for variable the mean over all hours, dry ones too."));
  v(&W::wave_height_m, number("wave_height_m", "m", wave_height_range_m.low, wave_height_range_m.high, steady,
                              "Significant wave height."));
  v(&W::wave_period_s, number("wave_period_s", "s", wave_period_range_s.low, wave_period_range_s.high, steady,
                              "Mean zero-crossing wave period."));
  v(&W::pressure_hPa, number("pressure_hPa", "hPa", pressure_range_hPa.low, pressure_range_hPa.high,
                             by_rule("1013.25 unless it is from the file"), "Air pressure at sea level."));
  v(&W::air_temperature_swing_K, number("air_temperature_swing_K", "K", 0, 20, daily,
                                        "Half the difference between the day's highest and lowest."));
  v(&W::warmest_hour_local_h,
    number("warmest_hour_local_h", "h", 0, 24, by_rule("14 for daily_cycle and variable, else unused"),
           "Local solar time of the day's highest air temperature."));
  v(&W::wind_spread_fraction,
    number("wind_spread_fraction", "1", 0, constants::no_prevailing_direction.value,
           by_rule("without a prevailing direction for variable, else unused"),
           "Spread of each component of the wind over the mean speed; most without a prevailing direction."));
  v(&W::air_temperature_spread_K,
    number("air_temperature_spread_K", "K", 0, 10, by_rule("by latitude for variable, else unused"),
           "Standard deviation of the hourly air temperature, the daily cycle apart."));
  v(&W::rain_hours_fraction,
    number("rain_hours_fraction", "1", 0.001, 1, by_rule("by latitude for variable, else unused"),
           "Share of the hours in which it rains."));
  v(&W::seed, number("seed", "1", 0, 2147483647, by_rule("1 for variable, else unused"),
                     "Which of the many weathers of these means: the same number, the same hours."));
  v(&W::file, text("file", stays_empty("required for csv and ndbc, refused for every other kind"),
                   "Observations, relative to the folder of the scenario file."));
  static_assert(usual_longest_gap_h == 3);
  v(&W::longest_gap_h, number("longest_gap_h", "h", 0, 72, by_rule("3 for csv and ndbc, else unused"),
                              "Gaps up to this length are interpolated."));
  v(&W::anemometer_height_m,
    number("anemometer_height_m", "m", 1, 100, by_rule("5 for ndbc, 10 for csv, else unused"),
           "Height at which the file's wind was measured."));
  v(&W::fallback, object("fallback", stays_empty("longer gaps are errors"),
                         "Constant values for quantities the file lacks, or lacks for too long."));
}

template <class V>
void describe(As<Raft>, V&& v) {
  using R = Raft;
  v(&R::kind, text("kind", required, "Catalogue key of the raft."));
  v(&R::capacity_persons, number("capacity_persons", "persons", 1, 100, by_rule("from the catalogue"),
                                 "Persons the raft is made for; the pack follows from it."));
  v(&R::floor, word_of("floor", by_rule("from the catalogue"), "Kind of floor."));
  v(&R::canopy, word_of("canopy", by_rule("from the catalogue"), "Kind of canopy."));
  v(&R::floor_area_m2, number("floor_area_m2", "m2", 0.3, 60,
                              by_rule("from the catalogue; 0.372 m2 per person if the capacity is changed"),
                              "Floor area inside the tubes."));
  v(&R::canopy_height_m,
    number("canopy_height_m", "m", 0, 2.5, by_rule("from the catalogue; 0 without a canopy"),
           "Height inside at the middle, floor to canopy."));
  v(&R::tube_diameter_m, number("tube_diameter_m", "m", 0.1, 0.8, by_rule("from the catalogue"),
                                "Diameter of one buoyancy tube."));
  v(&R::opening_area_m2, number("opening_area_m2", "m2", 0.02, 10, by_rule("from the catalogue"),
                                "Area of all entrances together, fully open."));
  v(&R::rain_catch_area_m2, number("rain_catch_area_m2", "m2", 0, 60,
                                   by_rule("from the catalogue; scales with the capacity if that is changed"),
                                   "Plan area of canopy that drains to the rain collector."));
  v(&R::canopy_heat_loss_position,
    number("canopy_heat_loss_position", "1", 0, 1, otherwise(0.5),
           "Where in the range of canopy heat loss, which nobody has measured: 0 least, 1 most."));
  v(&R::leakage_position,
    number("leakage_position", "1", 0, 1, otherwise(0.5),
           "Where in the range of air leakage, which nobody has measured: 0 least, 1 most."));
}

template <class V>
void describe(As<Person>, V&& v) {
  using P = Person;
  v(&P::sex, word_of("sex", required, "Sex, for body composition and control."));
  v(&P::age_years,
    because(number("age_years", "years", 2, 100, required, "Age in years."),
            "children under two are not run, for no published body composition, shivering or sweating holds "
            "for them, and nobody over 100 was measured"));
  v(&P::height_m, number("height_m", "m", 0.6, 2.3, required, "Standing height."));
  v(&P::mass_kg, number("mass_kg", "kg", 8, 250, required, "Body mass without clothes."));
  v(&P::body_fat_pct,
    number("body_fat_pct", "%", 3, 65, by_rule("from body mass index, sex and age (survey regression)"),
           "Body fat as a share of body mass."));
  v(&P::vo2max_mL_kg_min, number("vo2max_mL_kg_min", "mL/(kg min)", 8, 90,
                                 by_rule("from sex and age (survey median)"), "Maximal oxygen uptake."));
  v(&P::clothing, text("clothing", otherwise_word("temperate_sailing"), "Catalogue key of what is worn."));
  v(&P::gloves, text("gloves", otherwise_word("none"),
                     "Catalogue key of gloves or mittens, worn unless the clothing's are the warmer."));
  v(&P::boots, text("boots", otherwise_word("none"),
                    "Catalogue key of boots, worn unless the clothing's are the warmer."));
  v(&P::lifejacket, yes_or_no("lifejacket", otherwise_true(), "Wears a lifejacket."));
  v(&P::thermal_protective_aid,
    yes_or_no("thermal_protective_aid", otherwise_false(), "Wears a thermal protective aid in the raft."));
  v(&P::seat, word_of("seat", otherwise_word("floor"), "What the person sits on."));
  v(&P::injured, yes_or_no("injured", by_rule("true with blood loss, burns, hurt hands or unfit for work"),
                           "Injured: first in rationing, wider uncertainty."));
  v(&P::blood_loss_pct,
    number("blood_loss_pct", "% of blood", 0, constants::blood_class_three_pct, otherwise(0),
           "Blood lost before the start; beyond 30 % people are confused, which is not computed."));
  v(&P::burned_pct, number("burned_pct", "% of skin", 0, constants::burn_of_shock_pct, otherwise(0),
                           "Burnt skin, evenly over the body; beyond 20 % comes shock, which is not "
                           "computed."));
  v(&P::fever_K, number("fever_K", "K", 0, 3, otherwise(0), "Rise of the set point by fever, throughout."));
  v(&P::hands, word_of("hands", otherwise_word("sound"),
                       "What hurt hands leave possible: everything, all but fine work such as sachets and "
                       "signals, or nothing."));
  v(&P::fit_for_work, yes_or_no("fit_for_work", otherwise_true(),
                                "Can pump, bail and the like; false for who has broken ribs or a limb."));
  v(&P::seasick_medicine, yes_or_no("seasick_medicine", otherwise_true(),
                                    "Takes seasickness medicine once aboard, if the stores hold any."));
  v(&P::seasick_susceptibility, number("seasick_susceptibility", "1", 0, 5, otherwise(1),
                                       "Susceptibility to seasickness, 1 = population mean."));
  v(&P::medicine_doses_per_day, number("medicine_doses_per_day", "1/d", 0, 24, otherwise(0),
                                       "Doses a day of this person's own medicine, as prescribed."));
  v(&P::medicine_doses,
    number("medicine_doses", "doses", 0, 10000, otherwise(0), "Doses of that medicine carried."));
  v(&P::inhaler, yes_or_no("inhaler", otherwise_false(), "Needs an inhaler at hand."));
  v(&P::food_allergy, text("food_allergy", otherwise_word("none"), "To what food, in a word or two."));
  v(&P::hours_since_meal_h,
    number("hours_since_meal_h", "h", 0, 72, otherwise(4), "Hours since the last meal."));
  v(&P::hours_since_drink_h,
    number("hours_since_drink_h", "h", 0, 48, otherwise(1), "Hours since the last drink."));
  v(&P::hours_since_sleep_h,
    number("hours_since_sleep_h", "h", 0, 96, otherwise(8), "Hours since the last sleep."));
  v(&P::water_deficit_pct,
    number("water_deficit_pct", "% of body mass", 0, 10, otherwise(0), "Water deficit at the start."));
  v(&P::exertion_met,
    number("exertion_met", "met", 0.8, 12, otherwise(1.5), "Metabolic level in the hour before."));
  v(&P::blood_alcohol_mg_dL, number("blood_alcohol_mg_dL", "mg/dL", 0, 400, otherwise(0), "Blood alcohol."));
  v(&P::already_seasick, yes_or_no("already_seasick", otherwise_false(), "Seasick before boarding."));
  v(&P::lost_in_first_minutes,
    yes_or_no("lost_in_first_minutes", otherwise_false(),
              "Lost in the first minutes in the water (cold shock, water breathed in, heart): dead from the "
              "start, and left there. Only where people enter the water."));
  v(&P::heat_acclimatised,
    number(
        "heat_acclimatised", "1", 0, 1, otherwise(0),
        "Used to heat: 0 not, 1 after some ten days in it. Sweats and opens the skin at a lower core, sweats "
        "more and with less salt, shivers later."));
  // This person beside the average one.
  v(&P::shivering_drive_factor,
    number("shivering_drive_factor", "1", 0.2, 3, otherwise(1), "Shivering for the same cold, 1 = average."));
  v(&P::shivering_ceiling_factor, number("shivering_ceiling_factor", "1", 0.3, 2, otherwise(1),
                                         "Strongest shivering, 1 = as predicted from the person."));
  v(&P::resting_metabolism_factor, number("resting_metabolism_factor", "1", 0.6, 1.6, otherwise(1),
                                          "Resting heat, 1 = as predicted from the person."));
  v(&P::sweat_factor,
    number("sweat_factor", "1", 0.2, 3, otherwise(1), "Sweat for the same heat, 1 = average."));
  v(&P::swim_endurance_factor, number("swim_endurance_factor", "1", 0.1, 10, otherwise(1),
                                      "Minutes until arms in cold water can no longer swim, 1 = average."));
  v(&P::core_limit_shift_K, number("core_limit_shift_K", "K", -6, 6, otherwise(0),
                                   "Added to the three core limits of the cold for this person."));
}

template <class V>
void describe(As<Boarding>, V&& v) {
  using B = Boarding;
  v(&B::kind, word_of("kind", required, "How the raft is reached; none: nobody reaches one."));
  v(&B::minutes_in_water, number("minutes_in_water", "min", 0, 86400,
                                 by_rule("0 for dry, 10 for swim; for float_free rise from the release "
                                         "depth, inflation and 10 min of swimming; "
                                         "to the end for none"),
                                 "Time in the water before boarding."));
  v(&B::in_water, word_of("in_water", otherwise_word("still"),
                          "What people do in the water: float still, swim, draw the knees up with the arms "
                          "pressed to the sides, or huddle with others."));
  v(&B::release_depth_m, number("release_depth_m", "m", 1, 20, by_rule("3 for float_free, else unused"),
                                "Depth at which the hydrostatic release lets go."));
  v(&B::water_shipped_L,
    number("water_shipped_L", "L", 0, 500, by_rule("per person 0.5 L for dry, 2 L for the others"),
           "Water on the floor once all are aboard."));
  v(&B::wet_fraction, number("wet_fraction", "1", 0, 1, by_rule("0 for dry, 1 for the others"),
                             "Wetness of the clothing at boarding, 0 dry to 1 soaked."));
}

template <class V>
void describe(As<Item>, V&& v) {
  v(&Item::kind, text("kind", required, "Catalogue key of the item."));
  v(&Item::quantity, number("quantity", "units", 0, 100000, otherwise(1), "How many."));
  v(&Item::expired,
    yes_or_no("expired", otherwise_false(), "Past its date: counts as absent, and is listed."));
}

template <class V>
void describe(As<Stores>, V&& v) {
  v(&Stores::pack,
    text("pack", otherwise_word("none"), "Catalogue key of the pack; contents follow from the capacity."));
  v(&Stores::extra,
    list("extra", 0, longest_array, stays_empty("nothing beyond the pack"), "What else is aboard."));
}

template <class V>
void describe(As<Rationing>, V&& v) {
  using R = Rationing;
  v(&R::rule, word_of("rule", otherwise_word("none_first_day"), "How water is given out."));
  v(&R::water_L_per_day, number("water_L_per_day", "L per person and day", 0, 10,
                                by_rule("0.5 for none_first_day and fixed_per_day, else unused"),
                                "Water given to each person a day."));
  v(&R::spread_days,
    number("spread_days", "days", 0.5, 60, stays_empty("required for spread, refused for every other rule"),
           "Days the stock is to last."));
  v(&R::food_kJ_per_day, number("food_kJ_per_day", "kJ per person and day", 0, 20000, otherwise(3350),
                                "Food given to each person a day."));
  v(&R::issues_per_day,
    number("issues_per_day", "times/day", 1, 24, otherwise(3), "Times a day that water is given out."));
  v(&R::injured_first,
    yes_or_no("injured_first", otherwise_true(), "The injured come first, and drink on the first day."));
  v(&R::food_only_with_water,
    yes_or_no("food_only_with_water", otherwise_true(), "No food is given on a day without water."));
}

template <class V>
void describe(As<Routine>, V&& v) {
  using R = Routine;
  v(&R::opening_fraction_day,
    number("opening_fraction_day", "1", 0, 1, otherwise(0.3), "Share of the entrance area open by day."));
  v(&R::opening_fraction_night, number("opening_fraction_night", "1", 0, 1, otherwise(0.05),
                                       "Share of the entrance area open at night."));
  v(&R::minimum_opening_m2,
    number("minimum_opening_m2", "m2", 0, 2, otherwise(0.01), "Openings are never shut further than this."));
  v(&R::open_above_degC,
    number("open_above_degC", "degC", 15, 45, otherwise(27),
           "Inside temperature above which the entrances are opened wholly, day or night, for an hour or "
           "more."));
  v(&R::open_above_co2_ppm, number("open_above_co2_ppm", "ppm", 1000, 100000, otherwise(15000),
                                   "Entrances are opened above this for an hour or more, and shut again "
                                   "below half of it."));
  v(&R::huddle, yes_or_no("huddle", otherwise_true(), "The crew sit close together."));
  v(&R::bail_every_h, number("bail_every_h", "h", 0, 48, otherwise(2), "Hours between bailing; 0 is never."));
  v(&R::wring_clothes, yes_or_no("wring_clothes", otherwise_true(),
                                 "Wet clothes are wrung out once aboard and after a soaking."));
  v(&R::inflate_floor, yes_or_no("inflate_floor", otherwise_true(), "An inflatable floor is pumped up."));
  v(&R::desalinator_h_per_day,
    number("desalinator_h_per_day", "h/day", 0, 24, by_rule("2 if one is aboard, else 0"),
           "Hours a day the desalinator is worked, shared among the able."));
  v(&R::catch_rain, yes_or_no("catch_rain", otherwise_true(), "Rain is collected from the canopy."));
  v(&R::damp_clothes_in_heat, yes_or_no("damp_clothes_in_heat", otherwise_false(),
                                        "Clothes are damped by day when the inside is above 30 degC."));
  v(&R::sleep_h_per_night, number("sleep_h_per_night", "h", 0, 12, otherwise(6), "Sleep each night."));
  v(&R::flares_per_night,
    number("flares_per_night", "signals/night", 0, 100, otherwise(0), "Signals used each night."));
}

template <class V>
void describe(As<Failure>, V&& v) {
  v(&Failure::kind, word_of("kind", required, "What fails."));
  v(&Failure::at_h,
    number("at_h", "h", 0, longest_h, required, "Hours after the start, not beyond the duration."));
  v(&Failure::in_waves_from_m,
    number("in_waves_from_m", "m", wave_height_range_m.low, wave_height_range_m.high,
           stays_empty("in any sea"),
           "Least significant wave height at that hour; in a lower sea it does not happen."));
}

template <class V>
void describe(As<Limits>, V&& v) {
  for (const LimitRow& row : limits)
    if (const StatedLevel& level = row.stated; level.member != nullptr)
      v(level.member,
        number(level.key, level.unit, level.low, level.high, otherwise(row.level), level.sentence));
}

template <class V>
void describe(As<Model>, V&& v) {
  v(&Model::shivering_endurance,
    word_of("shivering_endurance", otherwise_word("tires"),
            "What exhaustion leaves of shivering: what can be kept up for days (tires), what long endurance "
            "events level off at, and later (tires_late), or nothing (gives_out); nobody has measured beyond "
            "6.5 h."));
  v(&Model::heat_made_position,
    number("heat_made_position", "1", 0, 1, otherwise(0.5),
           "Where in the range of the model's error of heat made by shivering: 0 least, 0.5 as computed."));
  v(&Model::tissue_conductance_position,
    number("tissue_conductance_position", "1", 0, 1, otherwise(0.5),
           "Where in the range of the model's error of conductance between tissues: 0 least."));
  v(&Model::clothing_conductance_position,
    number("clothing_conductance_position", "1", 0, 1, otherwise(0.5),
           "Where in the range of the model's error of conductance through clothing: 0 least."));
  v(&Model::water_loss_position,
    number("water_loss_position", "1", 0, 1, otherwise(0.5),
           "Where in the range of the model's error of water lost through the skin: 0 least."));
}

template <class V>
void describe(As<Scenario>, V&& v) {
  using S = Scenario;
  v(&S::format, text("format", required, "The words \"bide scenario 1\"."));
  v(&S::name, text("name", otherwise_word("unnamed scenario"), "A title."));
  v(&S::setting, text("setting", otherwise_word("not stated"), "Where this is made up."));
  v(&S::start_time_utc, text("start_time_utc", required, "Start, as 2031-02-03T18:00:00Z."));
  v(&S::duration_h, number("duration_h", "h", 0.1, longest_h, required, "Hours simulated."));
  v(&S::output_interval_min,
    number("output_interval_min", "min", 1, 240, otherwise(10), "Minutes between recorded rows."));
  v(&S::position, object("position", required, "Where the raft is; it does not drift."));
  v(&S::weather, object("weather", required, "Air, sea, wind, sun and rain."));
  v(&S::raft, object("raft", stays_empty("required unless the boarding kind is none"), "The raft."));
  v(&S::crew, list("crew", 1, largest_crew, required, "Everybody."));
  v(&S::boarding, object("boarding", required, "How the raft is reached."));
  v(&S::stores, object("stores", by_rule("no pack, nothing else"), "What is aboard."));
  v(&S::readiness, object("readiness", stays_empty("dates and stowage have no bearing"),
                          "Dates and stowage of the raft, as they are known."));
  v(&S::rationing,
    object("rationing", by_rule("each field's own default"), "How water and food are given out."));
  v(&S::routine, object("routine", by_rule("each field's own default"), "What the crew do."));
  v(&S::failures, list("failures", 0, longest_array, stays_empty("nothing fails"), "What breaks, and when."));
  v(&S::limits, object("limits", by_rule("each field's own default"), "Physiological thresholds."));
  v(&S::model, object("model", by_rule("each field's own default"), "Choices where nobody has measured."));
  v(&S::uncertain, object("uncertain", stays_empty("everything is taken as written"),
                          "What is not known, for studies; a single run leaves it aside."));
}

}  // namespace bide::scenario
