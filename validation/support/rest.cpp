#include "validation/support/rest.hpp"

#include <sstream>

#include "bide/constants/fuel.hpp"

namespace bide::validation {

namespace {

void weather_of(const Rest& r, std::ostringstream& out) {
  if (!r.weather_file.empty()) {
    out << R"("kind": "csv", "file": ")" << r.weather_file << R"("})";
    return;
  }
  out << (r.swing_K > 0 ? R"("kind": "daily_cycle", "air_temperature_swing_K": )" + std::to_string(r.swing_K)
                        : R"("kind": "constant")")
      << R"(, "air_temperature_degC": )" << r.air_degC << R"(, "water_temperature_degC": )" << r.sea_degC
      << R"(, "relative_humidity_pct": )" << r.humidity_pct << R"(, "wind_speed_m_s": )" << r.wind_m_s
      << R"(, "cloud_cover_fraction": )" << r.cloud
      << (r.wind_sea ? "}" : R"(, "wave_height_m": 0, "wave_period_s": 5})");
}

}  // namespace

std::string scenario_of(const Rest& r, double output_interval_min) {
  std::ostringstream out;
  out << R"({"format": "bide scenario 1", "start_time_utc": ")" << r.start << R"(", "duration_h": )"
      << r.duration_h << R"(, "output_interval_min": )" << output_interval_min
      << R"(, "position": {"latitude_deg": )" << r.latitude_deg << R"(, "longitude_deg": 0}, "weather": {)";
  weather_of(r, out);
  if (!r.raft.empty()) out << R"(, "raft": )" << r.raft;
  out << R"(, "crew": )" << r.crew << R"(, "boarding": )" << r.boarding << R"(, "stores": )" << r.stores
      << R"(, "rationing": )" << r.rationing << R"(, "routine": )" << r.routine
      << R"(, "model": {"shivering_endurance": ")" << r.endurance << R"("}})";
  return out.str();
}

double weighed_kg(const double* x) {
  using namespace body;
  const double carbohydrate_kJ = x[at::glycogen] + x[at::gut_carbohydrate];
  return x[at::body_water] + x[at::gut_water] + x[at::fat_mass] + x[at::protein_mass] +
         (carbohydrate_kJ / constants::carbohydrate_kJ_g + x[at::gut_fat] / constants::fat_kJ_g +
          x[at::gut_protein] / constants::protein_kJ_g) /
             constants::g_kg;
}

double time_reached_s(const Run& run, const std::function<double(const double*)>& value, double limit,
                      bool rising) {
  const double sign = rising ? 1 : -1;
  double before = 0;
  for (std::size_t i = 0; i < run.samples.size(); ++i) {
    const Sample& s = run.samples[i];
    const double beyond = sign * (value(person(s)) - limit);
    if (beyond >= 0) {
      if (i == 0) return s.t_s;
      const double from_s = run.samples[i - 1].t_s;
      return from_s + (s.t_s - from_s) * before / (before - beyond);
    }
    before = beyond;
  }
  return run.samples.back().t_s;
}

Row make_row(const char* topic, const char* study, const std::string& quantity, const char* unit,
             double published, double low, double high, double model, const char* why) {
  Row r;
  r.topic = topic;
  r.study = study;
  r.quantity = quantity;
  r.unit = unit;
  r.published = published;
  r.low = low;
  r.high = high;
  r.model = model;
  r.why = why;
  return r;
}

void blame(Row& row, const char* cause) {
  if (!row.holds()) row.why += std::string("; ") + cause;
}

void blame_named(std::vector<Row>& rows, std::initializer_list<Cause> causes) {
  for (const Cause& each : causes)
    for (Row& row : rows)
      if (row.quantity.rfind(each.start, 0) == 0) blame(row, each.cause);
}

}  // namespace bide::validation
