// Refusals of the engine as exceptions of Python.
#pragma once

#include <pybind11/pybind11.h>

#include <string>
#include <string_view>
#include <utility>
#include <variant>

#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/refusal.hpp"

namespace bide::python {

// Adds the class bide.Refused, a ValueError.
void add_refused(pybind11::module_& module);

// A str of any bytes; those that are not UTF-8 are replaced.
pybind11::str text(std::string_view bytes);

// A list of dict: file, pointer, message.
pybind11::list reasons(const scenario::Diagnostics& diagnostics);

// bide.Refused for an input, RuntimeError for a run that failed, OSError for a file that cannot be written.
[[noreturn]] void refuse(const study::Refusal& refusal);

template <class T>
T answer_of(std::variant<T, study::Refusal>&& answer) {
  if (const auto* refusal = std::get_if<study::Refusal>(&answer)) refuse(*refusal);
  return std::get<T>(std::move(answer));
}

}  // namespace bide::python
