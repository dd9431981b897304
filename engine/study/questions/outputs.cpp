#include "bide/study/questions/outputs.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/shape.hpp"

namespace bide::study {

namespace {

using Time = double PersonResult::*;

// The n-th (from 0) of the crew to reach something, h.
double nth_h(const SampleResult& r, Time time, std::size_t n) {
  std::vector<double> times;
  for (const PersonResult& p : r.persons) times.push_back(p.*time);
  std::sort(times.begin(), times.end());
  return times[n] / hour_s;
}

void add_crew_times(std::vector<Output>& out, const std::string& what, Time time) {
  out.push_back({"first " + what, "h", [time](const SampleResult& r) { return nth_h(r, time, 0); }, true});
  out.push_back({"half " + what, "h",
                 [time](const SampleResult& r) { return nth_h(r, time, (r.persons.size() + 1) / 2 - 1); },
                 true});
  out.push_back({"last " + what, "h",
                 [time](const SampleResult& r) { return nth_h(r, time, r.persons.size() - 1); }, true});
}

template <class Pick>
void add_extreme(std::vector<Output>& out, const char* name, const char* unit, double PersonResult::*member,
                 Pick pick) {
  out.push_back({name, unit, [member, pick](const SampleResult& r) {
                   double value = r.persons.front().*member;
                   for (const PersonResult& p : r.persons) value = pick(value, p.*member);
                   return value;
                 }});
}

void add(std::vector<Output>& out, const char* name, const char* unit, double SampleResult::*member,
         double scale = 1, bool is_time = false) {
  out.push_back({name, unit, [member, scale](const SampleResult& r) { return r.*member / scale; }, is_time});
}

void add_person(std::vector<Output>& out, int p) {
  const auto put = [&](const char* name, const char* unit, auto of_person, bool is_time) {
    out.push_back(
        {person_label(p) + " " + name, unit,
         [p, of_person](const SampleResult& r) { return of_person(r.persons[static_cast<std::size_t>(p)]); },
         is_time, p, name});
  };
  const auto one = [&](const char* name, const char* unit, double PersonResult::*member, double scale,
                       bool is_time = false) {
    put(
        name, unit, [member, scale](const PersonResult& r) { return r.*member / scale; }, is_time);
  };
  one("able until", "h", &PersonResult::able_until_s, hour_s, true);
  one("alive until", "h", &PersonResult::alive_until_s, hour_s, true);
  one("unconscious", "h", &PersonResult::unconscious_s, hour_s, true);
  one("lowest core", "degC", &PersonResult::lowest_core_degC, 1);
  one("highest core", "degC", &PersonResult::highest_core_degC, 1);
  one("lowest finger", "degC", &PersonResult::lowest_finger_degC, 1);
  one("worst water deficit", "%", &PersonResult::worst_water_deficit_pct, 1);
  one("worst osmolality", "mOsm/kg", &PersonResult::worst_osmolality_mOsm_kg, 1);
  one("hours of hands", "h", &PersonResult::hands_h, 1);
  one("hours of shivering", "h", &PersonResult::shivering_h, 1);
  one("hours of cold wet feet", "h", &PersonResult::cold_feet_h, 1);
  for (std::size_t i = 0; i < balance_terms.size(); ++i)
    put(
        balance_terms[i].name, balance_terms[i].unit, [i](const PersonResult& r) { return r.balance[i]; },
        false);
}

}  // namespace

std::vector<Output> outputs(int persons) {
  const auto least = [](double a, double b) { return std::min(a, b); };
  const auto most = [](double a, double b) { return std::max(a, b); };
  std::vector<Output> out;
  add_crew_times(out, "able until", &PersonResult::able_until_s);
  add_crew_times(out, "alive until", &PersonResult::alive_until_s);
  add_extreme(out, "coldest core", "degC", &PersonResult::lowest_core_degC, least);
  add_extreme(out, "warmest core", "degC", &PersonResult::highest_core_degC, most);
  add_extreme(out, "greatest water deficit", "%", &PersonResult::worst_water_deficit_pct, most);
  add_extreme(out, "fewest hours of hands", "h", &PersonResult::hands_h, least);
  add(out, "coldest inside", "degC", &SampleResult::coldest_inside_degC);
  add(out, "warmest inside", "degC", &SampleResult::warmest_inside_degC);
  add(out, "mean inside", "degC", &SampleResult::mean_inside_degC);
  add(out, "highest CO2", "ppm", &SampleResult::highest_co2_ppm);
  add(out, "hours above 5,000 ppm CO2", "h", &SampleResult::co2_above_5000_ppm_h);
  add(out, "hours above 15,000 ppm CO2", "h", &SampleResult::co2_above_15000_ppm_h);
  add(out, "hours above 30,000 ppm CO2", "h", &SampleResult::co2_above_30000_ppm_h);
  add(out, "water runs out", "h", &SampleResult::water_out_s, hour_s, true);
  add(out, "food runs out", "h", &SampleResult::food_out_s, hour_s, true);
  add(out, "water left", "L", &SampleResult::water_left_L);
  for (std::size_t i = 0; i < system::level_count; ++i)
    if (system::ends(system::limits[i].meaning))
      out.push_back({std::string("near ") + system::limits[i].name, "h",
                     [i](const SampleResult& r) { return r.near_s[i] / hour_s; }, true});
  for (int p = 0; p < persons; ++p) add_person(out, p);
  for (Output& each : out)
    if (each.person < 0) each.figure = each.name;
  return out;
}

const Output* find_output(const std::vector<Output>& outputs, const std::string& name) {
  const auto found =
      std::find_if(outputs.begin(), outputs.end(), [&](const Output& o) { return o.name == name; });
  return found == outputs.end() ? nullptr : &*found;
}

std::variant<std::vector<Output>, scenario::Diagnostics> named_outputs(int persons,
                                                                       const std::vector<std::string>& names,
                                                                       const std::string& file) {
  const std::vector<Output> all = outputs(persons);
  std::vector<std::string_view> known;
  for (const Output& each : all) known.push_back(each.name);
  std::vector<Output> out;
  scenario::Diagnostics wrong;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (const Output* found = find_output(all, names[i]))
      out.push_back(*found);
    else
      wrong.push_back({file, fmt::format("/outputs/{}", i),
                       fmt::format("found {}; allowed {}{}", scenario::in_quotes(names[i]),
                                   scenario::joined(known), scenario::did_you_mean(names[i], known))});
  }
  if (!wrong.empty()) return wrong;
  return out;
}

}  // namespace bide::study
