// Writes generated scenarios for the program to read: write_scenarios FOLDER NUMBER, half of ordinary ranges,
// half at their edges; fewer, where a draw is not mended to a valid one. Every third has a weather file in
// place of its weather, every fourth something uncertain; some of the weather files are too short or have a
// gap or a value beyond its range, which the program must find before it runs.
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>

#include "bide/core/random.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/weather_ranges.hpp"
#include "fuzz/generator.hpp"

using namespace bide;
using nlohmann::json;
using test::Mode;

namespace {

constexpr std::uint64_t seed = 6;

double drawn(std::uint64_t sample, const std::string& what, double low, double high) {
  return low + (high - low) * uniform(seed, sample, stream_of(what), 0);
}

// Hourly, from the start to the end of the scenario, or not so far.
std::string weather_file(const json& file, std::uint64_t sample, Mode mode) {
  using namespace scenario;
  const double start_unix_s = parse_time_utc(file.at("start_time_utc").get<std::string>()).value();
  const double share = drawn(sample, "whole", 0, 1);
  constexpr double cut_short = 0.15, with_gap = 0.3, beyond_range = 0.4;
  const double hours = file.at("duration_h").get<double>() * (share < cut_short ? 0.5 : 1) + 1;
  const bool edges = mode == Mode::edges;
  const auto value = [&](const char* name, int hour, const Range& all, const Range& ordinary) {
    const Range& range = edges ? all : ordinary;
    return drawn(sample, fmt::format("{} {}", name, hour), range.low, range.high);
  };
  std::string out = "time_utc,air_temperature_degC,dew_point_degC,water_temperature_degC,wind_speed_m_s\n";
  for (int hour = 0; hour <= hours; ++hour) {
    const double air_degC = value("air", hour, air_range_degC, {2, 20});
    const bool gap = share > cut_short && share < with_gap && hour == 2;
    const bool beyond = share > with_gap && share < beyond_range && hour == 1;
    out += fmt::format("{},{},{:.2f},{:.2f},{:.2f}\n", format_time_utc(start_unix_s + hour * hour_s),
                       gap ? "" : fmt::format("{:.2f}", beyond ? air_range_degC.high + 1 : air_degC),
                       std::min(air_degC, value("dew", hour, dew_point_range_degC, {-5, 10})),
                       value("sea", hour, sea_range_degC, {0, 18}),
                       value("wind", hour, wind_range_m_s, {0, 25}));
  }
  return out;
}

void write(const std::string& folder, Mode mode, std::uint64_t sample) {
  auto made = test::any_scenario(mode, seed, sample);
  if (!made) return;
  json& file = made->file;
  std::string name = fmt::format("{}_{}", mode == Mode::edges ? "edges" : "ordinary", sample);
  constexpr int third = 3, fourth = 4;
  if (sample % third == 0) {
    name += "_csv";
    file["weather"] = {{"kind", "csv"}, {"file", name + ".csv"}};
    std::ofstream(folder + "/" + name + ".csv") << weather_file(file, sample, mode);
  }
  if (sample % fourth == 1) {
    name += "_uncertain";
    const double mass_kg = file["crew"][0]["mass_kg"];
    file["uncertain"] = {
        {"unmeasured", true},
        {"person_spread", true},
        {"inputs", {{"/crew/0/mass_kg", {{"kind", "uniform"}, {"low", 0.9 * mass_kg}, {"high", mass_kg}}}}}};
  }
  std::ofstream(folder + "/" + name + ".json") << file.dump(1);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return EXIT_FAILURE;
  const std::uint64_t number = std::strtoull(argv[2], nullptr, 10);
  for (std::uint64_t k = 0; k < number; ++k) write(argv[1], 2 * k < number ? Mode::ordinary : Mode::edges, k);
}
