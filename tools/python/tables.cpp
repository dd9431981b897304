#include "tables.hpp"

#include <pybind11/numpy.h>
#include <pybind11/stl.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/report/run/columns.hpp"
#include "bide/report/study/study_table.hpp"
#include "bide/report/words/attributes.hpp"
#include "bide/report/words/words.hpp"
#include "bide/study/records/record_file.hpp"
#include "refused.hpp"

namespace bide::python {
namespace py = pybind11;
namespace {

// Unit of a column by the end of its name, in the writing of UDUNITS-2 (from memory), as CF asks. Ends that
// hold another stand before it.
std::string unit_of(std::string_view name) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 21> units{
      {{"_degC", "degC"},    {"_mOsm_kg", "mmol kg-1"},
       {"_kg_m3", "kg m-3"}, {"_W_m2", "W m-2"},
       {"_mm_h", "mm h-1"},  {"_kg_h", "kg h-1"},
       {"_L_s", "L s-1"},    {"_m_s", "m s-1"},
       {"_pct", "%"},        {"_ppm", "1e-6"},
       {"_m2", "m2"},        {"_kJ", "kJ"},
       {"_kg", "kg"},        {"_fraction", "1"},
       {"_possible", "1"},   {"_count", "1"},
       {"_doses", "1"},      {"_L", "L"},
       {"_W", "W"},          {"_h", "h"},
       {"_m", "m"}}};
  for (const auto& [end, unit] : units)
    if (name.size() > end.size() && name.substr(name.size() - end.size()) == end) return std::string(unit);
  throw std::logic_error("no unit at the end of the column " + std::string(name));
}

py::array_t<double> array_of(const std::vector<double>& values) {
  return py::array_t<double>(static_cast<py::ssize_t>(values.size()), values.data());
}

std::vector<double> in_hours(const std::vector<double>& times_s) {
  std::vector<double> out;
  for (const double each : times_s) out.push_back(each / hour_s);
  return out;
}

py::dict attributes(std::string_view unit, const std::string& long_name = {}) {
  py::dict out;
  out["units"] = text(unit);
  if (!long_name.empty()) out["long_name"] = text(long_name);
  return out;
}

// Rows are times, columns people.
py::array_t<double> by_person(const timeline::Timeline& timeline,
                              std::vector<double> timeline::PersonSeries::*column) {
  const std::size_t times = timeline.time_s.size(), persons = timeline.persons.size();
  py::array_t<double> out({times, persons});
  auto view = out.mutable_unchecked<2>();
  for (std::size_t p = 0; p < persons; ++p)
    for (std::size_t i = 0; i < times; ++i)
      view(static_cast<py::ssize_t>(i), static_cast<py::ssize_t>(p)) = (timeline.persons[p].*column)[i];
  return out;
}

// When people are no longer something: within the time simulated, and whether it came to that.
void add_ends(py::dict& variables, const timeline::Timeline& timeline, const std::string& name,
              const std::string& long_name, std::optional<double> timeline::Fate::*at_s) {
  std::vector<double> hours;
  py::array_t<bool> reached(static_cast<py::ssize_t>(timeline.fates.size()));
  for (std::size_t p = 0; p < timeline.fates.size(); ++p) {
    const auto& end_s = timeline.fates[p].*at_s;
    hours.push_back(end_s.value_or(timeline.horizon_s) / hour_s);
    reached.mutable_at(static_cast<py::ssize_t>(p)) = end_s.has_value();
  }
  variables[text(name + "_h")] =
      py::make_tuple("person", array_of(hours), attributes("h", long_name + ", within the time simulated"));
  variables[text(name + "_reached")] =
      py::make_tuple("person", reached, attributes("1", "whether " + long_name + " was reached"));
}

// Columns of a DataFrame in order, with units of those that have one.
struct Frame {
  py::dict columns{}, units{};

