#include "bide/study/questions/choose.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

#include "bide/core/units.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/other_raft.hpp"
#include "bide/scenario/part_that_sets.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/study/questions/future.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "bide/weather/weather.hpp"

namespace bide::study {
namespace {

using scenario::ValidScenario;

// A choice nobody can make: said of the flag's words, as "rafts" or "packs".
std::optional<std::string> wrong_key(const std::string& key, const char* list, bool known,
                                     const std::vector<std::string_view>& keys) {
  if (known) return std::nullopt;
  return fmt::format("found \"{}\"; allowed a key of bide catalogue {}{}", key, list,
                     scenario::did_you_mean(key, keys));
}

template <class Kind>
std::vector<std::string_view> keys_of(const std::vector<Kind>& kinds) {
  std::vector<std::string_view> out;
  for (const Kind& kind : kinds) out.push_back(kind.key);
  return out;
}

// What a choice decides. A raft's unmeasured positions outlast a change of raft, and may be drawn.
bool chosen(const std::string& pointer) {
  const bool position = pointer == "/raft/canopy_heat_loss_position" || pointer == "/raft/leakage_position";
  return (pointer.starts_with("/raft/") && !position) || pointer == "/stores/pack";
}

std::optional<Refusal> wrong_with(const std::vector<ValidScenario>& waters, const ChooseQuestion& q) {
  scenario::Diagnostics wrong;
  const auto refuse = [&](const ValidScenario& at, std::string pointer, std::string message) {
    wrong.push_back({at.file, std::move(pointer), std::move(message)});
  };
  const ValidScenario& first = waters.front();
  const auto& catalogue = scenario::catalogue();
  for (const RaftChoice& each : q.rafts) {
    const scenario::RaftKind* kind = scenario::find_raft(each.kind);
    if (auto why = wrong_key(each.kind, "rafts", kind != nullptr, keys_of(catalogue.rafts)))
      refuse(first, "rafts", std::move(*why));
    else if (!each.one_of_two && kind->capacity_persons < static_cast<int>(first.scenario.crew.size()))
      refuse(first, "rafts",
             fmt::format("{} holds {}, the crew is {}; allowed a larger one, or 2x{}: two, of which one is "
                         "lost",
                         each.kind, kind->capacity_persons, first.scenario.crew.size(), each.kind));
  }
  for (const std::string& pack : q.packs)
    if (auto why = wrong_key(pack, "packs", scenario::find_pack(pack) != nullptr, keys_of(catalogue.packs)))
      refuse(first, "packs", std::move(*why));
  for (const ValidScenario& water : waters) {
    if (!water.scenario.raft) refuse(water, "/boarding/kind", "found no raft; allowed a scenario with one");
    if (water.scenario.crew.size() != first.scenario.crew.size())
      refuse(water, "/crew",
             fmt::format("found {} people; allowed the crew of the first water, {}",
                         water.scenario.crew.size(), first.scenario.crew.size()));
    if (!water.scenario.uncertain) continue;
    const scenario::Uncertain& u = *water.scenario.uncertain;
    if (u.known)
      refuse(water, "/uncertain/known", "something is known already; allowed where the choice is still open");
    if (const std::string part = scenario::part_that_sets(u, chosen); !part.empty())
      refuse(water, part, "found raft or pack drawn; allowed only as a choice");
  }
  if (wrong.empty()) return std::nullopt;
  return Refusal{Refusal::Why::input, std::move(wrong)};
}

// The water with a raft and a pack, followed until the last hour of help.
scenario::Validated with(const ValidScenario& water, const RaftChoice& raft, const std::string& pack,
                         double horizon_h) {
  scenario::Node document = *water.document;
  scenario::change_raft(document, raft.kind);
  scenario::put(document, "/stores/pack", pack);
  scenario::put(document, "/duration_h", horizon_h);
  if (!water.scenario.uncertain) {
    scenario::put(document, "/uncertain/person_spread", true);
    scenario::put(document, "/uncertain/unmeasured", true);
  }
  return scenario::validate_document(std::move(document), water.file, water.folder);
}

// What is kept of one future of one choice.
struct Seen {
  bool has_result = false;
  double able_h = 0, alive_h = 0;  // of the first person; infinite beyond the last hour of help
  system::Limit able_cause{}, alive_cause{}, nearest{};
};

Seen seen_of(const SampleResult& r) {
  if (!r.failure.empty()) return {};
  const Future f = future_of(r);
  Seen out{true,
           static_cast<double>(f.able_h[first_person]),
           static_cast<double>(f.alive_h[first_person]),
           f.able_cause[first_person],
           f.alive_cause[first_person],
           f.able_cause[first_person]};
  if (!std::isinf(out.able_h)) return out;
  const auto nearest =
      std::min_element(r.persons.begin(), r.persons.end(), [](const PersonResult& a, const PersonResult& b) {
        return a.next_margin_fraction < b.next_margin_fraction;
      });
  out.nearest = nearest->next_cause;
  return out;
}

LimitingCause most_common(const std::map<system::Limit, std::size_t>& counts) {
  LimitingCause out;
  for (const auto& [limit, futures] : counts)
    if (limit != system::Limit::none && futures > out.futures) out = {limit, futures};
  return out;
}

struct Until {
  double Seen::*until_h;
  system::Limit Seen::*cause;
};
constexpr Until able{&Seen::able_h, &Seen::able_cause}, alive{&Seen::alive_h, &Seen::alive_cause};

ChoiceCell cell_of(const std::vector<Seen>& futures, const std::vector<Seen>& first, double help_h,
                   const Until& column) {
  ChoiceCell out;
  std::map<system::Limit, std::size_t> causes;
  for (std::size_t k = 0; k < futures.size(); ++k) {
    const bool holds = futures[k].*column.until_h > help_h, held = first[k].*column.until_h > help_h;
    out.chance.count += holds ? 1 : 0;
    if (!holds) ++causes[futures[k].*column.cause];
    if (holds && !held) ++out.against_first.more;
    if (held && !holds) ++out.against_first.fewer;
  }
  out.chance = chance_of(out.chance.count, futures.size(), interval_confidence);
  out.ended_by = most_common(causes);
  out.against_first.apart =
      sign_test(out.against_first.more, out.against_first.fewer) < 1 - interval_confidence;
  return out;
}

// Futures that have a result under every choice.
std::size_t keep_common(std::vector<std::vector<Seen>>& all, std::vector<Choice>& choices) {
  std::size_t kept = 0;
  for (std::size_t k = 0; k < all.front().size(); ++k) {
    bool whole = true;
    for (std::size_t c = 0; c < all.size(); ++c) {
      choices[c].without_result += all[c][k].has_result ? 0 : 1;
      whole = whole && all[c][k].has_result;
    }
    if (!whole) continue;
    for (std::vector<Seen>& of_choice : all) of_choice[kept] = of_choice[k];
    ++kept;
  }
  for (std::vector<Seen>& of_choice : all) of_choice.resize(kept);
  return kept;
}

void fill(Water& water, const ChooseQuestion& q, const std::vector<std::vector<Seen>>& all) {
  for (std::size_t c = 0; c < all.size(); ++c) {
    for (const double help_h : q.help_h) {
      water.choices[c].able.push_back(cell_of(all[c], all.front(), help_h, able));
      water.choices[c].alive.push_back(cell_of(all[c], all.front(), help_h, alive));
    }
    std::map<system::Limit, std::size_t> nearest;
    for (const Seen& each : all[c]) ++nearest[each.nearest];
    water.choices[c].nearest = most_common(nearest).limit;
  }
}

struct Asking {
  const ChooseQuestion& q;
  const std::function<void(double)>& progress;
  std::size_t done = 0, runs = 1;  // choices of all waters

