// The Python module `bide`: the questions of the program, with results as dict, DataFrame and Dataset.
#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>
#include <pybind11/stl/filesystem.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bide/bide.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/levers/levers.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/run/json.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/study/questions/study.hpp"
#include "bide/study/questions/unmeasured.hpp"
#include "bide/study/records/fingerprint.hpp"
#include "bide/study/records/record_file.hpp"
#include "refused.hpp"
#include "tables.hpp"

namespace bide::python {
namespace {

namespace py = pybind11;
namespace fs = std::filesystem;
using namespace py::literals;
using Scenario = scenario::ValidScenario;
using Held = std::shared_ptr<Scenario>;

py::object from_json(const std::string& json) {
  return py::module_::import("json").attr("loads")(json);
}

// Lets Ctrl-C end a long question.
void look_for_interrupt() {
  const py::gil_scoped_acquire held;
  if (PyErr_CheckSignals() != 0) throw py::error_already_set();
}

Held read(const py::object& source, const fs::path& folder) {
  const auto read_text = [&](const std::string& json, const char* name) {
    return scenario::validate_text(json, name, folder);
  };
  auto validated = [&] {
    if (py::isinstance<py::dict>(source))
      return read_text(py::module_::import("json").attr("dumps")(source).cast<std::string>(), "dict");
    if (py::isinstance<py::str>(source)) {
      const auto words = source.cast<std::string>();
      const std::size_t first = words.find_first_not_of(" \t\r\n");
      if (first != std::string::npos && words[first] == '{') return read_text(words, "text");
    }
    return bide::read(py::module_::import("os").attr("fspath")(source).cast<fs::path>());
  }();
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&validated))
    refuse({study::Refusal::Why::input, std::move(*wrong)});
  return std::make_shared<Scenario>(std::get<Scenario>(std::move(validated)));
}

// One simulation; what needs further runs is worked out when it is asked for.
struct Run {
  Held scenario;
  study::Run run;
  std::optional<std::string> json{};

  const std::string& as_json() {
    if (!json) {
      auto members = [&] {
        const py::gil_scoped_release free;
        return study::run_unmeasured(*scenario, look_for_interrupt);
      }();
      json = report::result_json(run.outcome, run.timeline, *scenario, answer_of(std::move(members)));
    }
    return *json;
  }
};

Run run(Held scenario) {
  auto result = [&] {
    const py::gil_scoped_release free;
    return bide::simulate(*scenario, [](double) { look_for_interrupt(); });
  }();
  return {std::move(scenario), answer_of(std::move(result))};
}

struct Odds {
  study::OddsAnswer answer;
  std::vector<study::Future> futures;

  std::string json() const { return report::odds_json(answer); }
};

Odds odds_of(const Scenario& scenario, study::OddsQuestion question) {
  if (question.futures == 0) throw py::value_error("futures: found 0; allowed 1 or more");
  std::vector<study::Future> futures;
  question.each = [&futures](const study::Future& future) { futures.push_back(future); };
  auto answer = [&] {
    const py::gil_scoped_release free;
    return bide::odds(scenario, question,
                      [](study::OddsPart, const study::Progress&) { look_for_interrupt(); });
  }();
  return {answer_of(std::move(answer)), std::move(futures)};
}

py::object ask_compare(const std::vector<Held>& scenarios, std::uint64_t futures, std::uint64_t seed) {
  if (scenarios.size() < 2) throw py::value_error("scenarios: found fewer than 2; allowed 2 or more");
  std::vector<Scenario> each;
  for (const Held& scenario : scenarios) each.push_back(*scenario);
  auto answer = [&] {
    const py::gil_scoped_release free;
    return bide::compare(std::move(each), {futures, seed}, [](double) { look_for_interrupt(); });
  }();
  return from_json(report::comparison_json(answer_of(std::move(answer))));
}

