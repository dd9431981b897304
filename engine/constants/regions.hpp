// Regions of conditions, by which the comparison's left-out studies are counted, and what counts as near a
// study.
//
// Validity: these bounds sort results and size their ranges; they never enter the physics.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

enum class Medium { water, air };          // air: a room, a raft, the open
enum class Dress { bare, clothed, suit };  // bare: shorts, a swimsuit or less
enum Region : int { cold_water, cool_water, cold_air, mild_air, warm_air, region_count };
inline constexpr const char* region_names[region_count] = {"cold water", "cool water", "cold air", "mild air",
                                                           "warm air"};

// What surrounds a person, and who they are.
struct Conditions {
  Medium medium = Medium::air;
  double degC = 22;  // of the water, or of air and walls
  Dress dress = Dress::clothed;
  double fat_pct = 20, age_years = 30;
};

// When a value is read, since the run or the trial began. The model errs otherwise in the first hours, while
// the body answers, than once it has settled; how wide its error is drawn does not hang on it.
enum Span : int { first_hours, later, span_count };
inline constexpr const char* span_names[span_count] = {"in the first two hours", "after two hours"};

// Standard deviations of the logarithms of the model's errors.
struct ErrorSizes {
  double heat_made, tissue_conductance, clothing_conductance, water_loss;
};

// How many times too high (heat made), or by how many kelvin too warm (core), the model is: the middle half
// of the rows. Biased: that half lies to one side, by more than a half-interval on the whole, and the rows
// are of biased_from_studies or more.
struct Bias {
  int rows;
  bool biased;
  double low, high;
};

// Measurements with two sides, and how many of them the middle 90 % of a forecast without their own study
// holds.
struct Covered {
  int of, rows;
};

// How left-out measurements of one region and span were forecast.
struct Forecast {
  Bias heat_made, core;
  Covered covered;
};

struct LeftOut {
  int studies;
  ErrorSizes sizes;
  Forecast when[span_count];
};

inline constexpr Sourced later_from_h{
    2,
    "h",
    "",
    "between the trials of minutes to an hour and a half and those of two hours to days",
    Trust::judgement,
    1.5,
    3};
// Biased is said from so many studies on.
inline constexpr Sourced biased_from_studies{
    3,
    "-",
    "",
    "two err to the same side by chance every other time, three one time in four",
    Trust::judgement,
    2,
    4};
// Covered is said of a range of 90 % from this share on, and of no fewer measurements than this.
inline constexpr Sourced covered_from_share{
    0.85, "-", "", "nine in ten, less what chance takes off some twenty measurements", Trust::judgement,
    0.8,  0.9};
inline constexpr Sourced covered_from_rows{4, "-", "", "fewer say nothing of nine in ten", Trust::judgement,
                                           3, 10};

inline constexpr Sourced cool_water_from_degC{
    18, "degC", "", "between the studies at 5 to 17 and at 18 to 29 degC", Trust::judgement, 15, 20};
inline constexpr Sourced mild_air_from_degC{
    13, "degC", "", "between the studies at 0 to 12 and at 15 to 26 degC", Trust::judgement, 12, 15};
inline constexpr Sourced warm_air_from_degC{
    27,
    "degC",
    "",
    "about where an unclothed person at rest makes no heat against the cold",
    Trust::judgement,
    26,
    29};

// Dry insulation over the whole body below which a person counts as bare.
inline constexpr Sourced bare_below_m2K_W{
    0.031, "m2 K/W", "", "0.2 clo: between walking shorts, 0.08, and light clothes, 0.36", Trust::judgement,
    0.02,  0.05};

// A study is near when medium and dress are the same and none of these is passed. How long it lasted does not
// count: a run must not change in its first hours because it is followed for longer. What long cold does is
// drawn as the law of endurance.
inline constexpr Sourced near_K{
    5, "K", "", "skin and heat made move by about their half-interval", Trust::judgement, 3, 8};
inline constexpr Sourced near_fat_pct{8, "%", "", "two steps of a table of fatness", Trust::judgement, 5, 10};
inline constexpr Sourced near_age_years{
    15, "years", "", "a decade and a half of an adult's life", Trust::judgement, 10, 20};
// Where no study is near.
inline constexpr Sourced far_wider{
    2,
    "-",
    "",
    "error on conditions unlike the rows over that on left-out rows: 2 to 2.5 over 1.0 to 1.5",
    Trust::judgement,
    1.3,
    2.5};

// No factor goes beyond it, either way: the judge's surface is fitted within, and the widths were sized so.
inline constexpr Sourced error_farthest_factor{
    2.5,
    "-",
    "",
    "the largest single errors of heat made that left-out studies show are 2 to 3",
    Trust::judgement,
    2,
    4};
// Power of the factor of shivering by which resting heat goes along.
inline constexpr Sourced error_at_rest{
    0.36, "-", "", "spread of resting heat over that of shivering, 0.09 / 0.25 (people.hpp)", Trust::derived};
// An error's range ends there, as a share of its normal distribution at each side.
inline constexpr Sourced errors_end{0.01,  "-", "", "one in a hundred at each end", Trust::judgement,
                                    0.001, 0.05};

}  // namespace bide::constants
