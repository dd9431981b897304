#include "bide/report/run/first_hour.hpp"
#include "bide/report/run/run_parts.hpp"

namespace bide::report::pages {

document::Section first_hour(const Material& m, const study::LeversTried* levers) {
  document::List list;
  list.to_tick = true;
  for (const Task& task : first_hour_tasks(m.scenario, levers)) list.items.emplace_back(task.sentence);
  return {"The first hour",
          {document::Paragraph{"Common practice, no source. The raft's own instructions come first; so does "
                               "whoever has been trained."},
           std::move(list)},
          true};
}

}  // namespace bide::report::pages
