#include "bide/report/run/csv.hpp"

#include <fmt/format.h>

#include <cmath>
#include <iterator>

#include "bide/core/csv.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/report/run/timeline_fields.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {

std::string timeline_csv(const timeline::Timeline& timeline, const scenario::ValidScenario& scenario) {
  const std::size_t rows = timeline.time_s.size();
  const std::vector<TimelineField> fields = timeline_fields(timeline);
  fmt::memory_buffer out;
  const auto to = std::back_inserter(out);
  fmt::format_to(to, "# {}\n# {}\n# {}\n# {}\n", one_case, standing_notice, standing_advice, made_by_line());
  fmt::format_to(to, "{}", csv_comment("scenario: " + plain(scenario.scenario.name)));
  fmt::format_to(to, "time_h,time_utc");
  for (const TimelineField& field : fields) fmt::format_to(to, ",{}", field.name);
  fmt::format_to(to, "\n");
  for (std::size_t i = 0; i < rows; ++i) {
    fmt::format_to(to, "{},{}", timeline.time_s[i] / hour_s,
                   format_time_utc(timeline.start_unix_s + timeline.time_s[i]));
    for (const TimelineField& field : fields) {
      const double value = (*field.values)[i];
      if (std::isfinite(value)) {
        fmt::format_to(to, ",{:.6g}", value);
      } else {
        out.push_back(',');
      }
    }
    out.push_back('\n');
  }
  return fmt::to_string(out);
}

}  // namespace bide::report
