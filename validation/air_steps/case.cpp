#include <cmath>
#include <fstream>
#include <sstream>
#include <utility>

#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::air_steps {

namespace {

constexpr const char* folder = BIDE_SOURCE_DIR "/validation/air_steps/";
constexpr double step_s = 300;

struct Exposure {
  const char* figure;
  double rectal_K, skin_K;  // errors of the published model, see README
  bool chose_law = false;   // had a say in which law of shivering holds in air
};

struct Pairs {
  std::vector<double> model, measured, minute;

  double error(bool aligned) const {
    double offset = 0, sum = 0;
    for (std::size_t i = 0; aligned && i < model.size(); ++i) offset += model[i] - measured[i];
    offset /= static_cast<double>(model.size());
    for (std::size_t i = 0; i < model.size(); ++i) sum += std::pow(model[i] - measured[i] - offset, 2);
    return std::sqrt(sum / static_cast<double>(model.size()));
  }

  double spread() const {
    return Pairs{std::vector<double>(measured.size(), 0), measured, minute}.error(true);
  }
};

struct Exposed {
  Pairs rectal, oesophageal, skin;
};

std::string men(bool second_series) {
  struct Man {
    double height_m, mass_kg, age_years;
  };
  const Man first[] = {{1.95, 88.6, 25}, {1.84, 76.1, 22}, {1.75, 110, 23}};
  const Man second[] = {{1.91, 77.2, 25}, {1.91, 84.5, 26}, {1.88, 92.7, 22}};
  std::ostringstream out;
  const char* before = "[";
  for (const Man& m : second_series ? second : first) {
    out << before << R"({"sex": "male", "age_years": )" << m.age_years << R"(, "height_m": )" << m.height_m
        << R"(, "mass_kg": )" << m.mass_kg << R"(, "lifejacket": false, "clothing": "shorts"})";
    before = ", ";
  }
  return out.str() + "]";
}

Exposed compare(const std::string& figure) {
  Rest r;
  r.duration_h = 4;
  r.weather_file = folder + ("weather/" + figure + ".csv");
  r.crew = men(figure[0] == 'B');
  const Run run = run_case(scenario_of(r, step_s / 60), step_s);
  const auto mean_of_men = [&](std::size_t sample, auto value) {
    double sum = 0;
    for (int p = 0; p < run.compiled.structure.persons; ++p)
      sum += value(run.compiled.persons[static_cast<std::size_t>(p)], person(run.samples.at(sample), p));
    return sum / run.compiled.structure.persons;
  };
  Exposed out;
  std::ifstream file(std::string(folder) + "measured.csv");
  std::string line;
  std::getline(file, line);  // header
  while (std::getline(file, line)) {
    std::istringstream in(line);
    std::string minute, name, rectal, oesophageal, skin;
    for (std::string* field : {&minute, &name, &rectal, &oesophageal, &skin}) std::getline(in, *field, ',');
    if (name != figure) continue;
    const double minutes = std::stod(minute);
    const auto sample = static_cast<std::size_t>(minutes * 60 / step_s);
    const auto keep = [&](Pairs& pairs, const std::string& measured, auto value) {
      if (measured.empty()) return;  // one point was not digitised
      pairs.measured.push_back(std::stod(measured));
      pairs.model.push_back(mean_of_men(sample, value));
      pairs.minute.push_back(minutes);
    };
    keep(out.rectal, rectal,
         [](const body::Build<double>&, const double* x) { return system::core_degC(x); });
    keep(out.oesophageal, oesophageal,
         [](const body::Build<double>&, const double* x) { return x[body::at::blood]; });
    keep(out.skin, skin,
         [](const body::Build<double>& b, const double* x) { return system::mean_skin_degC(b, x); });
  }
  return out;
}

}  // namespace

std::vector<Row> rows() {
  constexpr Exposure exposures[] = {
      {"A-FIG.4", 0.24, 1.09}, {"A-FIG.5", 0.19, 0.55},       {"A-FIG.6", 0.23, 0.57},
      {"A-FIG.7", 0.22, 0.56}, {"B-FIG.1", 0.23, 1.09, true}, {"B-FIG.2", 0.19, 0.91, true},
      {"B-FIG.3", 0.36, 0.74}, {"B-FIG.4", 0.33, 0.86},       {"B-FIG.5", 0.25, 0.81}};
  std::vector<Row> out;
  for (const Exposure& e : exposures) {
    const Exposed c = compare(e.figure);
    const std::string at = std::string(", ") + e.figure;
    const char* study = e.figure[0] == 'A' ? "Stolwijk & Hardy 1966" : "Hardy & Stolwijk 1966";
    const auto row = [&](const char* what, double high, double model, double trivial, const char* why) {
      out.push_back(make_row("air_steps", study, what + at, "K", 0, 0, high, model, why));
      out.back().trivial = trivial;
      out.back().calibrated = e.chose_law;
      blame(out.back(),
            "core follows a step of air within the hour; theirs lagged, or went the other way first");
    };
    const char* worst = "worst error of a published model, rounded up";
    const char* aligned = "means aligned: tighter than as it stands";
    row("error of rectal", 0.40, c.rectal.error(false), e.rectal_K, worst);
    row("error of rectal, aligned", 0.25, c.rectal.error(true), c.rectal.spread(), aligned);
    row("error of oesophageal, aligned", 0.25, c.oesophageal.error(true), c.oesophageal.spread(), aligned);
    row("error of mean skin", 1.10, c.skin.error(false), e.skin_K, worst);
  }
  return out;
}

// The furthest step either way, and the one from heat to cold.
std::vector<Curve> curves(const std::vector<Row>&) {
  Curve core, skin;
  core.title = "Core temperature of three men through steps of air temperature";
  skin.title = "Mean skin temperature of the same men";
  core.says =
      "Stolwijk and Hardy, digitised: an hour, then two in other air, then an hour as at first. Each mean is "
      "of three men; no spread is known. Cold air of B-FIG.2 had a say in the law of shivering.";
  skin.says = "The same exposures.";
  core.y_label = "rectal temperature", skin.y_label = "mean skin temperature";
  for (Curve* curve : {&core, &skin}) {
    curve->x_label = "time", curve->x_unit = "min";
    curve->y_unit = "degC";
  }
  const auto condition = [](const char* name, const Pairs& pairs) {
    Condition out{name, {}, {}};
    for (std::size_t i = 0; i < pairs.minute.size(); ++i) {
      out.published.push_back({pairs.minute[i], pairs.measured[i], {}, {}});
      out.model.push_back({pairs.minute[i], pairs.model[i], {}, {}});
    }
    return out;
  };
  constexpr std::pair<const char*, const char*> drawn[] = {{"B-FIG.2", "28, 18, 28 degC (B-FIG.2)"},
                                                           {"A-FIG.7", "28, 48, 28 degC (A-FIG.7)"},
                                                           {"B-FIG.5", "43, 17, 43 degC (B-FIG.5)"}};
  for (const auto& [figure, name] : drawn) {
    const Exposed e = compare(figure);
    core.conditions.push_back(condition(name, e.rectal));
    skin.conditions.push_back(condition(name, e.skin));
  }
  return {core, skin};
}

}  // namespace bide::validation::air_steps
