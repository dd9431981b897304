#include "bide/report/words/glossary.hpp"

namespace bide::report {

std::span<const Term> glossary() {
  static constexpr Term terms[] = {
      {"able until", "The time until which a person can help themselves: bail, open, drink, signal."},
      {"alive until", "The time until which a person lives, in the model."},
      {"half of the crew", "The time at which half of the crew, or more, have come to a limit."},
      {"limit",
       "A value at which ability or life ends: core temperature, water lost, carbon dioxide, hunger."},
      {"margin left",
       "The part of the way to the nearest limit that is still open: 100 % is a well person, 0 % the limit. "
       "A "
       "point is one per cent of that way."},
      {"not reached within 5 d",
       "The run was followed for 5 days and the limit did not come. It may come later."},
      {"central case", "The run with every unknown at the middle of its range."},
      {"range",
       "From the earliest to the latest time over what nobody has measured and over the model's own error. "
       "It "
       "does not cover other people or other weather."},
      {"future",
       "One draw of everything that is uncertain: people, weather, failures, what nobody has measured."},
      {"8 in 10 futures",
       "One future in ten is earlier than the first time, one in ten later than the second."},
      {"chance", "What differs from case to case: people, weather, failures (aleatory)."},
      {"ignorance", "What is the same in every case but not measured (epistemic)."},
      {"the model cannot separate them",
       "Two times closer than 5 % or half an hour, or both later than the time followed."},
      {"checked", "Inside what has been measured; studies like it are not missed to one side."},
      {"biased", "Measured, but such studies are missed to one side; the result says which and by how much."},
      {"covered, not covered",
       "How many measurements of the same kind of place and the same hours, each forecast without its own "
       "study, lie in the model's range, where nine in ten were meant."},
      {"extrapolated", "Beyond what has been measured; the result says which limit of the data was passed."},
      {"no data", "Nobody has published a measurement."},
      {"core", "Temperature deep inside the trunk, 37 °C in a well person."},
      {"water deficit", "Water lost and not replaced, in per cent of body mass."},
      {"foul air", "Carbon dioxide above 5,000 ppm, the limit of a working day."},
      {"Person A", "The first person of the scenario; B, C and so on in its order. Never a named person."},
  };
  return terms;
}

}  // namespace bide::report