  void numbers(const std::string& name, const std::vector<double>& values, std::string_view unit) {
    columns[text(name)] = array_of(values);
    units[text(name)] = text(unit);
  }
  void words(const std::string& name, const std::vector<std::string>& values) {
    py::list column;
    for (const std::string& each : values) column.append(text(each));
    columns[text(name)] = column;
  }
  void times(const std::string& name, std::vector<double> hours, double horizon_h) {
    py::array_t<bool> reached(static_cast<py::ssize_t>(hours.size()));
    for (std::size_t i = 0; i < hours.size(); ++i) {
      reached.mutable_at(static_cast<py::ssize_t>(i)) = std::isfinite(hours[i]);
      if (std::isinf(hours[i])) hours[i] = horizon_h;
    }
    numbers(name, hours, "h");
    columns[text(name + " reached")] = reached;
  }
  void figure(const study::Output& output, std::vector<double> values, double horizon_h) {
    if (output.is_time) return times(output.name, std::move(values), horizon_h);
    numbers(output.name, values, output.unit);
  }
  // With the units in `attrs`, and where it comes from.
  py::object made(const scenario::ValidScenario& scenario) const {
    py::object frame = py::module_::import("pandas").attr("DataFrame")(columns);
    frame.attr("attrs")["units"] = units;
    frame.attr("attrs").attr("update")(provenance(scenario));
    return frame;
  }
  py::object made(const study::OddsAnswer& answer) const {
    py::object frame = made(answer.scenario);
    frame.attr("attrs")["seed"] = answer.seed;
    frame.attr("attrs")["samples"] = answer.samples;
    return frame;
  }
};

}  // namespace

py::dict provenance(const scenario::ValidScenario& scenario) {
  py::dict out;
  for (const auto& [name, value] : report::attributes_of(scenario)) out[text(name)] = text(value);
  out["scenario_file"] = text(scenario.file);
  out["notice"] = text(standing_notice);
  return out;
}

py::object dataset(const study::Run& run, const scenario::ValidScenario& scenario) {
  const timeline::Timeline& timeline = run.timeline;
  py::dict variables, coordinates;
  for (const auto& column : report::common_columns) {
    const std::vector<double>& values = timeline.*column.values;
    if (!values.empty())
      variables[column.name] = py::make_tuple("time", array_of(values), attributes(unit_of(column.name)));
  }
  for (const auto& column : report::person_columns)
    variables[column.name] =
        py::make_tuple(py::make_tuple("time", "person"), by_person(timeline, column.values),
                       attributes(unit_of(column.name)));
  add_ends(variables, timeline, "able_until", "able until", &timeline::Fate::able_until_s);
  add_ends(variables, timeline, "alive_until", "alive until", &timeline::Fate::alive_until_s);

  coordinates["time"] =
      py::make_tuple("time", array_of(in_hours(timeline.time_s)), attributes("h", "time since the start"));
  py::list people;
  for (std::size_t p = 0; p < timeline.persons.size(); ++p)
    people.append(text(report::person_names({static_cast<int>(p)})));
  coordinates["person"] = py::make_tuple("person", people);

  py::dict about = provenance(scenario);
  about["title"] = text(scenario.scenario.name);
  about["summary"] = "Simulated course of the crew of a life raft: one case, not a forecast.";
  using namespace py::literals;
  return py::module_::import("xarray").attr("Dataset")("data_vars"_a = variables, "coords"_a = coordinates,
                                                       "attrs"_a = about);
}

py::object frame(const study::Evaluated& evaluated, const scenario::ValidScenario& scenario) {
  Frame out;
  for (std::size_t i = 0; i < evaluated.outputs.size(); ++i) {
    const auto column = evaluated.values.col(static_cast<Eigen::Index>(i));
    out.figure(evaluated.outputs[i], {column.begin(), column.end()}, scenario.scenario.duration_h);
  }
  std::vector<std::string> failures;
  for (const auto& failure : evaluated.failures) failures.push_back(failure.value_or(""));
  out.words("failure", failures);
  return out.made(scenario);
}

py::object frame(const study::Study& study, const std::filesystem::path& folder) {
  const std::vector<report::InputColumn> inputs = report::input_columns(study);
  const std::vector<study::Output> outputs = study::outputs(static_cast<int>(study.persons()));
  std::vector<std::vector<double>> numbers(inputs.size()), figures(outputs.size());
  std::vector<std::vector<std::string>> words(inputs.size());
  std::vector<std::string> failures;
  {
    const py::gil_scoped_release free;
    study.read(folder / study::file_name_of({}), [&](const study::SampleResult& result) {
      const study::Drawn drawn = study.draw(result.index);
      for (std::size_t i = 0; i < inputs.size(); ++i) {
        const study::InputValue value = inputs[i].of(drawn);
        numbers[i].push_back(value.number.value_or(study::not_there));
        words[i].push_back(value.words);
      }
      for (std::size_t i = 0; i < outputs.size(); ++i)
        figures[i].push_back(result.failure.empty() ? outputs[i].of(result) : study::not_there);
      failures.push_back(result.failure);
    });
  }
  Frame out;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    if (inputs[i].is_number)
      out.numbers(inputs[i].name, numbers[i], inputs[i].unit);
    else
      out.words(inputs[i].name, words[i]);
  }
  for (std::size_t i = 0; i < outputs.size(); ++i)
    out.figure(outputs[i], std::move(figures[i]), study.scenario().scenario.duration_h);
  out.words("failure", failures);
  return out.made(study.scenario());
}

