// What stands behind a result: measurements, an extension of them, or nothing.
//
// States: none. Inputs: facts about one person or the cabin up to the time of the result, and the flags the
// run raised. Output: a grade, how studies like this were forecast, and every limit of the data that was
// passed. Source: the marks in constants/evidence.hpp and the table that the judge writes
// (constants/left_out.hpp); the whole table of rules is in evidence.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bide/constants/regions.hpp"
#include "bide/system/limits.hpp"

namespace bide::outcome {

// biased: studies like this were measured, and the model misses them one way.
enum class Grade { checked, biased, extrapolated, no_data };
std::string_view to_string(Grade);  // "checked", "biased", "extrapolated", "no data"

struct Passed {
  std::string limit;   // which limit of the data was passed, in plain words
  std::string reason;  // where the data end
  int place = 0;       // in the order in which they are told, the same whoever they come from
};

// How studies like this were forecast without themselves.
struct LeftOutWords {
  bool biased;              // the model errs to one side; else: how many measurements its range holds
  std::string words;        // plain
  bool of_the_end = false;  // of what ends this result: it leads
};

struct Evidence {
  Grade grade = Grade::checked;
  std::vector<LeftOutWords> left_out;
  std::vector<Passed> passed;
};

// What is being judged; one rule may bear on several.
enum Topic : unsigned {
  topic_able = 1,
  topic_alive = 2,
  topic_hands = 4,
  topic_cabin = 8,  // inside temperature
  topic_co2 = 16,
  topic_condensate = 32,
  topic_thirst = 64
};

// Extremes and sums from the start to the time of the result.
struct Facts {
  double hours = 0;
  std::optional<constants::Conditions> at;  // mean surroundings and who the person is; empty: the cabin
  bool in_raft = true;
  bool under_canopy = true;
  // The person; neutral when the cabin is judged.
  double age_years = 35;
  bool female = false;
  bool injured = false;  // or ill
  double blood_alcohol_mg_dL = 0;
  double lowest_core_degC = 37, highest_core_degC = 37;
  double shivering_h = 0;
  double wet_clothing_h = 0;
  double cold_fingers_h = 0;
  double worst_deficit_pct = 0;
  double worst_osmolality_mOsm_kg = 0;
  double hottest_inside_degC = 20;
  system::Limit cause = system::Limit::none;  // the limit that ended it; none when not reached
};

Evidence judge(Topic topic, const Facts& facts, const std::vector<std::string>& flags);

// The words on one region and span: to which side the model errs and by how much, then how many measurements
// its range holds. Nothing where nothing was measured.
std::vector<LeftOutWords> left_out_words(const constants::Forecast& forecast, constants::Region region,
                                         constants::Span span);

// The worse grade, every limit and every word on left-out studies once, in one order: whatever the order of
// the parts.
Evidence merge(const std::vector<Evidence>& parts);

}  // namespace bide::outcome
