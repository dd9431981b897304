#include "validation/judge/report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

#include "bide/core/csv.hpp"
#include "validation/judge/body_before.hpp"

namespace bide::validation {

namespace {

constexpr double pct = 100;

std::vector<bool> rows_where(const Runs& runs, const std::function<bool(const JudgedRow&)>& is) {
  std::vector<bool> out;
  for (const JudgedRow& row : runs.rows) out.push_back(is(row));
  return out;
}

void add_line(std::string& out, const std::string& part, const std::string& candidate, const Summary& s) {
  if (s.rows == 0) return;
  out += fmt::format("| {} | {} | {} | {:.2f} |", part, candidate, s.rows, s.error);
  out += s.two_sided == 0 ? std::string(" | | | |\n")
                          : fmt::format(" {} | {:.0f} | {:.0f} | {:.2f} |\n", s.two_sided, pct * s.in_half,
                                        pct * s.in_nine_tenths, s.width);
}

void add_part(std::string& out, const Judgement& j, const std::string& part, const std::vector<bool>& take) {
  for (const Candidate& each : j.candidates)
    add_line(out, part, each.name, summarise(j.runs.rows, each.scores, take));
}

void add_table(std::string& out, const Judgement& j) {
  out +=
      "| part | candidate | rows | error | rows with two sides | in the middle 50 %, % | in the middle 90 %, "
      "% | width |\n|---|---|---:|---:|---:|---:|---:|---:|\n";
  add_part(out, j, "all", rows_where(j.runs, [](const JudgedRow&) { return true; }));
  add_part(out, j, "all but hands",
           rows_where(j.runs, [](const JudgedRow& row) { return row.about != "hands"; }));
  for (int region = 0; region < constants::region_count; ++region)
    add_part(out, j, constants::region_names[region],
             rows_where(j.runs, [&](const JudgedRow& row) { return row.region == region; }));
  std::vector<std::string> topics;
  for (const JudgedRow& row : j.runs.rows)
    if (std::find(topics.begin(), topics.end(), row.row.topic) == topics.end())
      topics.push_back(row.row.topic);
  for (const std::string& topic : topics)
    add_part(out, j, topic, rows_where(j.runs, [&](const JudgedRow& row) { return row.row.topic == topic; }));
}

void add_differences(std::string& out, const Judgement& j) {
  out +=
      "\n| candidate | rows that it forecasts | studies | its error | of the model in force, same rows "
      "| more by | middle 90 % over studies |\n|---|---:|---:|---:|---:|---:|---|\n";
  for (std::size_t c = 1; c < j.candidates.size(); ++c) {
    const Difference d = difference(j.runs.rows, j.candidates.front().scores, j.candidates[c].scores, c);
    out += fmt::format("| {} | {} | {} | {:.2f} | {:.2f} | {:+.2f} | {:+.2f} to {:+.2f} |\n",
                       j.candidates[c].name, d.rows, d.studies, d.second, d.first, d.mean, d.interval.low,
                       d.interval.high);
  }
}

// The names of the free parameters for which `is` holds; "none".
std::string names_of(const std::function<bool(std::size_t)>& is) {
  std::string out;
  for (std::size_t i = 0; i < parameter_count; ++i)
    if (is(i)) out += (out.empty() ? "" : ", ") + std::string(parameters[i].name);
  return out.empty() ? "none" : out;
}

void add_parameters(std::string& out, const Judgement& j) {
  out +=
      "\n| free parameter | prior, middle 68 % of the multiplier | posterior | leans most on (its mean "
      "without, in standard deviations) | where from |\n|---|---|---|---|---|\n";
  for (std::size_t i = 0; i < parameter_count; ++i) {
    const Parameter& p = parameters[i];
    const double sd = p.sd, mean = j.posterior.mean[i], spread = j.posterior.sd[i];
    const Leans& leans = j.posterior.leans[i];
    out += fmt::format("| {} | {:.2f} to {:.2f} | {:.2f} to {:.2f} | {} ({:+.2f}) | {}{} |\n", p.name,
                       std::exp(-sd), std::exp(sd), std::exp(mean - spread), std::exp(mean + spread),
                       leans.study, leans.moved,
                       std::string(p.sd.key).empty() ? "" : std::string(p.sd.key) + ": ", p.sd.where);
  }
  out += "\nParameters near an end of their range: " +
         names_of([&](std::size_t i) { return j.posterior.near_bound(i); }) +
         ". Parameters that hang on one study: " +
         names_of([&](std::size_t i) { return std::abs(j.posterior.leans[i].moved) >= hangs_from; }) + ".\n";
}

// To which side the model errs, and what its error covers.
void add_sides(std::string& out, const Judgement& j) {
  out +=
      "\n| region | when | heat made over measured | core above measured, K | in the middle 90 % with its "
      "error |\n|---|---|---|---|---|\n";
  const auto words = [](const constants::Bias& side) {
    if (side.rows == 0) return std::string();
    return fmt::format("{:.2f} to {:.2f} ({} rows){}", side.low, side.high, side.rows,
                       side.biased ? ", biased" : "");
  };
  for (int region = 0; region < constants::region_count; ++region)
    for (int span = 0; span < constants::span_count; ++span) {
      const constants::Forecast f =
          forecast_in(j.runs, j.candidates[model_with_error].scores, static_cast<constants::Region>(region),
                      static_cast<constants::Span>(span));
      out += fmt::format("| {} | {} | {} | {} | {} of {} |\n", constants::region_names[region],
                         constants::span_names[span], words(f.heat_made), words(f.core), f.covered.of,
                         f.covered.rows);
    }
}

}  // namespace

Judgement judge(std::size_t draws, std::uint64_t seed) {
  constexpr std::size_t of_prior = 2000;
  Judgement out;
  out.runs = run_draws(draws, seed);
  const Surface surface(out.runs);
  std::vector<double> misfits;
  for (std::size_t r = 0; r < out.runs.rows.size(); ++r)
    misfits.push_back(surface.misfit()[r] / out.runs.rows[r].half());
  std::sort(misfits.begin(), misfits.end());
  out.median_misfit = misfits[misfits.size() / 2];
  out.posterior = posterior(out.runs, surface, seed);
  const ErrorGrid grid(out.runs, surface, seed);
  out.widths = grid.best(std::vector<bool>(out.runs.rows.size(), true));
  out.candidates = {{"model in force", of_model(out.runs)},
                    {"model with its error", with_error(out.runs, grid)},
                    {"average over the priors", of_priors(out.runs, surface, of_prior, seed)},
                    {"posterior without the study", out.posterior.scores},
                    {"mean of other studies", trivial(out.runs.rows)},
                    {"two nodes", two_nodes(out.runs.rows)},
                    {"body before", of_values(out.runs.rows, values_before())}};
  return out;
}

std::string judge_text(const Judgement& j) {
  std::set<std::string> studies;
  for (const JudgedRow& row : j.runs.rows) studies.insert(row.row.study);
  std::string out = fmt::format(
      "{} independent measured rows of {} studies, each forecast without its own study. Errors are in\n"
      "half-intervals, at most 5; a study counts as two rows at most; every forecast carries the row's own\n"
      "scatter, one half-interval. Width: the middle 90 % over the row's interval.\n\n",
      j.runs.rows.size(), studies.size());
  add_table(out, j);
  add_differences(out, j);
  add_parameters(out, j);
  out +=
      "\n| region | width of heat made | of conductances | of water lost |\n"
      "|---|---:|---:|---:|\n";
  for (int region = 0; region < constants::region_count; ++region) {
    const Widths& w = j.widths[static_cast<std::size_t>(region)];
    out += fmt::format("| {} | {:.2f} | {:.2f} | {:.2f} |\n", constants::region_names[region], w.heat,
                       w.conductance, w.water);
  }
  add_sides(out, j);
  out += fmt::format(
      "\n{} runs of the comparison; the surface through them misses half of the rows by less than {:.2f}\n"
      "half-intervals. Chain: {:.0f} % of steps taken, at least {:.0f} effective points of {}.\n\nWhole "
      "runs:\n",
      j.runs.points.size(), j.median_misfit, pct * j.posterior.accepted, j.posterior.least_effective_points,
      j.posterior.points.size());
  for (const Row& row : j.runs.whole_runs)
    out += fmt::format("- {}: {:.2f} {} ({:g} to {:g}){}\n", row.quantity, row.model, row.unit, row.low,
                       row.high, row.holds() ? "" : ", outside: " + row.why);
  return out;
}

std::string judge_csv(const Judgement& j) {
  std::string out = "topic,study,quantity,unit,region,about,published,low,high,model";
  for (const Candidate& each : j.candidates)
    for (const char* what : {"error", "in 50 %", "in 90 %", "width"})
      out += "," + csv_cell(each.name + ": " + what);
  out += "\n";
  for (std::size_t r = 0; r < j.runs.rows.size(); ++r) {
    const JudgedRow& row = j.runs.rows[r];
    out +=
        fmt::format("{},{},{},{},{},{},{:g},{:g},{:g},{:g}", row.row.topic, csv_cell(row.row.study),
                    csv_cell(row.row.quantity), csv_cell(row.row.unit), constants::region_names[row.region],
                    row.about, row.row.published, row.row.low, row.row.high, row.row.model);
    for (const Candidate& each : j.candidates) {
      const auto& s = each.scores[r];
      if (!s)
        out += ",,,,";
      else if (!s->two_sided)
        out += fmt::format(",{:.3f},,,", s->error);
      else
        out += fmt::format(",{:.3f},{:d},{:d},{:.3f}", s->error, s->in_half, s->in_nine_tenths, s->width);
    }
    out += "\n";
  }
  return out;
}

}  // namespace bide::validation
