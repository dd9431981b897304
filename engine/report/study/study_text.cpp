#include "bide/report/study/study_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "bide/core/printable.hpp"
#include "bide/report/document/text.hpp"
#include "bide/report/study/study_page.hpp"
#include "bide/report/study/study_words.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/scenario/words.hpp"

namespace bide::report {
namespace {

using scenario::DesignKind;
using study::Dependence;

std::string what_indices_mean(DesignKind kind) {
  switch (kind) {
    case DesignKind::grid:
      return "For each value of an input, the mean over all combinations of the others. The combinations are "
             "not a "
             "sample of what may happen.";
    case DesignKind::saltelli:
      return "First index: the share of the variance that would go if the input became known. Total index: "
             "the "
             "share that would stay if all others did. In brackets the 95 % interval of a bootstrap over "
             "base "
             "samples; a first index slightly below 0 is scatter.";
    case DesignKind::morris:
      return "Mean size (mu*) of the effect of one step of an input, per whole of its distribution; mean "
             "(mu): "
             "the same with its sign; spread (sigma): how much it depends on the other inputs or bends. A "
             "screening: its runs are not a sample of what may happen.";
    case DesignKind::random:
    case DesignKind::latin_hypercube:
    case DesignKind::sobol:
      return "Spearman's rank correlation, with its 95 % interval as if samples had been drawn "
             "independently: the "
             "direction and steadiness of an influence. One near 0 does not mean that there is none. Words "
             "count in "
             "the order in which they are listed.";
    case DesignKind::points:
      return "Spearman's rank correlation over the points of the file, with its 95 % interval as if they had "
             "been drawn independently. Nothing is known of how they were chosen, so they are not taken for "
             "a "
             "sample of what may happen.";
  }
  return {};
}

}  // namespace

std::string how_to_read(DesignKind kind) {
  std::string out = what_indices_mean(kind) + " Estimators:";
  const char* between = " ";
  for (const auto& [what, how] : estimators(kind)) {
    std::string name = what;
    std::replace(name.begin(), name.end(), '_', ' ');
    out += fmt::format("{}{}, {}", std::exchange(between, "; "), name, how);
  }
  return out + ".";
}

std::string design_words(const study::Study& study) {
  const scenario::Design& design = study.file().design;
  const std::size_t inputs = study.plan().groups().size();
  std::string out =
      fmt::format("{} runs of the design {}, {} {}", study.plan().size(), scenario::word(design.kind), inputs,
                  inputs == 1 ? "input" : "inputs or groups");
  if (const auto file = study.points_file())
    return out +
           fmt::format(" of {}, scale {}", file->filename().string(), scenario::word(study.plan().scale()));
  out += fmt::format(", seed {}", design.seed);
  if (design.kind == DesignKind::saltelli) out += fmt::format("; {} base samples", *design.samples);
  if (design.kind == DesignKind::morris) out += fmt::format("; {} trajectories", *design.samples);
  return out;
}

std::string no_dependence(const Dependence& d) {
  if (d.differing == 0) return "does not vary";
  return fmt::format("differs from its commonest value in {} of {} runs: too few to say what decides it",
                     d.differing, d.cases);
}

std::string study_text(const study::Study& study, const study::Summary& summary) {
  document::TextOptions options;
  options.full = true;
  // It is kept in a file that people show on a terminal.
  return printable_lines(to_text(pages::study_page(study, summary), options) + made_by_line() + "\n");
}

}  // namespace bide::report
