#include "bide/scenario/situation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/month_weather.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/priors.hpp"
#include "bide/scenario/weather_ranges.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/writer.hpp"

namespace bide::scenario {
namespace {

constexpr const char* file = "command line";

struct Flags {
  Diagnostics wrong;
  void refuse(const char* flag, std::string message) { wrong.push_back({file, flag, std::move(message)}); }
};

template <class Kind>
void check_key(Flags& flags, const char* flag, const std::optional<std::string>& key,
               const std::vector<Kind>& kinds, const char* part) {
  if (!key) return;
  std::vector<std::string_view> keys;
  for (const Kind& kind : kinds) keys.push_back(kind.key);
  if (std::find(keys.begin(), keys.end(), *key) == keys.end())
    flags.refuse(flag, fmt::format("found {}; allowed unknown or a key of bide catalogue {}{}",
                                   in_quotes(*key), part, did_you_mean(*key, keys)));
}

bool without_raft(const Situation& s) {
  return s.raft && *s.raft == "none";
}

void check_times(Flags& flags, const Situation& s) {
  const double gone_h = (s.now_unix_s - s.abandoned_unix_s) / hour_s;
  if (gone_h < 0)
    flags.refuse("--abandoned",
                 fmt::format("found {}, which is after now, {}; allowed now or before",
                             format_time_utc(s.abandoned_unix_s), format_time_utc(s.now_unix_s)));
  else if (gone_h + s.ahead_h > longest_h)
    flags.refuse("--abandoned",
                 fmt::format("found {:g} h before now, with {:g} h ahead; allowed {:g} h together", gone_h,
                             s.ahead_h, longest_h));
  if (!s.last_contact_unix_s) return;
  if (*s.last_contact_unix_s > s.now_unix_s)
    flags.refuse("--last-contact",
                 fmt::format("found {}, which is after now, {}; allowed now or before",
                             format_time_utc(*s.last_contact_unix_s), format_time_utc(s.now_unix_s)));
  else if (*s.last_contact_unix_s < s.abandoned_unix_s)
    flags.refuse("--last-contact",
                 fmt::format("found {}, which is before the ship was abandoned, {}; allowed from then to now",
                             format_time_utc(*s.last_contact_unix_s), format_time_utc(s.abandoned_unix_s)));
}

Diagnostics wrong_with(const Situation& s) {
  Flags flags;
  check_times(flags, s);
  if (s.sea_degC && !(*s.sea_degC >= sea_range_degC.low && *s.sea_degC <= sea_range_degC.high))
    flags.refuse("--sea", fmt::format("found {:g}; allowed {:g} to {:g} degC", *s.sea_degC,
                                      sea_range_degC.low, sea_range_degC.high));
  if (!without_raft(s)) check_key(flags, "--raft", s.raft, catalogue().rafts, "rafts");
  check_key(flags, "--clothing", s.clothing, catalogue().ensembles, "ensembles");
  if (without_raft(s) && s.boarding)
    flags.refuse("--boarding", "found a way to board beside --raft none; allowed one of the two");
  return std::move(flags.wrong);
}

std::string of_person(std::string_view pattern, std::size_t index) {
  return std::string(pattern).replace(pattern.find('*'), 1, std::to_string(index));
}

void draw_for_all(Uncertain& u, const Prior& prior, std::size_t persons) {
  SharedInput group{prior.key, {}, *prior.distribution};
  for (const std::string& pattern : prior.inputs)
    for (std::size_t i = 0; i < persons; ++i) group.pointers.push_back(of_person(pattern, i));
  u.groups.push_back(std::move(group));
}

void put_people(Node& document, Uncertain& u, const Situation& s) {
  constexpr double some_age_years = 45;  // of the case as written; the samples draw it
  const bool described = !s.crew.empty();
  const std::size_t persons = described ? s.crew.size() : static_cast<std::size_t>(s.persons);
  for (std::size_t i = 0; i < persons; ++i) {
    const KnownPerson known = described ? s.crew[i] : KnownPerson{Sex::male, some_age_years, {}, {}};
    Node person = person_node(known);
    if (s.clothing) put(person, "/clothing", *s.clothing);
    append(document, "crew", std::move(person));
    if (!described)
      for (const char* key : {"sex", "age"})
        u.inputs.entries.emplace_back(of_person(prior(key).inputs.front(), i), *prior(key).distribution);
    UnknownPerson unknown{fmt::format("/crew/{}", i), {}};
    if (!known.height_m) unknown.unknown.push_back(UnknownPart::height);
    if (!known.mass_kg) unknown.unknown.push_back(UnknownPart::mass);
    unknown.unknown.push_back(UnknownPart::fat);
    u.unknown_persons.push_back(std::move(unknown));
  }
  if (!s.clothing) draw_for_all(u, prior("clothing"), persons);
  draw_for_all(u, prior("lifejackets"), persons);
  u.person_spread = true;
}

void put_raft(Node& document, Uncertain& u, const Situation& s) {
  if (without_raft(s)) {
    put(document, "/boarding/kind", std::string(word(BoardingKind::none)));
    return;
  }
  const Distribution rafts = raft_prior(s.crew.empty() ? s.persons : static_cast<int>(s.crew.size()));
  const std::string key = s.raft ? *s.raft : std::get<std::string>(rafts.values.front());
  put(document, "/raft/kind", key);
  put(document, "/stores/pack", find_raft(key)->pack);
  if (!s.raft) u.inputs.entries.emplace_back(prior("raft").inputs.front(), rafts);
  put(document, "/boarding/kind", s.boarding.value_or(std::string(word(BoardingKind::dry))));
  if (s.boarding) return;
  for (const Alternative& way : priors().boarding) {
    const bool no_raft = std::any_of(way.set.entries.begin(), way.set.entries.end(),
                                     [](const auto& each) { return each.first == "/raft"; });
    if (!(no_raft && s.raft)) u.alternatives.push_back(way);  // people known to be in a raft reached it
  }
}

void draw_sea(Uncertain& u, double month_mean_degC) {
  // Sea warmer than this is in no ocean, and colder than this is ice: none is drawn, whatever may be stated.
  constexpr double warmest_ocean_degC = 36, coldest_ocean_degC = -2;
  Distribution sea = *prior("sea").distribution;
  sea.mean = *sea.mean + month_mean_degC;
  sea.low = std::max(*sea.low + month_mean_degC, coldest_ocean_degC);
  sea.high = std::min(*sea.high + month_mean_degC, warmest_ocean_degC);
  u.inputs.entries.emplace_back(prior("sea").inputs.front(), sea);
}

Node node_of(const Uncertain& u) {
  Node out;
  Diagnostics wrong;
  if (!parse_document(object_to_json(u).dump(), file, out, wrong))
    throw std::logic_error(to_string(wrong.front()));
  return out;
}

Diagnostics beside_climate(const Situation& s, const climate::Month& month) {
  constexpr double unusual_K = 6;
  if (!s.sea_degC || std::abs(*s.sea_degC - month.sea_temperature_degC) <= unusual_K) return {};
  return {{file, "--sea",
           fmt::format("{:g} degC is more than {:g} K from the mean of the month there, {:.1f} degC",
                       *s.sea_degC, unusual_K, month.sea_temperature_degC)}};
}

}  // namespace

std::variant<SituationFile, Diagnostics> scenario_of(const Situation& s) {
  if (auto wrong = wrong_with(s); !wrong.empty()) return wrong;
  const int month_number = s.month.value_or(civil_from_unix_s(s.now_unix_s).month);
  const auto found = climate::month_at(s.place, month_number);
  if (const auto* why = std::get_if<std::string>(&found))
    return Diagnostics{
        {file, "--place",
         fmt::format("found {:g},{:g}, which {}", s.place.latitude_deg, s.place.longitude_deg, *why)}};
  const auto& month = std::get<climate::Month>(found);
  const double gone_h = (s.now_unix_s - s.abandoned_unix_s) / hour_s;
  SituationFile out{empty_object(), beside_climate(s, month)};
  Node& document = out.document;
  put(document, "/format", std::string(format_word));
  put(document, "/name", s.name);
  put(document, "/setting",
      fmt::format("As stated; the rest is drawn from the priors of the program. "
                  "Weather varies about the means of month {}.",
                  month_number));
  put(document, "/start_time_utc", format_time_utc(s.abandoned_unix_s));
  put(document, "/duration_h", gone_h + s.ahead_h);
  put(document, "/position/latitude_deg", s.place.latitude_deg);
  put(document, "/position/longitude_deg", s.place.longitude_deg);
  put_month_weather(document, WeatherKind::variable, {s.air_degC, s.sea_degC, s.wind_m_s}, month);
  Uncertain u;
  put_raft(document, u, s);
  put(document, "/routine/opening_fraction_day",
      usual_opening_by_day(s.air_degC.value_or(month.air_temperature_degC)));
  put_people(document, u, s);
  if (!s.sea_degC) draw_sea(u, month.sea_temperature_degC);
  u.weather = u.unmeasured = true;
  u.lost_in_first_minutes = s.lost_in_first_minutes;
  u.known = Known{std::nullopt, gone_h};
  if (s.last_contact_unix_s) u.known->alive_at_h = (*s.last_contact_unix_s - s.abandoned_unix_s) / hour_s;
  document.members.push_back({"uncertain", node_of(u)});
  return out;
}

}  // namespace bide::scenario
