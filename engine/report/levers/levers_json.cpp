// Levers for other programs.
#include "bide/report/json/common.hpp"
#include "bide/report/levers/levers.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/words/text.hpp"

namespace bide::report {
namespace levers_result {
namespace {

using study::Gain, study::Gains, study::GainRange, study::LeverTried;

const char* state_word(const LeverTried& tried) {
  switch (tried.state) {
    case LeverTried::State::not_applicable:
      return "not_applicable";
    case LeverTried::State::withheld:
      return "withheld";
    case LeverTried::State::tried:
      break;
  }
  const int direction = study::direction(tried);
  return direction > 0 ? "helps" : direction < 0 ? "harms" : "indistinguishable";
}

Shape<Gain> gain_shape() {
  return Shape<Gain>()
      .with(
          "hours", [](const Gain& g) { return g.unreached ? std::nullopt : std::optional(g.hours); },
          "later than without it; negative: earlier")
      .with(
          "at_least", [](const Gain& g) { return g.at_least; }, "the true gain, or loss, is that or more")
      .with("distinguishable", [](const Gain& g) { return g.distinguishable; })
      .with("not_reached_with_or_without", [](const Gain& g) { return g.unreached; });
}

// Over the central case and the members.
Shape<LeverTried> range_of_gains_shape() {
  const auto ends = Shape<GainRange>()
                        .part("lowest", gain_shape(), [](const GainRange& r) { return r.low; })
                        .part("highest", gain_shape(), [](const GainRange& r) { return r.high; });
  using Margin = study::MarginRange;
  const auto margin = Shape<Margin>()
                          .with("lowest", [](const Margin& m) { return m.low; })
                          .with("highest", [](const Margin& m) { return m.high; });
  return Shape<LeverTried>()
      .part("able_gain", ends, [](const LeverTried& t) { return study::gain_range(t, &Gains::able); })
      .part("alive_gain", ends, [](const LeverTried& t) { return study::gain_range(t, &Gains::alive); })
      .part("margin_gain_fraction", margin, [](const LeverTried& t) { return study::margin_range(t); });
}

Shape<LeverTried> lever_shape() {
  constexpr std::size_t most_letters = 400;
  const auto run = [](const LeverTried& t) { return t.state == LeverTried::State::tried; };
  const auto applies = [](const LeverTried& t) { return t.state != LeverTried::State::not_applicable; };
  return Shape<LeverTried>()
      .with("lever", [](const LeverTried& t) { return t.lever->key; })
      .with("title", [](const LeverTried& t) { return t.lever->title; })
      .with("source", [](const LeverTried& t) { return t.lever->source; })
      .with("gains_by", [](const LeverTried& t) { return t.lever->gains_by; })
      .with("loses_by", [](const LeverTried& t) { return t.lever->loses_by; })
      .with("mass_kg", [](const LeverTried& t) { return t.burden.mass_kg; })
      .with(
          "volume_L", [](const LeverTried& t) { return t.burden.volume_L; }, "room it takes up")
      .word("state", {"not_applicable", "withheld", "helps", "harms", "indistinguishable"}, state_word)
      .with(
          "reason",
          [](const LeverTried& t) {
            return t.reason.empty() ? std::nullopt
                                    : std::optional(plain(t.reason, Letters::utf8, most_letters));
          },
          "why it does not apply, or is withheld")
      .part("able_gain", gain_shape(), [](const LeverTried& t) { return t.gained.able; })
      .where(run)
      .part("alive_gain", gain_shape(), [](const LeverTried& t) { return t.gained.alive; })
      .where(run)
      .with("margin_gain_fraction", [](const LeverTried& t) { return t.gained.margin; })
      .where(run)
      .part(
          "range_of_gains", range_of_gains_shape(),
          [](const LeverTried& t) { return t.members.empty() ? std::nullopt : std::optional(t); },
          "null where the file states all that nobody has measured")
      .where(run)
      .with("highest_co2_ppm",
            [](const LeverTried& t) {
              return std::vector<double>{t.co2_low_ppm, t.co2_high_ppm};
            })
      .where(applies);
}

struct Levers {
  const study::LeversTried* all;
  const scenario::ValidScenario* scenario;
};
const Shape<Levers>& levers_shape() {
  static const Shape<Levers> shape =
      result_shape<Levers>(levers_format)
          .with("one_case", [](const Levers&) { return one_change_each; })
          .with("name", [](const Levers& l) { return plain(l.scenario->scenario.name); })
          .parts("cautions", caution_shape(), [](const Levers& l) { return l.scenario->cautions; })
          .with("horizon_h", [](const Levers& l) { return l.all->base.horizon_s / hour_s; })
          .with("able_first_h", [](const Levers& l) { return hours_of(l.all->base.able.first_s); })
          .with("alive_first_h", [](const Levers& l) { return hours_of(l.all->base.alive.first_s); })
          .part(
              "range", range_shape(),
              [](const Levers& l) {
                const auto& base = l.all->base;
                return range_of(base.able, base.alive, l.all->base_members, base.horizon_s);
              },
              range_sentence)
          .with("highest_co2_ppm",
                [](const Levers& l) {
                  return std::vector<double>{l.all->base_co2_low_ppm, l.all->base_co2_high_ppm};
                })
          .parts(
              "levers", lever_shape(), [](const Levers& l) -> const auto& { return l.all->tried; });
  return shape;
}

}  // namespace
}  // namespace levers_result

std::string levers_json(const study::LeversTried& levers, const scenario::ValidScenario& scenario) {
  return json_text(levers_result::levers_shape().of({&levers, &scenario}));
}

std::string levers_schema() {
  return levers_result::levers_shape().schema_text("Result of bide levers");
}

}  // namespace bide::report
