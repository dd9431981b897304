#include "bide/report/json/common.hpp"

#include "bide/report/words/text.hpp"

namespace bide::report {
namespace common_parts {
namespace {

struct Ends {
  study::TimeRange range;
  double horizon_s;
};

Shape<Ends> ends_shape() {
  constexpr const char* sentence = "since the start; null: beyond the horizon";
  return Shape<Ends>()
      .with(
          "earliest_h", [](const Ends& e) { return hours_of(e.range.earliest_s); }, sentence)
      .with(
          "latest_h", [](const Ends& e) { return hours_of(e.range.latest_s); }, sentence)
      .with("words", [](const Ends& e) { return range_words(e.range, e.horizon_s); });
}

// Able, or alive.
struct State {
  const outcome::CrewTimes* central;
  const RunRange* range;
  study::CrewState state;
};

Shape<State> state_shape() {
  const auto ends = [](std::optional<double> outcome::CrewTimes::*which) {
    return [which](const State& s) {
      return Ends{study::range_over(*s.central, *s.range->members, s.state, which), s.range->horizon_s};
    };
  };
  return Shape<State>()
      .part("first", ends_shape(), ends(&outcome::CrewTimes::first_s))
      .part("half", ends_shape(), ends(&outcome::CrewTimes::half_s))
      .part("last", ends_shape(), ends(&outcome::CrewTimes::last_s));
}

}  // namespace
}  // namespace common_parts

Shape<scenario::Diagnostic> caution_shape() {
  constexpr std::size_t most_letters = 400;
  return Shape<scenario::Diagnostic>()
      .with("pointer", [](const scenario::Diagnostic& d) { return plain(d.pointer); })
      .with("message",
            [](const scenario::Diagnostic& d) { return plain(d.message, Letters::utf8, most_letters); });
}

std::optional<RunRange> range_of(const outcome::CrewTimes& able, const outcome::CrewTimes& alive,
                                 const study::RangeMembers& members, double horizon_s) {
  return members.empty() ? std::nullopt : std::optional(RunRange{&able, &alive, &members, horizon_s});
}

Shape<RunRange> range_shape() {
  return Shape<RunRange>()
      .with("runs", [](const RunRange& r) { return r.members->size() + 1; })
      .with("what", [](const RunRange&) { return std::string(runs_of_a_range) + "; not a forecast"; })
      .part("able_until", common_parts::state_shape(),
            [](const RunRange& r) {
              return common_parts::State{r.able, &r, &outcome::Endurance::able};
            })
      .part("alive_until", common_parts::state_shape(), [](const RunRange& r) {
        return common_parts::State{r.alive, &r, &outcome::Endurance::alive};
      });
}

}  // namespace bide::report
