#include "bide/weather/gaps.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "bide/core/interpolate.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/weather/sea.hpp"

namespace bide::weather {
namespace {

constexpr double slack_s = 1e-3;  // times are whole seconds; this absorbs rounding only

struct Gap {
  double begin_unix_s, end_unix_s;
  std::size_t after;  // index of the first sample behind it
  double length_s() const { return end_unix_s - begin_unix_s; }
  std::string text() const {
    return fmt::format("from {} to {} ({:.3g} h)", format_time_utc(begin_unix_s), format_time_utc(end_unix_s),
                       length_s() / hour_s);
  }
};

// Every interval without a value that overlaps the run, however short.
std::vector<Gap> gaps_of(const Samples& samples, Span run) {
  std::vector<Gap> gaps;
  double last = run.begin_unix_s;
  for (std::size_t i = 0; i <= samples.unix_s.size(); ++i) {
    const double next = i < samples.unix_s.size() ? samples.unix_s[i] : run.end_unix_s;
    if (last < run.end_unix_s && next > run.begin_unix_s && next > last) gaps.push_back({last, next, i});
    if (i < samples.unix_s.size()) last = next;
  }
  return gaps;
}

bool too_long(const Gap& gap, const GapRule& rule) {
  return gap.length_s() > rule.longest_gap_s + slack_s;
}

std::string fallback_key(Quantity q) {
  return fmt::format("/weather/fallback/{}", facts(q).column);
}

bool has_fallback_key(Quantity q) {
  return q == Quantity::air_temperature || q == Quantity::water_temperature || q == Quantity::dew_point ||
         q == Quantity::wind_speed || q == Quantity::pressure;
}

// The samples with the points that fill each gap inserted.
Samples with_points(const Samples& samples, const std::vector<Gap>& gaps,
                    const std::vector<Samples>& points) {
  Samples out;
  std::size_t next = 0;
  for (std::size_t g = 0; g < gaps.size(); ++g) {
    for (; next < gaps[g].after; ++next) {
      out.unix_s.push_back(samples.unix_s[next]);
      out.value.push_back(samples.value[next]);
    }
    out.unix_s.insert(out.unix_s.end(), points[g].unix_s.begin(), points[g].unix_s.end());
    out.value.insert(out.value.end(), points[g].value.begin(), points[g].value.end());
  }
  for (; next < samples.unix_s.size(); ++next) {
    out.unix_s.push_back(samples.unix_s[next]);
    out.value.push_back(samples.value[next]);
  }
  return out;
}

// First and last point of the fallback in a gap, away from the values at its ends, if any.
Samples fallback_points(const Gap& gap, const Samples& samples, double fallback) {
  constexpr double quarter = 0.25;
  const double ramp = std::min(hour_s, quarter * gap.length_s());
  const double first = gap.after == 0 ? gap.begin_unix_s : gap.begin_unix_s + ramp;
  const double last = gap.after == samples.unix_s.size() ? gap.end_unix_s : gap.end_unix_s - ramp;
  return {{first, last}, {fallback, fallback}};
}

}  // namespace

Filled fill_gaps(Quantity q, const Samples& samples, Span run, const GapRule& rule) {
  const QuantityFacts& f = facts(q);
  Filled out;
  if (samples.unix_s.empty()) {
    if (rule.fallback) {
      out.samples = {{run.begin_unix_s}, {*rule.fallback}};
      out.notes.push_back(
          fmt::format("{}: not in the file, {} {} throughout", f.words, *rule.fallback, f.unit));
    } else {
      out.problems.push_back(fmt::format("{} is missing throughout{}", f.words,
                                         has_fallback_key(q) ? "; give " + fallback_key(q) : std::string()));
    }
    return out;
  }
  const std::vector<Gap> gaps = gaps_of(samples, run);
  std::vector<Samples> points(gaps.size());
  int bridged = 0;
  const Gap* longest_bridged = nullptr;
  for (std::size_t g = 0; g < gaps.size(); ++g) {
    const Gap& gap = gaps[g];
    if (!too_long(gap, rule)) {
      const bool at_an_end = gap.after == 0 || gap.after == samples.unix_s.size();
      if (!at_an_end && gap.length_s() <= rule.usual_step_s + slack_s) continue;
      ++bridged;
      if (longest_bridged == nullptr || gap.length_s() > longest_bridged->length_s()) longest_bridged = &gap;
    } else if (rule.fallback) {
      points[g] = fallback_points(gap, samples, *rule.fallback);
      out.notes.push_back(fmt::format("{}: {} {} {}", f.words, *rule.fallback, f.unit, gap.text()));
    } else {
      out.problems.push_back(fmt::format(
          "{} is missing {}, longer than /weather/longest_gap_h allows ({:.3g} h){}", f.words, gap.text(),
          rule.longest_gap_s / hour_s, has_fallback_key(q) ? "; give " + fallback_key(q) : ""));
    }
  }
  if (longest_bridged != nullptr)
    out.notes.push_back(fmt::format("{}: {} short {} bridged, the longest {}", f.words, bridged,
                                    bridged == 1 ? "gap" : "gaps", longest_bridged->text()));
  out.samples = with_points(samples, gaps, points);
  return out;
}

FilledWaves fill_waves(const Samples& height, const Samples& period, const Samples& wind, Span run,
                       const GapRule& rule) {
  FilledWaves out;
  // Values at the wind's own times inside each long gap, and at the run's ends.
  const auto fill = [&](Quantity q, const Samples& samples, const char* by,
                        const std::function<double(double)>& value_at) {
    const std::vector<Gap> gaps = gaps_of(samples, run);
    std::vector<Samples> points(gaps.size());
    for (std::size_t g = 0; g < gaps.size(); ++g) {
      const Gap& gap = gaps[g];
      if (!samples.unix_s.empty() && !too_long(gap, rule)) continue;
      std::vector<double> times;
      if (gap.after == 0) times.push_back(gap.begin_unix_s);
      for (double t : wind.unix_s)
        if (t > gap.begin_unix_s && t < gap.end_unix_s) times.push_back(t);
      if (gap.after == samples.unix_s.size()) times.push_back(gap.end_unix_s);
      for (double t : times) {
        points[g].unix_s.push_back(t);
        points[g].value.push_back(value_at(t));
      }
      out.notes.push_back(samples.unix_s.empty()
                              ? fmt::format("{}: not in the file, {}", facts(q).words, by)
                              : fmt::format("{}: missing {}, {}", facts(q).words, gap.text(), by));
    }
    return with_points(samples, gaps, points);
  };
  out.height =
      fill(Quantity::wave_height, height, "that of a fully developed sea of the wind", [&](double t) {
        return fully_developed_sea(interpolate_linear(wind.unix_s, wind.value, t)).wave_height_m;
      });
  out.period =
      fill(Quantity::wave_period, period, "that of a fully developed sea of the wave height", [&](double t) {
        return period_of_height_s(interpolate_linear(out.height.unix_s, out.height.value, t));
      });
  return out;
}

std::optional<std::string> coverage_problem(const Observations& file, Span run) {
  const double first = file.row_unix_s.front(), last = file.row_unix_s.back();
  if (run.begin_unix_s >= first && run.end_unix_s <= last) return std::nullopt;
  return fmt::format("covers {} to {}; the run needs {} to {}", format_time_utc(first), format_time_utc(last),
                     format_time_utc(run.begin_unix_s), format_time_utc(run.end_unix_s));
}

}  // namespace bide::weather