py::object ask_levers(const Scenario& scenario) {
  auto answer = [&] {
    const py::gil_scoped_release free;
    return bide::levers(scenario, look_for_interrupt);
  }();
  return from_json(report::levers_json(answer_of(std::move(answer)), scenario));
}

py::list inputs(const Scenario& scenario) {
  const study::Sampler sampler(scenario);
  py::list out;
  for (const study::Factor& each : sampler.factors())
    out.append(py::dict("name"_a = text(each.name),
                        "kind"_a = each.kind == study::FactorKind::epistemic ? "epistemic" : "aleatory",
                        "has_value"_a = each.has_value));
  return out;
}

py::dict problem(const Scenario& scenario) {
  const study::Sampler sampler(scenario);
  py::list names, bounds;
  for (const study::Factor& each : sampler.factors()) {
    names.append(text(each.name));
    py::list ends;
    ends.append(0.0);
    ends.append(1.0);
    bounds.append(ends);
  }
  return py::dict("num_vars"_a = names.size(), "names"_a = names, "bounds"_a = bounds);
}

py::array_t<double> sample(const Scenario& scenario, std::size_t samples, std::uint64_t seed) {
  const study::Sampler sampler(scenario);
  const std::size_t columns = sampler.factors().size();
  py::array_t<double> out({samples, columns});
  double* to = out.mutable_data();
  for (std::size_t k = 0; k < samples; ++k) to = std::ranges::copy(sampler.point(seed, k), to).out;
  return out;
}

using Table = py::array_t<double, py::array::c_style | py::array::forcecast>;

study::Points points_of(const Table& table) {
  if (table.ndim() != 2)
    throw py::value_error("points: found an array of " + std::to_string(table.ndim()) +
                          " dimensions; allowed 2: a row for each simulation, a column for each input");
  return Eigen::Map<const study::Points>(table.data(), table.shape(0), table.shape(1));
}

py::object evaluate_points(const Scenario& scenario, const Table& points, std::vector<std::string> wanted,
                           const std::string& scale, int threads) {
  study::PointsQuestion question{points_of(points), {}, std::move(wanted), threads};
  if (scale != "unit" && scale != "natural")
    throw py::value_error("scale: found \"" + scale + "\"; allowed \"unit\" or \"natural\"");
  if (scale == "natural") question.scale = scenario::PointScale::natural;
  auto answer = [&] {
    const py::gil_scoped_release free;
    return bide::evaluate(scenario, std::move(question),
                          [](const study::Progress&) { look_for_interrupt(); });
  }();
  return frame(answer_of(std::move(answer)), scenario);
}

py::list output_names(const Scenario& scenario) {
  py::list out;
  for (const study::Output& each : study::outputs(static_cast<int>(scenario.scenario.crew.size())))
    out.append(py::make_tuple(text(each.name), text(each.unit)));
  return out;
}

// A study, and the folder of results that it was opened from, if it was.
struct OpenedStudy {
  study::Study study;
  std::optional<fs::path> folder;

  const fs::path& folder_or(const std::optional<fs::path>& given) const {
    if (given) return *given;
    if (folder) return *folder;
    throw py::value_error("folder: missing; allowed a folder of results, or a study opened from one");
  }
};

OpenedStudy open_study(const fs::path& path) {
  std::error_code error;
  return {answer_of(study::open_study(path)),
          fs::is_directory(path, error) ? std::optional(path) : std::nullopt};
}

py::object summary(const OpenedStudy& opened, const std::optional<fs::path>& given) {
  const fs::path& folder = opened.folder_or(given);
  auto answer = [&] {
    const py::gil_scoped_release free;
    return study::summary_of(opened.study, folder, look_for_interrupt);
  }();
  return from_json(report::study_json(opened.study, answer_of(std::move(answer))));
}

py::object run_study(const OpenedStudy& opened, const std::optional<fs::path>& given, int threads) {
  const fs::path& folder = opened.folder_or(given);
  const auto refusal = [&] {
    const py::gil_scoped_release free;
    return study::run_part(opened.study, folder, {}, threads,
                           [](const study::Progress&) { look_for_interrupt(); });
  }();
  if (refusal) refuse(*refusal);
  return summary(opened, folder);
}

