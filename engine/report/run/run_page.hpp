// The page of one run: the answer with its range, the stay, the course of bodies and cabin, changes that
// would gain time, and two sheets to print: a ration card and a list for the first hour.
//
// Inputs: one run; the same scenario over its unmeasured inputs (may be empty); the levers as they were tried
// (may be none).
#pragma once

#include <optional>
#include <vector>

#include "bide/report/document/document.hpp"
#include "bide/report/run/material.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report::pages {

struct RunMaterial {
  Material run;
  const study::RangeMembers& unmeasured;
  std::optional<study::LeversTried> levers = {};
  bool levers_to_come = false;  // they are tried while the page is read, and the page will be shown again
  bool drawn = false;           // a future that was drawn: it has no file to ask about
};

document::Page run_page(const RunMaterial& material);

}  // namespace bide::report::pages
