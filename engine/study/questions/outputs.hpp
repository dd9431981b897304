// The figures of a sample by name.
//
// States: none. Validity: a time beyond the horizon is infinite, a figure that does not exist is not a
// number. Persons are numbered from 1.
#pragma once

#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/sample_result.hpp"

namespace bide::study {

struct Output {
  std::string name;  // "Person B able until", "coldest inside"
  std::string unit;
  std::function<double(const SampleResult&)> of;
  bool is_time = false;  // of an end, which may lie beyond the horizon
  // Of one person: which, from 0, and the figure without the person's name. Of the crew: -1 and the name.
  int person = -1;
  std::string figure{};
};

// All figures: those of the crew, then those of each person.
// @param persons number of persons
std::vector<Output> outputs(int persons);

// Null when there is none of that name.
const Output* find_output(const std::vector<Output>& outputs, const std::string& name);

// The figures of these names, in their order, or which of the names is none.
// @param persons number of persons
// @param names   at "/outputs" of the file
// @param file    for messages
std::variant<std::vector<Output>, scenario::Diagnostics> named_outputs(int persons,
                                                                       const std::vector<std::string>& names,
                                                                       const std::string& file);

}  // namespace bide::study
