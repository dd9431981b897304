#include "bide/report/run/csv.hpp"

#include <fmt/format.h>

#include <cmath>
#include <iterator>
#include <stdexcept>

#include "bide/core/csv.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/report/run/columns.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

struct Field {
  std::string name;
  const std::vector<double>* values;
};

template <class Owner, std::size_t N>
void add_fields(std::vector<Field>& fields, const Owner& owner, const Column<Owner> (&columns)[N],
                const std::string& prefix, std::size_t rows) {
  for (const auto& column : columns) {
    const std::vector<double>& values = owner.*column.values;
    if (values.empty()) continue;
    if (values.size() != rows)
      throw std::logic_error(prefix + column.name + " is not as long as its time axis");
    fields.push_back({prefix + column.name, &values});
  }
}

}  // namespace

std::string timeline_csv(const timeline::Timeline& timeline, const scenario::ValidScenario& scenario) {
  const std::size_t rows = timeline.time_s.size();
  std::vector<Field> fields;
  add_fields(fields, timeline, common_columns, "", rows);
  for (std::size_t i = 0; i < timeline.persons.size(); ++i) {
    add_fields(fields, timeline.persons[i], person_columns, person_column_prefix(static_cast<int>(i)), rows);
  }

  fmt::memory_buffer out;
  const auto to = std::back_inserter(out);
  fmt::format_to(to, "# {}\n# {}\n# {}\n", one_case, standing_notice, standing_advice);
  fmt::format_to(to, "{}", csv_comment("scenario: " + plain(scenario.scenario.name)));
  fmt::format_to(to, "time_h,time_utc");
  for (const Field& field : fields) fmt::format_to(to, ",{}", field.name);
  fmt::format_to(to, "\n");
  for (std::size_t i = 0; i < rows; ++i) {
    fmt::format_to(to, "{},{}", timeline.time_s[i] / hour_s,
                   format_time_utc(timeline.start_unix_s + timeline.time_s[i]));
    for (const Field& field : fields) {
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
