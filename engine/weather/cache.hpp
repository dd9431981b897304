// Weather of many scenarios that are much alike: each file is read once, the sun of one place serves all
// weather there, and equal weather at an equal site is one record that they share.
//
// States: what was read and built. Any number of threads may ask. What is handed out never changes, and is
// the record that load() makes, bit for bit: whether it was there already shows in the time taken alone. A
// file that changes under a cache goes unseen, so that all samples of a study have the same weather.
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
  std::variant<Record, scenario::Diagnostics> load(const scenario::ValidScenario&);

  // Records in memory at most; the one that was asked for longest ago gives way. Where weather is drawn, no
  // record is asked for twice, and a million of them must not pile up.
  static constexpr std::size_t most_records = 16;

 private:
  struct Entry {
    scenario::Weather weather;
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