py::object study_frame(const OpenedStudy& opened, const std::optional<fs::path>& given) try {
  return frame(opened.study, opened.folder_or(given));
} catch (const study::RecordFileError& wrong) {
  refuse({study::Refusal::Why::input, {{"records", "", wrong.what()}}});
}

void add_scenario(py::module_& module) {
  py::class_<Scenario, Held>(module, "Scenario", "A scenario that was read and found valid.")
      .def_property_readonly(
          "name", [](const Scenario& s) { return text(s.scenario.name); }, "Its name, as the file gives it.")
      .def_property_readonly(
          "file", [](const Scenario& s) { return text(s.file); },
          "Path it was read from; \"dict\" or \"text\" where read() was given one.")
      .def_property_readonly(
          "persons", [](const Scenario& s) { return s.scenario.crew.size(); }, "Number of persons.")
      .def_property_readonly(
          "horizon_h", [](const Scenario& s) { return s.scenario.duration_h; }, "Time simulated, h.")
      .def_property_readonly(
          "defaults",
          [](const Scenario& s) {
            py::list out;
            for (const std::string& each : s.defaults) out.append(text(each));
            return out;
          },
          "JSON pointers of what the file left out.")
      .def(
          "check", [](const Scenario& s) { return reasons(bide::check(s)); },
          "What is doubtful though it is allowed: a list of dict with file, pointer and message.")
      .def("run", &run, "Runs the scenario as it is written; what is uncertain is left aside.");
}

void add_results(py::module_& module) {
  py::class_<Run>(module, "Run", "One simulation: one case, not a forecast.")
      .def_property_readonly(
          "json", [](Run& r) { return text(r.as_json()); }, "The bytes that `bide run --json` writes.")
      .def_property_readonly(
          "result", [](Run& r) { return from_json(r.as_json()); },
          "The same as a dict; its keys end in their units.")
      .def(
          "to_xarray", [](const Run& r) { return dataset(r.run, *r.scenario); },
          "The course as an xarray.Dataset with dims time (h since the start) and person; each variable has "
          "its unit in attrs. Ends are given within the time simulated, with whether they were reached.");
  py::class_<Odds>(module, "Odds", "The endurance window over many possible futures.")
      .def_property_readonly(
          "json", [](const Odds& o) { return text(o.json()); }, "The bytes that `bide odds --json` writes.")
      .def_property_readonly(
          "result", [](const Odds& o) { return from_json(o.json()); }, "The same as a dict.")
      .def(
          "to_dataframe", [](const Odds& o) { return shares_frame(o.answer); },
          "Shares against time as a pandas.DataFrame, a row for each hour: at_h (h since the start), and for "
          "all_able, some_able, all_alive and some_alive the count of futures, their share, and low and high "
          "of its interval. attrs has units, the notice and where it comes from.")
      .def(
          "futures", [](const Odds& o) { return futures_frame(o.answer, o.futures); },
          "Every future as a pandas.DataFrame, a row each, in the order of sample(): until when the first, "
          "half and the last of the crew are able and alive (h within the time simulated, with a column "
          "\"... reached\") and what ends it, when help comes where the scenario says, whether the future "
          "agrees with what is known, and why it failed. attrs as in to_dataframe().");
  py::class_<OpenedStudy>(
      module, "Study",
      "A study that was read and found valid. folder: of its results; the one that it was "
      "opened from where it is left out.")
      .def_property_readonly(
          "samples", [](const OpenedStudy& s) { return s.study.plan().size(); }, "Number of simulations.")
      .def("run", &run_study, "folder"_a = py::none(), "threads"_a = 0,
           "Runs what the folder does not hold yet and gives the summary as a dict. Killed and asked again, "
           "it goes on where it was. threads: 0 for one to a core; results do not depend on it.")
      .def("summary", &summary, "folder"_a = py::none(),
           "The summary of a folder that holds the whole study, as a dict.")
      .def("to_dataframe", &study_frame, "folder"_a = py::none(),
           "Every sample, a row each: inputs by pointer, figures by name, why it failed. A time that was not "
           "reached is the time simulated, and False in the column beside it.");
}

