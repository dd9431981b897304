#include <algorithm>
#include <sstream>

#include "bide/body/seasickness.hpp"
#include "bide/core/units.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::seasickness {

namespace {

constexpr const char* topic = "seasickness";
constexpr double g_m_s2 = 9.81;

double dose_m2_s3(double a_m_s2, double hours) {
  constexpr double step_s = 10;
  double dose = 0;
  for (double t = 0; t < hours * hour_s; t += step_s) dose += step_s * body::dose_rate_m2_s4(a_m_s2, dose);
  return dose;
}

double vomiting_pct(double a_m_s2, double hours) {
  return pct * body::vomiting_by_dose(dose_m2_s3(a_m_s2, hours));
}

double sick_in_raft(double adaptation, double medicine) {
  constexpr double a_m_s2 = 0.4, wave_m = 1, hours = 4;
  return body::sickness_target(a_m_s2, dose_m2_s3(a_m_s2, hours), wave_m, 1.0, 1.0, adaptation, medicine);
}

double days_to_adapt(double share_left) {
  constexpr double a_m_s2 = 0.4, step_s = 60;
  double adaptation = 0, t = 0;
  while (1 - adaptation > share_left) {
    adaptation += step_s * body::adaptation_rate_per_s(a_m_s2, adaptation);
    t += step_s;
  }
  return t / (24 * hour_s);
}

Row calibrated(Row r) {
  r.calibrated = true;
  return r;
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out{
      calibrated(make_row(topic, "Landolt & Monaco 1989", "sick in an enclosed craft, 1 m waves", "%", 75, 75,
                          99, pct * sick_in_raft(0, 0), "75 % or more")),
      calibrated(make_row(topic, "diving medicine page on adaptation", "days until a tenth are sick", "d",
                          2.5, 2, 3, days_to_adapt(0.1), "as printed; a tenth is a judgement")),
      calibrated(make_row(topic, "landing craft trials", "protection by a tablet", "%", 60, 50, 70,
                          pct * (1 - sick_in_raft(0, constants::tablet_protection) / sick_in_raft(0, 0)),
                          "10 points"))};
  struct Dose {
    double a_m_s2, hours, vomit_pct;
  };
  for (const Dose& d :
       {Dose{0.25, 2, 7}, {0.5, 2, 14}, {1, 2, 28}, {0.25, 6, 12}, {0.5, 6, 25}, {1, 6, 49}}) {
    std::ostringstream name;
    name << "vomiting, " << d.a_m_s2 << " m/s2 for " << d.hours << " h";
    Row r = calibrated(make_row(topic, "ISO 2631-1 annex D", name.str(), "%", d.vomit_pct, d.vomit_pct - 1,
                                d.vomit_pct + 1, vomiting_pct(d.a_m_s2, d.hours), "1 point: rounding"));
    r.kind = Kind::rule;
    r.at = d.a_m_s2;
    r.source_class = Class::from_memory;
    out.push_back(r);
  }
  out.push_back(make_row(topic, "Lawther & Griffin 1986", "vomiting on ferries at 1.0 m/s2, 4 h", "%", 40, 30,
                         50, vomiting_pct(1, 4), "10 points: voyages of up to 6 h, up to about 40 %"));
  out.back().at = 1;
  struct Sine {
    double share_of_g, vomit_pct;
  };
  for (const Sine& s : {Sine{0.05, 9}, {0.10, 30}, {0.20, 59}, {0.30, 74}}) {
    const double margin = std::max(5.0, 0.25 * s.vomit_pct);
    std::ostringstream name;
    name << "vomiting in 2 h at 0.2 Hz, " << s.share_of_g << " g";
    Row r = make_row(topic, "McCauley 1976", name.str(), "%", s.vomit_pct, s.vomit_pct - margin,
                     s.vomit_pct + margin, vomiting_pct(s.share_of_g * g_m_s2, 2),
                     "25 % or 5 points, the larger");
    r.source_class = Class::from_memory;
    r.at = s.share_of_g * g_m_s2;
    out.push_back(r);
  }
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Vomiting, by acceleration and time";
  curve.says =
      "The standard's rule (used to set the model), the ferries of Lawther and Griffin and the law of "
      "McCauley at 0.2 "
      "Hz from memory (neither used), with the margins of their rows, and the model.";
  curve.x_label = "weighted acceleration, rms", curve.x_unit = "m/s2";
  curve.y_label = "people who vomit", curve.y_unit = "%";
  curve.y_from_zero = true;
  constexpr double step_m_s2 = 0.25, most_m_s2 = 3;
  const auto line = [&](double hours) {
    std::vector<CurvePoint> out;
    for (double a = 0; a <= most_m_s2; a += step_m_s2) out.push_back({a, vomiting_pct(a, hours), {}, {}});
    return out;
  };
  Condition two{"2 h, ISO 2631-1", {}, line(2)}, six{"6 h, ISO 2631-1", {}, line(6)},
      four{"4 h, Lawther & Griffin", {}, line(4)}, sine{"2 h, McCauley", {}, {}};
  for (const Row& row : rows_named(rows, "vomiting, "))
    (row.quantity.find("2 h") != std::string::npos ? two : six).published.push_back(published_of(row));
  four.published = {published_of(rows_named(rows, "vomiting on ferries").at(0))};
  for (const Row& row : rows_named(rows, "vomiting in 2 h at 0.2 Hz, "))
    sine.published.push_back(published_of(row));
  curve.conditions = {two, six, four, sine};
  return {curve};
}

}  // namespace bide::validation::seasickness
