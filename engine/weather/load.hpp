// The weather part of a scenario, at a place and time, to a Record.
//
// States: none. Inputs: a resolved scenario::Weather (as validate() leaves it), the folder its file is
// relative to. Validity: problems come as diagnostics with their JSON pointer. Pressure missing from a file
// without a fallback is the standard atmosphere, with a note; waves missing are those of the wind; a dew
// point above the air temperature counts as saturation. A daily cycle is a sinusoid in local solar time with
// the relative humidity held; over the ocean the true swing is mostly below 1 K. Source: sun.hpp, sky.hpp,
// sea.hpp, gaps.hpp.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>

#include "bide/weather/observations.hpp"
#include "bide/weather/record.hpp"

namespace bide::weather {

std::variant<Record, scenario::Diagnostics> load_weather(const scenario::Weather& weather, const Site& site,
                                                         const std::filesystem::path& folder);

// A weather file read and parsed; kinds csv and ndbc. Problems as sentences.
using Parsed = std::variant<Observations, Problems>;
Parsed read_observations(const std::filesystem::path& file, scenario::WeatherKind kind);

// load_weather() with the sun of the site, and with the parsed file asked for, at most once, so that both may
// serve many records.
using ParsedFile =
    std::function<std::shared_ptr<const Parsed>(const std::filesystem::path& file, scenario::WeatherKind)>;
std::variant<Record, scenario::Diagnostics> load_weather(const scenario::Weather& weather, const Site& site,
                                                         const std::filesystem::path& folder,
                                                         const SunTrack& sun, const ParsedFile& parsed);

// A file's observations made into a record; problems as sentences.
std::variant<Record, Problems> record_of(const Observations& file, const scenario::Weather& weather,
                                         const Site& site, const SunTrack& sun);

// Diameter of the circle with the raft's floor area; without a raft, a floating person's own length.
double following_length_m(const scenario::ValidScenario&);

Site site_of(const scenario::ValidScenario&);

}  // namespace bide::weather