void add_questions(py::module_& module) {
  module.def(
      "read", &read, "source"_a, py::kw_only(), "folder"_a = fs::path(),
      "Reads a scenario: a path, a dict of the same keys as a file, or the text of a file (which begins "
      "with a brace). folder: where weather files of a dict or text are looked for. Raises bide.Refused "
      "with everything that is wrong.");
  module.def(
      "odds",
      [](const Scenario& s, std::uint64_t futures, std::uint64_t seed, std::optional<double> alive_at_h,
         std::optional<double> now_h, int threads) {
        study::OddsQuestion question;
        question.futures = futures;
        question.seed = seed;
        question.known = {alive_at_h, now_h};
        question.threads = threads;
        return odds_of(s, std::move(question));
      },
      "scenario"_a, "futures"_a = study::OddsQuestion{}.futures, "seed"_a = study::OddsQuestion{}.seed,
      py::kw_only(), "alive_at_h"_a = py::none(), "now_h"_a = py::none(), "threads"_a = 0,
      "The odds of a scenario with `uncertain`. alive_at_h: all known alive then; now_h: time of asking, no "
      "help "
      "yet; both in h after the start. The same seed gives the same futures, whatever the threads.");
  module.def(
      "compare", &ask_compare, "scenarios"_a, "futures"_a = study::CompareQuestion{}.futures,
      "seed"_a = study::CompareQuestion{}.seed,
      "Scenarios beside the first of them, as a dict; under common futures where all have `uncertain`.");
  module.def("levers", &ask_levers, "scenario"_a, "Practical changes tried one at a time, as a dict.");
  module.def(
      "inputs", &inputs, "scenario"_a,
      "What varies, in the order of columns: a list of dict. kind: aleatory or epistemic. has_value: on the "
      "natural scale its column holds its value itself.");
  module.def(
      "problem", &problem, "scenario"_a,
      "What varies, in the shape that SALib takes: num_vars, names, bounds. Bounds are 0 and 1: a number "
      "is a place in the distribution of its input.");
  module.def(
      "sample", &sample, "scenario"_a, "samples"_a, "seed"_a = study::OddsQuestion{}.seed,
      "Independent random points, a row each, on the unit scale: the futures of odds() with this seed.");
  module.def("outputs", &output_names, "scenario"_a, "Figures of evaluate(): a list of (name, unit).");
  module.def(
      "evaluate", &evaluate_points, "scenario"_a, "points"_a, "outputs"_a = std::vector<std::string>{},
      py::kw_only(), "scale"_a = "unit", "threads"_a = 0,
      "Runs the scenario at every row of points (a column for each of inputs()) and gives a "
      "pandas.DataFrame in the same order. outputs: names of figures, all when left out. scale: \"unit\" for "
      "places in (0, 1), \"natural\" for values of those inputs that have one. A time (h) is given within "
      "the time simulated, with a column \"... reached\"; units are in attrs. A point that is refused has "
      "NaN and its reason in the column failure. Ask for many rows at once: they share lanes and threads.");
  module.def("open_study", &open_study, "path"_a,
             "Reads a study and all it depends on. path: a study file, or a folder of results, which keeps "
             "copies of what its study was read from and so opens by itself, wherever it is moved.");
}

}  // namespace

PYBIND11_MODULE(bide, module) {
  module.doc() = "bide: how long a crew in a life raft stays able and alive, over days.";
  module.attr("__version__") = text(study::build().version);
  module.attr("fingerprint") = text(study::fingerprint());
  module.attr("notice") = text(standing_notice);
  add_refused(module);
  add_scenario(module);
  add_results(module);
  add_questions(module);
}

}  // namespace bide::python
