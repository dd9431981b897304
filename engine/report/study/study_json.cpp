// The summary of a study for other programs.
#include "bide/report/json/common.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/study/study_words.hpp"
#include "bide/scenario/words.hpp"

namespace bide::report {
namespace summary_result {
namespace {

using study::Dependence, study::Spread, study::Summary;
using Interval = std::vector<Exact>;

Interval interval(const study::Interval& both) {
  return {Exact{both.low}, Exact{both.high}};
}

Shape<Spread> spread_shape() {
  struct Quantile {
    const Spread* of;
    const Spread::Quantile* q;
  };
  const auto quantile = Shape<Quantile>()
                            .with("share", [](const Quantile& q) { return Exact{q.q->share}; })
                            .with("value", [](const Quantile& q) { return Exact{q.q->value}; })
                            .with("beyond_horizon", [](const Quantile& q) { return !q.q->value.has_value(); })
                            .where([](const Quantile& q) { return q.of->is_time; })
                            .with("low", [](const Quantile& q) { return Exact{q.q->low}; })
                            .where([](const Quantile& q) { return q.q->low_known; })
                            .with("high", [](const Quantile& q) { return Exact{q.q->high}; })
                            .where([](const Quantile& q) { return q.q->high_known; });
  struct Later {
    const Spread* of;
    const Spread::Later* later;
  };
  const auto later =
      Shape<Later>()
          .with("than_h", [](const Later& l) { return Exact{l.later->than_h}; })
          .with("share",
                [](const Later& l) {
                  return Exact{static_cast<double>(l.later->cases) / static_cast<double>(l.of->cases)};
                })
          .with("interval", [](const Later& l) { return interval(l.later->share); });
  return Shape<Spread>()
      .with("name", [](const Spread& s) { return s.name; })
      .with("unit", [](const Spread& s) { return s.unit; })
      .with("samples", [](const Spread& s) { return s.cases; })
      .with("samples_without", [](const Spread& s) { return s.not_there; })
      .with(
          "mean_within_horizon", [](const Spread& s) { return Exact{s.mean}; }, "of a time")
      .where([](const Spread& s) { return s.is_time; })
      .with("mean", [](const Spread& s) { return Exact{s.mean}; })
      .where([](const Spread& s) { return !s.is_time; })
      .parts("quantiles", quantile,
             [](const Spread& s) {
               std::vector<Quantile> out;
               for (const Spread::Quantile& q : s.quantiles) out.push_back({&s, &q});
               return out;
             })
      .parts("later", later,
             [](const Spread& s) {
               std::vector<Later> out;
               for (const Spread::Later& l : s.later) out.push_back({&s, &l});
               return out;
             })
      .where([](const Spread& s) { return !s.later.empty(); });
}

// What a figure depends on, by input.
struct On {
  const Summary* summary;
  const Dependence* d;
  std::size_t input;

  bool by_indices() const { return d->indices.has_value(); }
  bool by_effects() const { return !by_indices() && d->effects.has_value(); }
  bool by_means() const { return !by_indices() && !by_effects() && !d->level_means.empty(); }
  bool by_correlation() const {
    return !by_indices() && !by_effects() && !by_means() && !d->correlations.empty() &&
           d->correlations[input];
  }
  bool none() const { return !by_indices() && !by_effects() && !by_means() && !by_correlation(); }
};

Shape<On> input_shape() {
  const auto sobol = [](const On& o) { return o.by_indices(); };
  const auto morris = [](const On& o) { return o.by_effects(); };
  const auto correlated = [](const On& o) { return o.by_correlation(); };
  using Level = std::remove_cvref_t<decltype(Dependence().level_means.front().front())>;
  const auto level =
      Shape<Level>().with("value", [](const Level& l) { return l.first; }).with("mean", [](const Level& l) {
        return Exact{l.second};
      });
  return Shape<On>()
      .with("input", [](const On& o) { return o.summary->inputs[o.input]; })
      .with("first", [](const On& o) { return Exact{o.d->indices->groups[o.input].first.value}; })
      .where(sobol)
      .with("first_interval",
            [](const On& o) { return interval(o.d->indices->groups[o.input].first.interval); })
      .where(sobol)
      .with("total", [](const On& o) { return Exact{o.d->indices->groups[o.input].total.value}; })
      .where(sobol)
      .with("total_interval",
            [](const On& o) { return interval(o.d->indices->groups[o.input].total.interval); })
      .where(sobol)
      .with("mu_star", [](const On& o) { return Exact{o.d->effects->factors[o.input].mean_absolute}; })
      .where(morris)
      .with("mu", [](const On& o) { return Exact{o.d->effects->factors[o.input].mean}; })
      .where(morris)
      .with("sigma", [](const On& o) { return Exact{o.d->effects->factors[o.input].sigma}; })
      .where(morris)
      .parts(
          "means", level, [](const On& o) -> const auto& { return o.d->level_means[o.input]; })
      .where([](const On& o) { return o.by_means() && !o.d->level_means[o.input].empty(); })
      .with("rank_correlation", [](const On& o) { return Exact{o.d->correlations[o.input]->value}; })
      .where(correlated)
      .with("interval", [](const On& o) { return interval(o.d->correlations[o.input]->interval); })
      .where(correlated)
      .with("note", [](const On& o) { return no_dependence(*o.d); })
      .where([](const On& o) { return o.none(); });
}

struct Depends {
  const Summary* summary;
  const Dependence* d;
};
Shape<Depends> dependence_shape() {
  return Shape<Depends>()
      .with("name", [](const Depends& d) { return d.d->name; })
      .with("unit", [](const Depends& d) { return d.d->unit; })
      .with("samples", [](const Depends& d) { return d.d->cases; })
      .with("mean", [](const Depends& d) { return Exact{d.d->mean}; })
      .parts("inputs", input_shape(),
             [](const Depends& d) {
               std::vector<On> out;
               for (std::size_t i = 0; i < d.summary->inputs.size(); ++i) out.push_back({d.summary, d.d, i});
               return out;
             })
      .with("base_samples_left_out", [](const Depends& d) { return d.d->indices->left_out; })
      .where([](const Depends& d) { return d.d->indices.has_value(); })
      .with("trajectories_left_out", [](const Depends& d) { return d.d->effects->left_out; })
      .where([](const Depends& d) { return d.d->effects.has_value(); });
}

struct Whole {
  const study::Study* study;
  const Summary* summary;

