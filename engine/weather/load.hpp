// The weather part of a scenario, at a place and time, to a Record.
//
// States: none. Inputs: the weather in force, the folder its file is relative to. Validity: problems come as
// diagnostics with their JSON pointer. Where a file has no pressure and there is no fallback, the standard
// atmosphere is taken, with a note; missing waves are those of the wind; a dew point above the air
// temperature counts as saturation. A daily cycle is a sinusoid in local solar time at constant relative
// humidity; over the ocean the true swing is mostly below 1 K. Source: sun.hpp, sky.hpp, sea.hpp, gaps.hpp.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>

#include "bide/weather/observations.hpp"
#include "bide/weather/record.hpp"

namespace bide::weather {

// Makes the record of a weather description at a site.
// @param site    place, start, duration and raft length
// @param folder  that the weather file's path is relative to
// @return the record, or every problem found
std::variant<Record, scenario::Diagnostics> load_weather(const scenario::ResolvedWeather& weather,
                                                         const Site& site,
                                                         const std::filesystem::path& folder);

using Parsed = std::variant<Observations, Problems>;
// Reads and parses a weather file.
// @param file its path, absolute or from the working directory
// @param kind csv or ndbc
// @return its observations, or the problems as sentences
Parsed read_observations(const std::filesystem::path& file, scenario::WeatherKind kind);

// Gives the parsed weather file; called at most once for a record.
using ParsedFile =
    std::function<std::shared_ptr<const Parsed>(const std::filesystem::path& file, scenario::WeatherKind)>;
// load_weather() with the sun and the parsed file given, so that both can be shared between records.
// @param sun    of this site
// @param parsed asked for the file, if the weather has one
std::variant<Record, scenario::Diagnostics> load_weather(const scenario::ResolvedWeather& weather,
                                                         const Site& site,
                                                         const std::filesystem::path& folder,
                                                         const SunTrack& sun, const ParsedFile& parsed);

// Makes a record from a file's observations.
// @return the record, or the problems as sentences
std::variant<Record, Problems> record_of(const Observations& file, const scenario::FileWeather& weather,
                                         const Site& site, const SunTrack& sun);

// Length of what follows the waves: the diameter of the circle with the raft's floor area; without a raft,
// the length of a floating person.
// @return m
double following_length_m(const scenario::ValidScenario&);

// Place, start, duration and raft length of a scenario.
Site site_of(const scenario::ValidScenario&);

}  // namespace bide::weather
