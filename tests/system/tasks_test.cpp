// Hands that fail feed back: what they are needed for is not done, unless somebody able aboard has hands that
// can. The level is 8 degC of the fingers for fine work, of the hand's skin for a grip (Ray 2019).
#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <string>

#include "bide/system/events.hpp"
#include "bide/system/tasks.hpp"
#include "support/runs.hpp"

using namespace bide;
using bide::system::Task;

namespace {

constexpr double cold_degC = 7.9, warm_degC = 8.1;

// Two men aboard, with all that hands are needed for; their bodies warm.
struct Raft {
  test::Run run;
  system::Forcings<double> forcings;
  system::System<double> system;
  std::vector<double> x;
  std::vector<system::Note> notes;

  Raft()
      : run(test::load_run(R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z",
          "duration_h": 24, "position": {"latitude_deg": 49, "longitude_deg": -21},
          "weather": {"kind": "constant", "air_temperature_degC": 15, "water_temperature_degC": 15,
            "wind_speed_m_s": 6},
          "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
          "routine": {"flares_per_night": 2}, "rationing": {"rule": "fixed_per_day", "water_L_per_day": 1},
          "stores": {"pack": "solas_a", "extra": [{"kind": "hand_desalinator_small", "quantity": 1}]},
          "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75},
                   {"sex": "male", "age_years": 35, "height_m": 1.8, "mass_kg": 80}]})")),
        forcings(run.weather),
        system(run.compiled, forcings),
        x(system.start()) {
    for (int p = 0; p < 2; ++p) set_hands(p, warm_degC, warm_degC);
    // Awake and able, as the checks before would have found them.
    for (auto& p : system.held.persons) p.living = p.conscious = p.able = 1;
  }

  void set_hands(int p, double finger_degC, double hand_degC) {
    double* y = x.data() + system::person_offset(p);
    y[body::at::finger] = finger_degC;
    y[body::at::node(body::hands, body::skin)] = hand_degC;
  }
  void apply(system::StopKind kind, int index = 1) { system::apply({3600, kind, index}, system, x, &notes); }
  bool noted(Task task) const {
    return std::any_of(notes.begin(), notes.end(), [&](const system::Note& note) {
      return note.kind == system::NoteKind::hands_failed && note.index == static_cast<int>(task);
    });
  }
};

struct Chore {
  Task task;
  bool by_fingers;
  const char* words;
  std::function<bool(Raft&)> done;  // does it, and says whether something came of it
};

const Chore chores[] = {{Task::sachet, true, "water is handed out",
                         [](Raft& r) {
                           const double before_L = r.system.held.stock.water_L;
                           for (int p = 0; p < 2; ++p)
                             r.x[system::person_offset(p) + body::at::body_water] -= 2;  // thirsty
                           r.apply(system::StopKind::issue);
                           r.apply(system::StopKind::drink);
                           return r.system.held.stock.water_L < before_L;
                         }},
                        {Task::flare, true, "signals are fired",
                         [](Raft& r) {
                           const auto& stock = r.system.held.stock;
                           const double before = stock.rockets + stock.hand_flares;
                           r.apply(system::StopKind::signal);
                           return stock.rockets + stock.hand_flares < before;
                         }},
                        {Task::entrance, false, "entrances are set",
                         [](Raft& r) {
                           r.system.held.opening_m2 = 0.123;
                           r.apply(system::StopKind::daylight);
                           return r.system.held.opening_m2 != 0.123;
                         }},
                        {Task::pump, false, "the floor is pumped up",
                         [](Raft& r) {
                           r.system.held.floor_inflated = 0;
                           r.apply(system::StopKind::bail);
                           return r.system.held.floor_inflated > 0;
                         }},
                        {Task::pump, false, "the desalinator is worked",
                         [](Raft& r) {
                           const double before_L = r.system.held.stock.water_L = 1;
                           r.apply(system::StopKind::make_water, 0);
                           return r.system.held.stock.water_L > before_L;
                         }},
                        {Task::bailer, false, "the floor is bailed", [](Raft& r) {
                           r.x[system::at::water_mass] = 50;
                           r.apply(system::StopKind::bail);
                           return r.x[system::at::water_mass] < 50;
                         }}};

}  // namespace

TEST_CASE("cold hands stop what needs them, and are noted") {
  for (const Chore& chore : chores) {
    CAPTURE(std::string(chore.words));
    Raft warm;
    CHECK(chore.done(warm));
    CHECK_FALSE(warm.noted(chore.task));
    Raft cold;
    for (int p = 0; p < 2; ++p) cold.set_hands(p, cold_degC, cold_degC);
    CHECK_FALSE(chore.done(cold));
    CHECK(cold.noted(chore.task));
  }
}

TEST_CASE("a mate with hands that can does it for all") {
  for (const Chore& chore : chores)
    for (const int cold : {0, 1}) {
      CAPTURE(std::string(chore.words));
      Raft raft;
      raft.set_hands(cold, cold_degC, cold_degC);
      CHECK(chore.done(raft));
      CHECK_FALSE(raft.noted(chore.task));
    }
}

TEST_CASE("a mate who is not able is no help") {
  for (const Chore& chore : chores) {
    CAPTURE(std::string(chore.words));
    Raft raft;
    raft.set_hands(0, cold_degC, cold_degC);
    raft.system.held.persons[1].able = 0;
    CHECK_FALSE(chore.done(raft));
    CHECK(raft.noted(chore.task));
  }
}

TEST_CASE("fine work hangs on the fingers, a grip on the hand") {
  for (const Chore& chore : chores) {
    CAPTURE(std::string(chore.words));
    Raft fingers, hands;
    for (int p = 0; p < 2; ++p) {
      fingers.set_hands(p, cold_degC, warm_degC);
      hands.set_hands(p, warm_degC, cold_degC);
    }
    CHECK(chore.done(fingers) == !chore.by_fingers);
    CHECK(chore.done(hands) == chore.by_fingers);
  }
}