  const scenario::Design& design() const { return study->file().design; }
};

Shape<Whole> design_shape() {
  return Shape<Whole>()
      .with("kind", [](const Whole& w) { return scenario::word(w.design().kind); })
      .with("seed", [](const Whole& w) { return w.design().seed; })
      .with("samples", [](const Whole& w) { return *w.design().samples; })
      .where([](const Whole& w) { return w.design().samples.has_value(); })
      .with("scale", [](const Whole& w) { return scenario::word(w.study->plan().scale()); })
      .where([](const Whole& w) { return w.study->points_file().has_value(); })
      .with("levels", [](const Whole& w) { return w.design().levels; })
      .where([](const Whole& w) { return scenario::has_levels(w.design().kind); });
}

const Shape<Whole>& summary_shape() {
  using Failed = std::remove_cvref_t<decltype(Summary().first_failures.front())>;
  const auto failed = Shape<Failed>()
                          .with("sample", [](const Failed& f) { return f.first; })
                          .with("reason", [](const Failed& f) { return f.second; });
  const auto may_happen =
      Shape<Whole>()
          .with("samples", [](const Whole& w) { return w.summary->futures; })
          .parts(
              "figures", spread_shape(), [](const Whole& w) -> const auto& { return w.summary->spreads; });
  static const Shape<Whole> shape =
      result_shape<Whole>("bide study summary 1")
          .with("name", [](const Whole& w) { return w.study->file().name; })
          .with("setting", [](const Whole& w) { return w.study->file().setting; })
          .with("scenario", [](const Whole& w) { return w.study->scenario().scenario.name; })
          .part("design", design_shape(), [](const Whole& w) { return w; })
          .named_values(
              "estimators",
              [](const Whole& w) {
                std::vector<std::pair<std::string, std::string>> out;
                for (const auto& [what, how] : estimators(w.design().kind)) out.emplace_back(what, how);
                return out;
              },
              "how each index was estimated")
          .where([](const Whole& w) { return !estimators(w.design().kind).empty(); })
          .with("runs", [](const Whole& w) { return w.summary->samples; })
          .with("horizon_h", [](const Whole& w) { return Exact{w.summary->horizon_h}; })
          .with(
              "confidence", [](const Whole&) { return Exact{study::interval_confidence}; },
              "of every interval")
          .with("failed", [](const Whole& w) { return w.summary->failed; })
          .parts(
              "first_failures", failed,
              [](const Whole& w) -> const auto& { return w.summary->first_failures; })
          .part("what_may_happen", may_happen, [](const Whole& w) { return w; })
          .parts("what_it_depends_on", dependence_shape(), [](const Whole& w) {
            std::vector<Depends> out;
            for (const Dependence& each : w.summary->dependences) out.push_back({w.summary, &each});
            return out;
          });
  return shape;
}

}  // namespace
}  // namespace summary_result

std::string study_json(const study::Study& study, const study::Summary& summary) {
  return json_text(summary_result::summary_shape().of({&study, &summary}));
}

std::string study_summary_schema() {
  return summary_result::summary_shape().schema_text("Summary of a bide study");
}

}  // namespace bide::report
