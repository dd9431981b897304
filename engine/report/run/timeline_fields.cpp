#include "bide/report/run/timeline_fields.hpp"

#include <stdexcept>

#include "bide/report/run/columns.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

template <class Owner, std::size_t N>
void add_fields(std::vector<TimelineField>& fields, const Owner& owner, const Column<Owner> (&columns)[N],
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

std::vector<TimelineField> timeline_fields(const timeline::Timeline& timeline) {
  std::vector<TimelineField> out;
  const std::size_t rows = timeline.time_s.size();
  add_fields(out, timeline, common_columns, "", rows);
  for (std::size_t i = 0; i < timeline.persons.size(); ++i)
    add_fields(out, timeline.persons[i], person_columns, person_column_prefix(static_cast<int>(i)), rows);
  return out;
}

}  // namespace bide::report
