// Samples that share their weather: the same bits as samples that share nothing.
#include "bide/study/sampling/make_sample.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

#include "bide/study/records/sample_bytes.hpp"

using namespace bide;

namespace {

scenario::ValidScenario two_people(const std::string& weather, const std::string& inputs) {
  const std::string text = R"({"format": "bide scenario 1", "start_time_utc": "2031-09-03T12:00:00Z",
    "duration_h": 6, "position": {"latitude_deg": 41, "longitude_deg": -58},
    "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
    "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75},
             {"sex": "female", "age_years": 25, "height_m": 1.65, "mass_kg": 60}],
    "weather": )" + weather +
                           R"(, "uncertain": {"person_spread": true, "inputs": )" + inputs + "}}";
  auto valid = scenario::validate_text(text, "s.json", std::filesystem::path(BIDE_SOURCE_DIR) / "scenarios");
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(valid));
  return std::get<scenario::ValidScenario>(std::move(valid));
}

study::Sample made(std::variant<study::Sample, study::NotMade> sample) {
  REQUIRE(std::holds_alternative<study::Sample>(sample));
  return std::get<study::Sample>(std::move(sample));
}

std::vector<std::byte> bytes_of(const study::SampleResult& result) {
  REQUIRE(result.failure.empty());
  std::vector<std::byte> bytes(study::sample_bytes(result.persons.size()));
  study::write_sample(result, bytes);
  return bytes;
}

using Made = std::array<study::Sample, block_width>;

std::array<study::SampleResult, block_width> run(const Made& samples) {
  std::array<const study::Sample*, block_width> each;
  for (std::size_t i = 0; i < samples.size(); ++i) each[i] = &samples[i];
  return study::run_block(each);
}

// A block of samples by one plan, beside the same with a cache each.
struct Both {
  Made shared, apart;
};
Both both_of(const study::Sampler& sampler) {
  const study::MakeSample plan = study::drawing(sampler, 3);
  const auto apart = [&](std::uint64_t k) {
    weather::Cache fresh;
    return made(study::make_sample(sampler.scenario_of(sampler.draw(3, k)), fresh));
  };
  Both out;
  for (std::uint64_t k = 0; k < block_width; ++k) {
    out.shared[k] = made(plan(k));
    out.apart[k] = apart(k);
  }
  return out;
}

void check_same_bits(const Both& both) {
  const auto shared = run(both.shared), apart = run(both.apart);
  for (std::size_t i = 0; i < shared.size(); ++i) CHECK(bytes_of(shared[i]) == bytes_of(apart[i]));
}

const std::string buoy = R"({"kind": "ndbc", "file": "weather/invented_station.txt",
  "cloud_cover_fraction": 0.6, "rain_mm_h": 0.05, "longest_gap_h": 6, "anemometer_height_m": 5})";
const std::string steady = R"({"kind": "constant", "air_temperature_degC": 5, "water_temperature_degC": 8,
  "wind_speed_m_s": 9})";

}  // namespace

TEST_CASE("samples under the same weather share it, and end as those that do not") {
  for (const std::string& weather : {buoy, steady}) {
    CAPTURE(weather);
    const study::Sampler sampler(two_people(weather, "{}"));
    const Both both = both_of(sampler);
    CHECK(both.shared[1].weather.same_as(both.shared[0].weather));
    CHECK_FALSE(both.apart[1].weather.same_as(both.apart[0].weather));
    check_same_bits(both);
  }
}

TEST_CASE("a drawn weather is the sample's own") {
  const study::Sampler sampler(
      two_people(steady, R"({"/weather/wind_speed_m_s": {"kind": "uniform", "low": 2, "high": 14}})"));
  const Both both = both_of(sampler);
  for (std::size_t i = 1; i < both.shared.size(); ++i) {
    CHECK_FALSE(both.shared[i].weather.same_as(both.shared[i - 1].weather));
    CHECK(both.shared[i].weather.at(0).wind_10m_m_s != both.shared[i - 1].weather.at(0).wind_10m_m_s);
  }
  check_same_bits(both);
}
