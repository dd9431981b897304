// Hours at which help comes, worked out by hand from weather of straight lines.
#include "bide/study/questions/help.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "bide/core/interpolate.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "bide/weather/record.hpp"
#include "support/near.hpp"

using namespace bide;
using bide::test::Near;
using scenario::HeldBackAbove;
using study::Help;
using study::help_in_weather;

namespace {

struct Row {
  double at_h, wind_m_s, wave_m;
};

// A record of the rows, straight between them, that ends with the last.
weather::Record record_of(const std::vector<Row>& rows) {
  std::vector<double> at_s, wind, wave;
  for (const Row& row : rows) {
    at_s.push_back(row.at_h * 3600);
    wind.push_back(row.wind_m_s);
    wave.push_back(row.wave_m);
  }
  const weather::Site site{1.9e9, at_s.back(), 50, -20, 2.5};
  return weather::RecordBuilder::build(site, weather::sun_track(site), at_s,
                                       [&](double t_s, const weather::SunPosition&) {
                                         return weather::Atmosphere{
                                             10,     12,  900, interpolate_linear(at_s, wind, t_s),
                                             101325, 0.5, 0,   {interpolate_linear(at_s, wave, t_s), 8}};
                                       },
                                       {});
}

weather::Record steady(double wind_m_s, double wave_m, double hours) {
  return record_of({{0, wind_m_s, wave_m}, {hours, wind_m_s, wave_m}});
}

// 10 m/s, and 24 from 7 to 18 h, half an hour from either limit of 17 on both sides: above it for 12 h.
weather::Record gale() {
  return record_of({{0, 10, 1}, {6, 10, 1}, {7, 24, 1}, {18, 24, 1}, {19, 10, 1}, {48, 10, 1}});
}

const HeldBackAbove wind_17{17, {}}, waves_4{{}, 4};

}  // namespace

TEST_CASE("steady weather at or below the limits: help comes at the hour drawn") {
  for (const HeldBackAbove& limits : {wind_17, waves_4, HeldBackAbove{17, 4}})
    for (const auto& weather : {steady(10, 2, 24), steady(17, 4, 24)}) {
      const Help help = help_in_weather(weather, limits, 7.3, 24);
      CHECK(help.at_h == Near(7.3));
      CHECK(help.held_back_h == 0);
      CHECK_FALSE(help.no_weather);
    }
}

TEST_CASE("steady weather above a limit: help does not come within the hours followed, and it says why") {
  for (const double needed_h : {0.0, 3.0, 50.0}) {
    const Help by_wind = help_in_weather(steady(17.1, 2, 24), wind_17, needed_h, 24);
    CHECK(std::isinf(by_wind.at_h));
    CHECK(by_wind.held_back_h == Near(24));
    CHECK(by_wind.no_weather);
    const Help by_waves = help_in_weather(steady(1, 4.1, 24), {17, 4}, needed_h, 20);
    CHECK(std::isinf(by_waves.at_h));
    CHECK(by_waves.held_back_h == Near(20));
    CHECK(by_waves.no_weather);
  }
}

TEST_CASE("a gale of twelve hours puts off by twelve hours what is not done before it") {
  const weather::Record weather = gale();
  CHECK(help_in_weather(weather, wind_17, 6.5, 48).at_h == Near(6.5));  // done as it begins
  CHECK(help_in_weather(weather, wind_17, 6.5, 48).held_back_h == 0);
  CHECK(help_in_weather(weather, wind_17, 6.6, 48).at_h == Near(18.6));
  const Help help = help_in_weather(weather, wind_17, 10, 48);
  CHECK(help.at_h == Near(22));
  CHECK(help.held_back_h == Near(12));
  CHECK(help_in_weather(weather, waves_4, 10, 48).at_h == Near(10));  // waves of 1 m hold nothing back
}

TEST_CASE(
    "hours not used up within the horizon are beyond it, and weather after the record is not invented") {
  const Help short_of = help_in_weather(gale(), wind_17, 12.5, 24);  // 6.5 h before the gale, 5.5 after it
  CHECK(std::isinf(short_of.at_h));
  CHECK(short_of.held_back_h == Near(12));
  CHECK_FALSE(short_of.no_weather);
  CHECK(help_in_weather(gale(), wind_17, 12, 24).at_h == Near(24));
  // 12.07 h lies between knots ten minutes apart.
  CHECK(help_in_weather(gale(), wind_17, 10, 12.07).held_back_h == Near(5.57));
  const Help later = help_in_weather(steady(10, 1, 24), wind_17, 30, 48);
  CHECK(std::isinf(later.at_h));
  CHECK(later.held_back_h == 0);
}

