// The figures of a sample by name.
//
// States: none. Validity: a time beyond the horizon is infinite, a figure that does not exist is not a
// number. Persons are numbered from 1.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "bide/study/ensemble/sample_result.hpp"

namespace bide::study {

struct Output {
  std::string name;  // "person 2 able until", "coldest inside"
  std::string unit;
  std::function<double(const SampleResult&)> of;
  bool is_time = false;  // of an end, which may lie beyond the horizon
};

// All figures: those of the crew, then those of each person.
// @param persons number of persons
std::vector<Output> outputs(int persons);

// Null when there is none of that name.
const Output* find_output(const std::vector<Output>& outputs, const std::string& name);

}  // namespace bide::study
