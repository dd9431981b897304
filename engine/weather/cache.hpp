// A cache for the weather of many similar scenarios: each file is read once, the sun is computed once for a
// site, and equal weather at an equal site is one shared record.
//
// States: what was read and built. Any number of threads may ask. A record never changes once handed out and
// equals the one that load() makes, bit for bit; the cache saves time only. A file that changes later is not
// read again, so that all samples of a study have the same weather.
#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <mutex>
#include <utility>
#include <vector>

#include "bide/weather/load.hpp"

namespace bide::weather {

class Cache {
 public:
  // As weather::load(), from the cache where possible.
  // @return the record, or every problem found
  std::variant<Record, scenario::Diagnostics> load(const scenario::ValidScenario&);

  // Records kept at most; the one used longest ago is dropped first. Where weather is drawn at random, no
  // record is asked for twice, and a million of them must not pile up.
  static constexpr std::size_t most_records = 16;

 private:
  struct Entry {
    scenario::ResolvedWeather weather;
    std::filesystem::path folder;
    Site site;
    Record record;
  };
  using FileKey = std::pair<std::filesystem::path, scenario::WeatherKind>;

  std::mutex mutex_;
  std::vector<Entry> records_;  // the latest asked for at the back
  std::map<FileKey, std::shared_ptr<const Parsed>> files_;
  std::shared_ptr<const SunTrack> sun_;  // the latest

  std::shared_ptr<const SunTrack> sun_of(const Site& site);
  std::shared_ptr<const Parsed> parsed(const std::filesystem::path& file, scenario::WeatherKind kind);
};

}  // namespace bide::weather
