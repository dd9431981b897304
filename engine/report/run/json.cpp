#include "bide/report/run/json.hpp"

#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/json/common.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"
#include "bide/timeline/record.hpp"

namespace bide::report {
namespace run_result {
namespace {

using outcome::Evidence;
using outcome::PersonOutcome;
using timeline::Timeline;
using Text = std::optional<std::string>;

constexpr std::size_t most_letters = 400;

struct Run {
  const outcome::Outcome* outcome;
  const Timeline* timeline;
  const scenario::ValidScenario* scenario;
  const study::RangeMembers* members;
};

// Something within a run: `of` and the run that it belongs to.
template <class Of>
struct In {
  const Of* of;
  const Run* run;
  int index = 0;
};
template <class Of>
std::vector<In<Of>> each_of(const std::vector<Of>& all, const Run& run) {
  std::vector<In<Of>> out;
  for (std::size_t i = 0; i < all.size(); ++i) out.push_back({&all[i], &run, static_cast<int>(i)});
  return out;
}

Text person_or_none(int person) {
  return person < 0 ? Text() : Text(person_label(person));
}

std::vector<std::string> texts(const std::vector<std::string>& all) {
  std::vector<std::string> out;
  for (const std::string& each : all) out.push_back(plain(each, Letters::utf8, most_letters));
  return out;
}

// ---- evidence and times
// ---------------------------------------------------------------------------------------

using Passed = std::remove_cvref_t<decltype(Evidence().passed.front())>;
using LeftOut = std::remove_cvref_t<decltype(Evidence().left_out.front())>;

Shape<Evidence> evidence_shape() {
  const auto passed = Shape<Passed>()
                          .with("limit", [](const Passed& p) { return plain(p.limit); })
                          .with("reason", [](const Passed& p) { return plain(p.reason); });
  const auto left_out =
      Shape<LeftOut>()
          .with(
              "biased", [](const LeftOut& l) { return l.biased; }, "false: how many measurements are held")
          .with("words", [](const LeftOut& l) { return plain(l.words); });
  return Shape<Evidence>()
      .word("grade", {"checked", "biased", "extrapolated", "no data"},
            [](const Evidence& e) { return to_string(e.grade); })
      .parts("left_out_studies", left_out, [](const Evidence& e) { return e.left_out; })
      .parts("passed", passed, [](const Evidence& e) { return e.passed; });
}

// A time since the start that may lie beyond the horizon.
struct At {
  std::optional<double> at_s;
  const Timeline* timeline;
};
Shape<At> until_shape() {
  return Shape<At>()
      .with(
          "reached", [](const At& t) { return t.at_s.has_value(); }, "false: not reached within the horizon")
      .with(
          "hours", [](const At& t) { return hours_of(t.at_s); }, "since the start")
      .with(
          "utc",
          [](const At& t) { return t.at_s ? Text(iso_minute(t.timeline->start_unix_s + *t.at_s)) : Text(); })
      .with("words",
            [](const At& t) { return t.at_s ? duration(*t.at_s) : not_reached(t.timeline->horizon_s); });
}

using Ends = In<outcome::Until>;
Shape<Ends> caused_shape() {
  return Shape<Ends>()
      .also(until_shape(),
            [](const Ends& e) {
              return At{e.of->at_s, e.run->timeline};
            })
      .with("limit", [](const Ends& e) { return e.of->at_s ? Text(system::name_of(e.of->limit)) : Text(); })
      .with("cause",
            [](const Ends& e) {
              return e.of->at_s ? Text(plain(outcome::plain_cause(
                                      e.of->limit, e.run->scenario->scenario.limits,
                                      e.run->scenario->scenario.crew[static_cast<std::size_t>(e.index)])))
                                : Text();
            })
      .part("evidence", evidence_shape(), [](const Ends& e) { return e.of->evidence; });
}

// ---- people
// -----------------------------------------------------------------------------------------------------

using Hurt = In<timeline::Injury>;
using Person = In<PersonOutcome>;

Shape<Person> person_shape() {
  const auto next =
      Shape<PersonOutcome>()
          .with("limit", [](const PersonOutcome& p) { return system::name_of(p.next_limit); })
          .with("words", [](const PersonOutcome& p) { return plain(outcome::short_cause(p.next_limit)); })
          .with("margin_left_fraction", [](const PersonOutcome& p) { return p.next_margin_fraction; });
  const auto injury =
      Shape<Hurt>()
          .with("limit", [](const Hurt& h) { return system::name_of(h.of->limit); })
          .with("words", [](const Hurt& h) { return plain(outcome::short_cause(h.of->limit)); })
          .part("possible_from", until_shape(), [](const Hurt& h) {
            return At{h.of->time_s, h.run->timeline};
          });
  return Shape<Person>()
      .with(
          "person", [](const Person& p) { return person_label(p.index); },
          "Person A, B... in the order of the scenario")
      .part("able_until", caused_shape(),
            [](const Person& p) {
              return Ends{&p.of->able, p.run, p.index};
            })
      .part("alive_until", caused_shape(),
            [](const Person& p) {
              return Ends{&p.of->alive, p.run, p.index};
            })
      .part("unconscious", until_shape(),
            [](const Person& p) {
              return At{p.of->unconscious_s, p.run->timeline};
            })
      .part("next_limit", next, [](const Person& p) { return *p.of; })
      .with("hands_possible_h", [](const Person& p) { return p.of->hands_h; })
      .with("able_h", [](const Person& p) { return p.of->able_h; })
      .part("hands_evidence", evidence_shape(), [](const Person& p) { return p.of->hands_evidence; })
      .parts(
          "injuries", injury, [](const Person& p) { return each_of(p.of->injuries, *p.run); },
          "of the cold: from when on each is possible")
      .with("lowest_core_degC", [](const Person& p) { return p.of->lowest_core_degC; })
      .with("highest_core_degC", [](const Person& p) { return p.of->highest_core_degC; })
      .with("lowest_finger_degC", [](const Person& p) { return p.of->lowest_finger_degC; })
      .with("worst_water_deficit_pct", [](const Person& p) { return p.of->worst_water_deficit_pct; })
      .with("worst_osmolality_mOsm_kg", [](const Person& p) { return p.of->worst_osmolality_mOsm_kg; })
      .with("shivering_h", [](const Person& p) { return p.of->shivering_h; })
      .with("urine_kg", [](const Person& p) { return p.of->urine_kg; });
}

// Able, or alive, of the crew.
struct Crew {
  const outcome::CrewTimes* times;
  const Evidence* evidence;
  const Timeline* timeline;
};
Shape<Crew> crew_times_shape() {
  return Shape<Crew>()
      .part("first", until_shape(),
            [](const Crew& c) {
              return At{c.times->first_s, c.timeline};
            })
      .part(
          "half", until_shape(),
          [](const Crew& c) {
            return At{c.times->half_s, c.timeline};
          },
          "when at least half of the crew have reached it")
      .part("last", until_shape(),
            [](const Crew& c) {
              return At{c.times->last_s, c.timeline};
            })
      .with("reached_count", [](const Crew& c) { return c.times->reached; })
      .with("persons_count", [](const Crew& c) { return c.times->persons; })
      .part("evidence", evidence_shape(), [](const Crew& c) { return *c.evidence; });
}

Shape<Run> crew_shape() {
  return Shape<Run>()
      .part("able_until", crew_times_shape(),
            [](const Run& r) {
              return Crew{&r.outcome->able, &r.outcome->able_evidence, r.timeline};
            })
      .part("alive_until", crew_times_shape(),
            [](const Run& r) {
              return Crew{&r.outcome->alive, &r.outcome->alive_evidence, r.timeline};
            })
      .part("hands_evidence", evidence_shape(), [](const Run& r) { return r.outcome->hands_evidence; })
      .part("water_loss_evidence", evidence_shape(), [](const Run& r) { return r.outcome->thirst_evidence; })
      .with("driest_person", [](const Run& r) { return person_or_none(r.outcome->driest_person); });
}

// ---- the raft
// -----------------------------------------------------------------------------------------------------

Shape<outcome::Extreme> extreme_shape() {
  return Shape<outcome::Extreme>()
      .with("value", [](const outcome::Extreme& e) { return e.value; })
      .with("hours", [](const outcome::Extreme& e) { return e.time_s / hour_s; });
}

Shape<outcome::CabinOutcome> cabin_shape() {
  using Cabin = outcome::CabinOutcome;
  return Shape<Cabin>()
      .part("coldest_inside_degC", extreme_shape(), [](const Cabin& c) { return c.coldest_inside_degC; })
      .part("warmest_inside_degC", extreme_shape(), [](const Cabin& c) { return c.warmest_inside_degC; })
      .with(
          "mean_inside_degC", [](const Cabin& c) { return c.mean_inside_degC; },
          "from boarding to the last death or the end")
      .part("highest_co2_ppm", extreme_shape(), [](const Cabin& c) { return c.highest_co2_ppm; })
      .with("co2_above_5000_ppm_h", [](const Cabin& c) { return c.co2_above_5000_ppm_h; })
      .with("co2_above_15000_ppm_h", [](const Cabin& c) { return c.co2_above_15000_ppm_h; })
      .with("co2_above_30000_ppm_h", [](const Cabin& c) { return c.co2_above_30000_ppm_h; })
      .with("condensate_L_day", [](const Cabin& c) { return c.condensate_L_day; })
      .part("temperature_evidence", evidence_shape(), [](const Cabin& c) { return c.temperature_evidence; })
      .part("co2_evidence", evidence_shape(), [](const Cabin& c) { return c.co2_evidence; })
      .part("condensate_evidence", evidence_shape(), [](const Cabin& c) { return c.condensate_evidence; });
}

using Store = In<outcome::StoreOutcome>;
Shape<Store> store_shape() {
  return Shape<Store>()
      .with("store", [](const Store& s) { return plain(s.of->name); })
      .with("unit", [](const Store& s) { return plain(s.of->unit); })
      .word("state", {"none_aboard", "runs_out", "lasts"},
            [](const Store& s) {
              return s.of->state == outcome::StoreState::none_aboard ? "none_aboard"
                     : s.of->state == outcome::StoreState::runs_out  ? "runs_out"
                                                                     : "lasts";
            })
      .part("runs_out", until_shape(),
            [](const Store& s) {
              const bool out = s.of->state == outcome::StoreState::runs_out;
              return At{out ? std::optional<double>(s.of->at_s) : std::nullopt, s.run->timeline};
            })
      .with("at_start", [](const Store& s) { return s.of->at_start; })
      .with("left", [](const Store& s) { return s.of->left; });
}

Shape<outcome::SignalsLeft> signals_shape() {
  using Left = outcome::SignalsLeft;
  return Shape<Left>()
      .with("flares", [](const Left& l) { return l.flares; })
      .with("lamp_h", [](const Left& l) { return l.lamp_h; })
      .with("beacon_h", [](const Left& l) { return l.beacon_h; });
}

// ---- the run
// ------------------------------------------------------------------------------------------------------

using Happening = std::remove_cvref_t<decltype(Timeline().events.front())>;
using Event = In<Happening>;
Shape<Event> event_shape() {
  return Shape<Event>()
      .with("hours", [](const Event& e) { return e.of->time_s / hour_s; })
      .with("utc", [](const Event& e) { return iso_minute(e.run->timeline->start_unix_s + e.of->time_s); })
      .with("person", [](const Event& e) { return person_or_none(e.of->person); })
      .with("kind", [](const Event& e) { return timeline::name_of(e.of->kind); })
      .with("text", [](const Event& e) { return plain(e.of->text, Letters::utf8, most_letters); })
      .with("asked", [](const Event& e) { return e.of->asked; })
      .with("given", [](const Event& e) { return e.of->given; })
      .with("unit", [](const Event& e) { return plain(e.of->unit); });
}

using Crossing = std::remove_cvref_t<decltype(Timeline().crossings.front())>;
Shape<Crossing> crossing_shape() {
  return Shape<Crossing>()
      .with("person", [](const Crossing& c) { return person_or_none(c.person); })
      .with("limit", [](const Crossing& c) { return system::name_of(c.limit); })
      .with("hours", [](const Crossing& c) { return c.time_s / hour_s; })
      .with("slope_per_h", [](const Crossing& c) { return c.slope_per_h; })
      .with("upward", [](const Crossing& c) { return c.upward; })
      .with("grazing", [](const Crossing& c) { return c.grazing; });
}

using Ledger = std::remove_cvref_t<decltype(Timeline().ledgers.front())>;
Shape<Ledger> ledger_shape() {
  return Shape<Ledger>()
      .with("ledger", [](const Ledger& l) { return plain(l.name); })
      .with("residual", [](const Ledger& l) { return l.residual; })
      .with("throughput", [](const Ledger& l) { return l.throughput; })
      .with("relative", [](const Ledger& l) { return l.relative(); });
}

Shape<Run> inputs_shape() {
  return Shape<Run>()
      .with("file", [](const Run& r) { return plain(r.scenario->file, Letters::utf8, most_letters); })
      .with("name", [](const Run& r) { return plain(r.scenario->scenario.name); })
      .with("start_utc", [](const Run& r) { return iso_minute(r.timeline->start_unix_s); })
      .with("horizon_h", [](const Run& r) { return r.timeline->horizon_s / hour_s; })
      .with("in_raft", [](const Run& r) { return r.timeline->in_raft; })
      .with("persons_count", [](const Run& r) { return r.scenario->scenario.crew.size(); })
      .with(
          "defaults", [](const Run& r) { return texts(r.scenario->defaults); },
          "JSON pointers of inputs that were not stated")
      .parts("cautions", caution_shape(), [](const Run& r) { return r.scenario->cautions; });
}

const Shape<Run>& run_shape() {
  static const Shape<Run> shape =
      result_shape<Run>(result_format)
          .with("one_case", [](const Run&) { return one_case; })
          .part(
              "range", range_shape(),
              [](const Run& r) {
                return range_of(r.outcome->able, r.outcome->alive, *r.members, r.outcome->horizon_s);
              },
              range_sentence)
          .part("inputs", inputs_shape(), [](const Run& r) { return r; })
          .part("crew", crew_shape(), [](const Run& r) { return r; })
          .parts("persons", person_shape(), [](const Run& r) { return each_of(r.outcome->persons, r); })
          .parts("stores", store_shape(), [](const Run& r) { return each_of(r.outcome->stores, r); })
          .part("signals_left", signals_shape(), [](const Run& r) { return r.outcome->signals; })
          .part(
              "cabin", cabin_shape(),
              [](const Run& r) {
                return r.timeline->in_raft ? std::optional(r.outcome->cabin) : std::nullopt;
              },
              "null without a raft")
          .parts("events", event_shape(), [](const Run& r) { return each_of(r.timeline->events, r); })
          .parts("crossings", crossing_shape(), [](const Run& r) { return r.timeline->crossings; })
          .parts("ledgers", ledger_shape(), [](const Run& r) { return r.timeline->ledgers; })
          .with(
              "flags", [](const Run& r) { return texts(r.timeline->flags); },
              "correlations used outside their published range")
          .with("assumptions", [](const Run& r) { return texts(r.timeline->assumptions); });
  return shape;
}

}  // namespace
}  // namespace run_result

std::string result_json(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                        const scenario::ValidScenario& scenario, const study::RangeMembers& members) {
  return json_text(run_result::run_shape().of({&outcome, &timeline, &scenario, &members}));
}

std::string result_schema() {
  return run_result::run_shape().schema_text("Result of one bide run");
}

}  // namespace bide::report
