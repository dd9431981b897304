#include "bide/weather/cache.hpp"

#include <algorithm>

namespace bide::weather {

std::variant<Record, scenario::Diagnostics> Cache::load(const scenario::ValidScenario& valid) {
  const scenario::ResolvedWeather& weather = valid.weather;
  const Site site = site_of(valid);
  const auto find = [&] {
    return std::find_if(records_.begin(), records_.end(), [&](const Entry& each) {
      return each.site == site && each.weather == weather && each.folder == valid.folder;
    });
  };
  {
    const std::lock_guard lock(mutex_);
    if (const auto found = find(); found != records_.end()) {
      std::rotate(found, found + 1, records_.end());
      return records_.back().record;
    }
  }
  // Built outside the lock: another thread may build the same, which costs time and changes nothing.
  auto loaded = load_weather(
      weather, site, valid.folder, *sun_of(site),
      [this](const std::filesystem::path& file, scenario::WeatherKind kind) { return parsed(file, kind); });
  if (auto* problems = std::get_if<scenario::Diagnostics>(&loaded)) {
    for (scenario::Diagnostic& problem : *problems) problem.file = valid.file;
    return loaded;
  }
  const std::lock_guard lock(mutex_);
  if (const auto found = find(); found != records_.end()) return found->record;
  if (records_.size() == most_records) records_.erase(records_.begin());
  records_.push_back({weather, valid.folder, site, std::get<Record>(loaded)});
  return loaded;
}

std::shared_ptr<const SunTrack> Cache::sun_of(const Site& site) {
  {
    const std::lock_guard lock(mutex_);
    if (sun_ && fits(*sun_, site)) return sun_;
  }
  auto sun = std::make_shared<const SunTrack>(sun_track(site));
  const std::lock_guard lock(mutex_);
  return sun_ = std::move(sun);
}

std::shared_ptr<const Parsed> Cache::parsed(const std::filesystem::path& file, scenario::WeatherKind kind) {
  const FileKey key{file, kind};
  {
    const std::lock_guard lock(mutex_);
    if (const auto found = files_.find(key); found != files_.end()) return found->second;
  }
  auto read = std::make_shared<const Parsed>(read_observations(file, kind));
  const std::lock_guard lock(mutex_);
  return files_.emplace(key, std::move(read)).first->second;
}

}  // namespace bide::weather