  std::vector<Seen> futures_of(const ValidScenario& scenario) {
    const Sampler sampler(scenario);
    std::vector<Seen> out;
    out.reserve(q.futures);
    EnsembleOptions options;
    options.threads = q.threads;
    options.progress = [&](const Progress& p) {
      if (progress)
        progress((static_cast<double>(done) + static_cast<double>(p.done) / static_cast<double>(p.total)) /
                 static_cast<double>(runs));
    };
    run_ensemble(
        {0, q.futures}, drawing(sampler, q.seed), [&](const SampleResult& r) { out.push_back(seen_of(r)); },
        options);
    ++done;
    return out;
  }

  std::variant<Water, Refusal> water_of(const ValidScenario& given) {
    Water out{given, !given.scenario.uncertain, 0, {}};
    std::vector<std::vector<Seen>> all;
    for (const RaftChoice& raft : q.rafts) {
      const std::vector<std::string> own{scenario::find_raft(raft.kind)->pack};
      for (const std::string& pack : q.packs.empty() ? own : q.packs) {
        auto made = with(given, raft, pack, q.help_h.back());
        if (auto* wrong = std::get_if<scenario::Diagnostics>(&made))
          return Refusal{Refusal::Why::input, std::move(*wrong)};
        auto& scenario = std::get<ValidScenario>(made);
        const auto weather = weather::load(scenario);
        if (const auto* wrong = std::get_if<scenario::Diagnostics>(&weather))
          return Refusal{Refusal::Why::input, *wrong};
        all.push_back(futures_of(scenario));
        if (all.size() == 1) out.scenario = std::move(scenario);
        out.choices.push_back({raft, pack, {}, {}, system::Limit::none, 0});
      }
    }
    out.futures = keep_common(all, out.choices);
    if (static_cast<double>(q.futures - out.futures) > bearable_failures * static_cast<double>(q.futures))
      return Refusal{Refusal::Why::run,
                     {{given.file, "",
                       fmt::format("{} of {} futures have no result, more than 1 %", q.futures - out.futures,
                                   q.futures)}}};
    fill(out, q, all);
    return out;
  }
};

}  // namespace

std::variant<Chosen, Refusal> choose(const std::vector<ValidScenario>& waters, const ChooseQuestion& question,
                                     const std::function<void(double)>& progress) {
  if (waters.empty() || question.rafts.empty() || question.help_h.empty() || question.futures == 0)
    return Refusal{Refusal::Why::input,
                   {{"", "", "found no water, raft, hour of help or future; allowed one or more"}}};
  if (!std::is_sorted(question.help_h.begin(), question.help_h.end()))
    return Refusal{Refusal::Why::input, {{"", "", "found hours of help out of order; allowed rising ones"}}};
  if (auto wrong = wrong_with(waters, question)) return std::move(*wrong);
  Chosen out{question, {}};
  Asking asking{question, progress, 0,
                waters.size() * question.rafts.size() * std::max<std::size_t>(1, question.packs.size())};
  for (const ValidScenario& each : waters) {
    auto water = asking.water_of(each);
    if (auto* refused = std::get_if<Refusal>(&water)) return std::move(*refused);
    out.waters.push_back(std::move(std::get<Water>(water)));
  }
  return out;
}

}  // namespace bide::study
