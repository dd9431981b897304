// Inputs in words, for people who have not read the file: pointers stay in listings and files.
#pragma once

#include <string>

namespace bide::report {

// "/crew/1/body_fat_pct" -> "Person B: body fat"; "/raft/floor_area_m2" -> "raft: floor area";
// "event 0: canopy_torn" -> "canopy torn". The unit is not said.
// @param name a pointer into a scenario, or the name of something that is drawn
std::string input_words(const std::string& name);

// An input and what was put in: "raft: capacity 4 persons", "routine: bail every 2 h", "routine: bail never".
// @param pointer of a field of a scenario
// @param written its value as it was written
std::string setting_words(const std::string& pointer, const std::string& written);

// The file alone, of a name that says what was put in: "s.json with /raft/floor=flat" -> "s.json".
std::string file_alone(const std::string& name);

}  // namespace bide::report