py::object shares_frame(const study::OddsAnswer& answer) {
  const std::vector<study::AtTime>& times = answer.odds.times;
  const auto column = [&](const auto& of) {
    std::vector<double> out;
    for (const study::AtTime& each : times) out.push_back(of(each));
    return out;
  };
  Frame out;
  out.numbers("at_h", column([](const study::AtTime& t) { return t.at_h; }), "h");
  const auto add = [&](const std::string& name, study::Chance study::AtTime::*chance) {
    py::array_t<std::uint64_t> count(static_cast<py::ssize_t>(times.size()));
    for (std::size_t i = 0; i < times.size(); ++i)
      count.mutable_at(static_cast<py::ssize_t>(i)) = (times[i].*chance).count;
    out.columns[text(name + ".count")] = count;
    out.units[text(name + ".count")] = "1";
    out.numbers(name + ".share", column([&](const study::AtTime& t) { return (t.*chance).share; }), "1");
    out.numbers(name + ".low", column([&](const study::AtTime& t) { return (t.*chance).interval.low; }), "1");
    out.numbers(name + ".high", column([&](const study::AtTime& t) { return (t.*chance).interval.high; }),
                "1");
  };
  add("all_able", &study::AtTime::all_able);
  add("some_able", &study::AtTime::some_able);
  add("all_alive", &study::AtTime::all_alive);
  add("some_alive", &study::AtTime::some_alive);
  py::object frame = out.made(answer);
  frame.attr("attrs")["confidence"] = answer.odds.confidence;
  return frame;
}

py::object futures_frame(const study::OddsAnswer& answer, const std::vector<study::Future>& futures) {
  const std::size_t rows = static_cast<std::size_t>(answer.samples);
  std::vector<std::string> failures(rows);
  for (const study::FailedSample& each : answer.failed) failures[each.index] = each.reason;
  const auto hours = [&](const auto& of) {
    std::vector<double> out(rows, study::not_there);
    for (const study::Future& each : futures) out[each.sample] = static_cast<double>(of(each));
    return out;
  };
  Frame out;
  const double horizon_h = answer.scenario.scenario.duration_h;
  const auto add_ends = [&](const std::string& state, const auto hour, const auto cause) {
    constexpr std::array<std::pair<const char*, study::Who>, study::who_count> crew{
        {{"first ", study::first_person}, {"half ", study::half_of_crew}, {"last ", study::last_person}}};
    for (const auto& [name, who] : crew) {
      out.times(name + state + " until",
                hours([hour, at = who](const study::Future& f) { return (f.*hour)[at]; }), horizon_h);
      std::vector<std::string> ended_by(rows);
      for (const study::Future& each : futures)
        if (std::isfinite((each.*hour)[who])) ended_by[each.sample] = system::name_of((each.*cause)[who]);
      out.words(name + state + " ended by", ended_by);
    }
  };
  add_ends("able", &study::Future::able_h, &study::Future::able_cause);
  add_ends("alive", &study::Future::alive_h, &study::Future::alive_cause);
  if (answer.odds.help)
    out.times("help comes", hours([&](const study::Future& f) {
                const double at_h = static_cast<double>(f.rescue_h);
                return at_h > horizon_h ? study::beyond_horizon : at_h;
              }),
              horizon_h);
  py::array_t<bool> agrees(static_cast<py::ssize_t>(rows));
  std::fill_n(agrees.mutable_data(), rows, false);
  for (const study::Future& each : futures)
    agrees.mutable_at(static_cast<py::ssize_t>(each.sample)) = study::agrees(each, answer.known);
  out.columns["agrees with what is known"] = agrees;
  out.words("failure", failures);
  py::object frame = out.made(answer);
  frame.attr("index").attr("name") = "future";
  return frame;
}

}  // namespace bide::python
