#include "axes.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "bide/core/csv.hpp"
#include "refused.hpp"
#include "time.hpp"

namespace bide::tool::cf {
namespace {

constexpr std::size_t most_rows = 1'000'000, most_times = 10'000'000;

enum class AxisKind { other, latitude, longitude, time, rotated };

bool one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

AxisKind kind_of(const File& file, const Head& head) {
  const std::string name = file.text(&head, "standard_name").value_or("");
  const std::string units = file.text(&head, "units").value_or("");
  if (one_of(name, {"grid_latitude", "grid_longitude", "projection_x_coordinate", "projection_y_coordinate"}))
    return AxisKind::rotated;
  if (name == "latitude" ||
      one_of(units, {"degrees_north", "degree_north", "degrees_N", "degree_N", "degreesN"}))
    return AxisKind::latitude;
  if (name == "longitude" ||
      one_of(units, {"degrees_east", "degree_east", "degrees_E", "degree_E", "degreesE"}))
    return AxisKind::longitude;
  // The dimension's own variable is time by its name as well, so that what is wrong with its units is said.
  const bool own = head.dimensions.size() == 1 && head.dimensions.front().name == head.name;
  if (name == "time" || units.find(" since ") != std::string::npos ||
      (own && one_of(head.name, {"time", "valid_time"})))
    return AxisKind::time;
  return AxisKind::other;
}

const char* words(AxisKind kind) {
  return kind == AxisKind::latitude ? "latitude" : kind == AxisKind::longitude ? "longitude" : "time";
}

// The variable with a dimension's coordinates: the one of the same name before others along it.
std::optional<std::pair<const Head*, AxisKind>> coordinate(const File& file, const Dimension& dimension) {
  const Head* own = file.find(dimension.name);
  if (own != nullptr && own->dimensions.size() == 1 && own->dimensions.front() == dimension) {
    const AxisKind kind = kind_of(file, *own);
    if (kind != AxisKind::other) return std::pair(own, kind);
  }
  for (const Head& each : file.variables())
    if (each.dimensions.size() == 1 && each.dimensions.front() == dimension)
      if (const AxisKind kind = kind_of(file, each); kind != AxisKind::other) return std::pair(&each, kind);
  return {};
}

std::vector<double> degrees(const File& file, const Head& head, AxisKind kind) {
  constexpr double quarter_turn = 90, two_turns = 720, slack = 1e-6;
  std::size_t length = 1;
  for (const Dimension& each : head.dimensions) length *= each.length;
  if (length == 0 || length > most_rows)
    refuse("{}: found {} values of {}; allowed 1 to {}", head.name, length, words(kind), most_rows);
  std::vector<double> out = file.read_all(head);
  const double most = kind == AxisKind::latitude ? quarter_turn : two_turns;
  for (const double each : out)
    if (!(std::abs(each) <= most + slack))
      refuse("{}: found a {} of {}; allowed {} to {}", head.name, words(kind), each, -most, most);
  return out;
}

TimeUnits units_of(const File& file, const Head& time) {
  if (time.type == Head::Type::text)
    refuse("{}: found text; allowed numbers in a unit such as \"hours since 1900-01-01 00:00:00\"",
           time.name);
  const auto units = file.text(&time, "units");
  try {
    return read_time_units(units.value_or(""), file.text(&time, "calendar").value_or(""));
  } catch (const Refused& wrong) {
    refuse("{}:{}", time.name, wrong.what());
  }
}

std::vector<double> times(const File& file, const Head& time) {
  std::size_t length = 1;
  for (const Dimension& each : time.dimensions) length *= each.length;
  if (length == 0 || length > most_times)
    refuse("{}: found {} times; allowed 1 to {}", time.name, length, most_times);
  const TimeUnits units = units_of(file, time);
  constexpr double thousand_centuries_s = 3.2e12;
  std::vector<double> out = file.read_all(time);
  for (std::size_t i = 0; i < out.size(); ++i) {
    const double value = out[i];
    out[i] = unix_s(units, value);
    if (!(std::abs(out[i]) < thousand_centuries_s))
      refuse("{}: found {} as time {} of {}; allowed a time", time.name, value, i + 1, out.size());
    if (i > 0 && out[i] <= out[i - 1])
      refuse("{}: found {} after {}, times {} and {}; allowed ascending ones, a second apart at least",
             time.name, value, (out[i - 1] - units.epoch_unix_s) / units.unit_s, i, i + 1);
  }
  return out;
}

// The time that each value stands for, by the bounds of time.
std::vector<double> intervals(const File& file, const Head& time) {
  const auto name = file.text(&time, "bounds");
  const Head* bounds = name ? file.find(*name) : nullptr;
  if (bounds == nullptr || time.dimensions.size() != 1) return {};
  if (bounds->dimensions.size() != 2 || bounds->dimensions[0] != time.dimensions[0] ||
      bounds->dimensions[1].length != 2)
    refuse("{}: found bounds of time {}; allowed {}({}, 2)", time.name, shape(*bounds), bounds->name,
           time.dimensions.front().name);
  const TimeUnits units = units_of(file, time);
  const std::vector<double> both = file.read_all(*bounds);
  std::vector<double> out;
  for (std::size_t i = 0; i + 1 < both.size(); i += 2) {
    out.push_back(unix_s(units, both[i + 1]) - unix_s(units, both[i]));
    if (!(out.back() > 0))
      refuse("{}: found bounds {} and {}; allowed the begin of an interval and its end", bounds->name,
             both[i], both[i + 1]);
  }
  return out;
}

std::vector<int> versions(const File& file, const Dimension& dimension) {
  std::vector<int> out;
  const Head* head = file.find(dimension.name);
  constexpr std::size_t most_versions = 100;
  if (dimension.length == 0 || dimension.length > most_versions)
    refuse("dimension {}: found {} of them; allowed 1 to {}", dimension.name, dimension.length,
           most_versions);
  std::vector<std::string> texts;
  if (head != nullptr && head->dimensions.size() == 1 && head->type != Head::Type::text)
    for (const double each : file.read_all(*head)) texts.push_back(fmt::format("{}", each));
  else if (head != nullptr)
    texts = file.read_words(*head);
  for (std::size_t i = 0; i < dimension.length; ++i) {
    const auto number =
        i < texts.size() ? parse_number(texts[i]) : std::optional<double>(static_cast<double>(i + 1));
    constexpr double largest = 1e6;
    if (!number || !(std::abs(*number) < largest))
      refuse("{}: found \"{}\"; allowed whole numbers", dimension.name, texts[i]);
    out.push_back(static_cast<int>(*number));
  }
  return out;
}

// Times that the file marks with another version than the final one.
std::vector<bool> preliminary(const File& file, const Dimension& time) {
  const Head* head = file.find("expver");
  std::vector<bool> out;
  if (head == nullptr || head->dimensions.empty() || head->dimensions.front() != time) return out;
  if (head->type == Head::Type::text)
    for (const std::string& each : file.read_words(*head)) out.push_back(parse_number(each) != 1);
  else if (head->dimensions.size() == 1)
    for (const double each : file.read_all(*head)) out.push_back(each != 1);
  return out;
}

bool is_single(const Head& head) {
  return std::all_of(head.dimensions.begin(), head.dimensions.end(),
                     [](const Dimension& each) { return each.length == 1; });
}

// A coordinate that is no dimension of the variable: of a file with one place or one time.
const Head* single_coordinate(const File& file, AxisKind kind) {
  for (const Head& each : file.variables())
    if (is_single(each) && each.type != Head::Type::text && kind_of(file, each) == kind) return &each;
  return nullptr;
}

[[noreturn]] void refuse_without(const File& file, const Head& head, AxisKind kind) {
  for (const Head& each : file.variables())
    if (each.dimensions.size() > 1 && kind_of(file, each) == kind)
      refuse("{}: found {} in {} dimensions, {}; allowed one dimension (put it on a regular grid first)",
             shape(head), words(kind), each.dimensions.size(), shape(each));
  refuse("{}: found no {}; allowed one in a dimension of its own, or a single value", shape(head),
         words(kind));
}

void add_dimension(const File& file, const Dimension& dimension, Variable& out) {
  if (dimension.name == "expver") {
    out.versions = versions(file, dimension);
    out.roles.push_back(Role::version);
    return;
  }
  const auto found = coordinate(file, dimension);
  const AxisKind kind = found ? found->second : AxisKind::other;
  const auto take = [&](std::vector<double>& to, Role role, std::vector<double> values) {
    if (!to.empty()) refuse("{}: found two dimensions of {}; allowed one", shape(out.head), words(kind));
    to = std::move(values);
    out.roles.push_back(role);
  };
  if (kind == AxisKind::rotated && dimension.length > 1)
    refuse(
        "{}: found a rotated or projected grid, {}; allowed latitude and longitude in one dimension each "
        "(put it on a "
        "regular grid first)",
        shape(out.head), shape(*found->first));
  if (kind == AxisKind::time) {
    take(out.unix_s, Role::time, times(file, *found->first));
    if (out.field == Field::rain_amount) out.interval_s = intervals(file, *found->first);
    out.preliminary = preliminary(file, dimension);
    if (out.preliminary.size() != out.unix_s.size()) out.preliminary.clear();
  } else if (kind == AxisKind::latitude || kind == AxisKind::longitude) {
    for (const Head& each : file.variables())
      if (dimension.length > 1 && each.dimensions.size() == 1 && each.dimensions.front() == dimension &&
          kind_of(file, each) == (kind == AxisKind::latitude ? AxisKind::longitude : AxisKind::latitude))
        refuse("{}: found latitude and longitude along one dimension, {}; allowed a dimension each",
               shape(out.head), dimension.name);
    if (kind == AxisKind::latitude)
      take(out.latitude_deg, Role::latitude, degrees(file, *found->first, kind));
    else
      take(out.longitude_deg, Role::longitude, degrees(file, *found->first, kind));
  } else if (dimension.length == 1) {
    out.roles.push_back(Role::single);
  } else {
    const Head* place = nullptr;
    for (const Head& each : file.variables())
      if (each.dimensions.size() > 1 &&
          (kind_of(file, each) == AxisKind::latitude || kind_of(file, each) == AxisKind::time) &&
          std::find(each.dimensions.begin(), each.dimensions.end(), dimension) != each.dimensions.end())
        place = &each;
    if (place != nullptr) refuse_without(file, out.head, kind_of(file, *place));
    refuse(
        "{}: found {} values along dimension {}; allowed time, latitude, longitude and expver, and one value "
        "along any "
        "other",
        shape(out.head), dimension.length, dimension.name);
  }
}

}  // namespace

void read_axes(const File& file, Variable& variable) {
  for (const Dimension& each : variable.head.dimensions) add_dimension(file, each, variable);
  const auto single = [&](std::vector<double>& to, AxisKind kind, const auto& read) {
    if (!to.empty()) return;
    const Head* head = single_coordinate(file, kind);
    if (head == nullptr) refuse_without(file, variable.head, kind);
    to = read(*head);
  };
  const auto place = [&](AxisKind kind) {
    return [&file, kind](const Head& head) { return degrees(file, head, kind); };
  };
  single(variable.latitude_deg, AxisKind::latitude, place(AxisKind::latitude));
  single(variable.longitude_deg, AxisKind::longitude, place(AxisKind::longitude));
  single(variable.unix_s, AxisKind::time, [&](const Head& head) { return times(file, head); });
}

std::optional<std::string> wrong_height(const File& file, Field field, const Head& head) {
  const FieldFacts& f = facts(field);
  const auto outside = [&](double height_m) -> std::optional<std::string> {
    if (height_m >= f.lowest_height_m && height_m <= f.highest_height_m) return {};
    return fmt::format("{} m", height_m);
  };
  // "100 metre U wind component"
  const std::string title = file.text(&head, "long_name").value_or("");
  const std::size_t blank = title.find(' ');
  if (blank != std::string::npos &&
      (title.compare(blank, 4, " met") == 0 || title.compare(blank, 3, " m ") == 0))
    if (const auto height = parse_number(std::string_view(title).substr(0, blank)))
      if (auto wrong = outside(*height)) return wrong;
  const std::string named = " " + file.text(&head, "coordinates").value_or("") + " ";
  for (const Head& each : file.variables()) {
    const bool along = each.dimensions.size() == 1 &&
                       std::find(head.dimensions.begin(), head.dimensions.end(), each.dimensions.front()) !=
                           head.dimensions.end();
    const bool beside = is_single(each) && named.find(" " + each.name + " ") != std::string::npos;
    if (!is_single(each) || each.type == Head::Type::text || !(along || beside)) continue;
    const std::string units = file.text(&each, "units").value_or("");
    const bool pressure = one_of(units, {"Pa", "hPa", "mbar", "millibar", "millibars"});
    const bool height = one_of(units, {"m", "meters", "metres"}) &&
                        (file.text(&each, "standard_name") == "height" || each.name == "height");
    if (!pressure && !height) continue;
    const std::vector<double> value = file.read_all(each);
    if (value.size() != 1) continue;
    if (pressure) return fmt::format("a level of {} {}", value.front(), units);
    if (auto wrong = outside(value.front())) return wrong;
  }
  return {};
}

}  // namespace bide::tool::cf