// From 6 to 6.1 h the wind rises from 10 to 24: at 13 after 3/14 of it. It falls from 8.05 to 8.15 h: at 13
// after 11/14. Above for 8.05 + 1.1/14 - 6 - 0.3/14 = 2.05 + 0.8/14 h.
TEST_CASE("a limit is crossed within a row, where the straight line crosses it") {
  const weather::Record weather =
      record_of({{0, 10, 1}, {6, 10, 1}, {6.1, 24, 1}, {8.05, 24, 1}, {8.15, 10, 1}, {24, 10, 1}});
  const Help help = help_in_weather(weather, {13, {}}, 9, 24);
  CHECK(help.held_back_h == Near(2.05 + 0.8 / 14));
  CHECK(help.at_h == Near(11.05 + 0.8 / 14));
  // Done within the row in which the wind rises, and within that in which it falls.
  CHECK(help_in_weather(weather, {13, {}}, 6.01, 24).at_h == Near(6.01));
  CHECK(help_in_weather(weather, {13, {}}, 6 + 0.4 / 14, 24).at_h == Near(8.05 + 1.2 / 14));
}

TEST_CASE("help that needs no hours comes with the first weather it can work in") {
  const weather::Record weather = record_of({{0, 24, 1}, {2, 24, 1}, {3, 10, 1}, {24, 10, 1}});
  const Help help = help_in_weather(weather, wind_17, 0, 24);
  CHECK(help.at_h == Near(2.5));
  CHECK(help.held_back_h == Near(2.5));
}

// Wind above 17 from 10.5 to 12.5 h, waves above 4 from 11 to 13 h: held back from 10.5 to 13.
TEST_CASE("either limit holds help back; hours above both count once") {
  const weather::Record weather =
      record_of({{0, 10, 2}, {10, 10, 2}, {11, 24, 4}, {12, 24, 6}, {13, 10, 4}, {14, 10, 2}, {24, 10, 2}});
  CHECK(help_in_weather(weather, wind_17, 12, 24).held_back_h == Near(2));
  CHECK(help_in_weather(weather, waves_4, 12, 24).held_back_h == Near(2));
  const Help both = help_in_weather(weather, {17, 4}, 12, 24);
  CHECK(both.held_back_h == Near(2.5));
  CHECK(both.at_h == Near(14.5));
}

// From 12 to 12.1 h the wind falls from 20 to 10, below 17 after 0.3 of it; the waves rise from 2 to 6.
TEST_CASE("one limit is left and the other passed within the same row") {
  const weather::Record weather =
      record_of({{0, 20, 2}, {12, 20, 2}, {12.1, 10, 6}, {20, 10, 6}, {21, 10, 2}, {24, 10, 2}});
  // Above 3.6 m after 0.4: 0.01 h between the two.
  const Help between = help_in_weather(weather, {17, 3.6}, 0.005, 24);
  CHECK(between.at_h == Near(12.035));
  CHECK(between.held_back_h == Near(12.03));
  // Above 3 m after 0.25: no time between them; below again at 20.75 h.
  const Help none = help_in_weather(weather, {17, 3}, 0.005, 24);
  CHECK(none.at_h == Near(20.755));
  CHECK(none.held_back_h == Near(20.75));
}

TEST_CASE("without limits the hour drawn stands, whatever the weather and the horizon") {
  scenario::Rescue rescue;
  rescue.kind = scenario::RescueKind::fixed;
  CHECK(study::help_of(rescue, 60, steady(40, 12, 24), 24).at_h == 60);
  rescue.held_back_above = wind_17;
  CHECK(std::isinf(study::help_of(rescue, 6, steady(40, 12, 24), 24).at_h));
}

TEST_CASE("each sample's help is held back by the weather of that sample") {
  const std::string text = R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z",
    "duration_h": 24, "position": {"latitude_deg": 49, "longitude_deg": -21},
    "weather": {"kind": "constant", "air_temperature_degC": 10, "water_temperature_degC": 11,
                "wind_speed_m_s": 8},
    "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
    "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75}],
    "uncertain": {"inputs": {"/weather/wind_speed_m_s": {"kind": "uniform", "low": 10, "high": 20}},
      "rescue": {"kind": "fixed", "at_h": 9, "held_back_above": {"wind_speed_m_s": 15}}}})";
  const auto valid = std::get<scenario::ValidScenario>(scenario::validate_text(text, "s.json", "."));
  const study::Sampler sampler(valid);
  int held_back = 0, made = 0;
  const study::MakeSample make = study::drawing(
      sampler, 4, [&](std::uint64_t k, const study::Drawn& drawn, const study::Sample& sample) {
        CAPTURE(k);
        ++made;
        const double wind_m_s = std::get<double>(drawn.settings.front().value);
        const Help help =
            study::help_of(*valid.scenario.uncertain->rescue, *drawn.rescue_h, sample.weather, 24);
        held_back += help.no_weather ? 1 : 0;
        CHECK(help.no_weather == (wind_m_s > 15));
        CHECK((wind_m_s > 15 ? std::isinf(help.at_h) : std::abs(help.at_h - 9) < 1e-9));
      });
  constexpr int samples = 32;
  for (std::uint64_t k = 0; k < samples; ++k) make(k);
  CHECK(made == samples);
  CHECK(held_back > 5);
  CHECK(held_back < samples - 5);
}
