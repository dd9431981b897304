#include "bide/report/run/first_hour.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/constants/crew_needs.hpp"

namespace bide::report {
namespace {

using scenario::ItemRole;

bool aboard(const scenario::ValidScenario& s, ItemRole role) {
  return std::any_of(s.stock.begin(), s.stock.end(), [role](const scenario::StockItem& item) {
    return item.kind->role == role && item.quantity > 0;
  });
}

bool signals_aboard(const scenario::ValidScenario& s) {
  return aboard(s, ItemRole::hand_flare) || aboard(s, ItemRole::rocket) || aboard(s, ItemRole::smoke);
}

constexpr Task distress_call{"distress call",
                             "Send the distress call before all else, by whatever is at hand: radio, beacon, "
                             "phone, AIS. Say where you are "
                             "and how many. Leave a beacon on once it is switched on."};

// Warm people lose more water in it. The air of a weather file is not looked at.
bool aids_help(const scenario::ValidScenario& s, const study::LeversTried* levers) {
  const double air_degC = std::visit(
      [](const auto& w) {
        if constexpr (requires { w.air_temperature_degC; })
          return w.air_temperature_degC;
        else
          return constants::aid_warmest_air_degC.value;
      },
      s.weather);
  if (air_degC > constants::aid_warmest_air_degC) return false;
  return levers == nullptr ||
         std::none_of(levers->tried.begin(), levers->tried.end(), [](const study::LeverTried& each) {
           return each.lever->key == "protective_aids" && each.state == study::LeverTried::State::tried &&
                  study::direction(each) < 0;
         });
}

// Whether this is true of anybody.
template <class Test>
bool anybody(const scenario::ValidScenario& s, Test&& test) {
  return std::any_of(s.scenario.crew.begin(), s.scenario.crew.end(), test);
}

// For those who are hurt or ill, whatever is aboard.
void tasks_for_the_hurt(const scenario::ValidScenario& s, std::vector<Task>& out) {
  using scenario::Person;
  if (anybody(s, [](const Person& p) { return p.blood_loss_pct > 0; }))
    out.push_back(
        {"press on wounds", "Press on bleeding wounds and keep pressing; lay the bled flat and warm."});
  if (anybody(s, [](const Person& p) { return p.burned_pct > 0; }))
    out.push_back(
        {"cover burns", "Cover burns with clean cloth, and keep the burnt warm: they lose water and heat."});
  if (anybody(s, [](const Person& p) { return !p.fit_for_work; }))
    out.push_back({"splint fractures", "Splint broken limbs; give pumping and bailing to others."});
  if (anybody(s, [](const Person& p) { return p.hands != scenario::Hands::sound; }))
    out.push_back({"stand in for hurt hands",
                   "Agree who opens sachets and uses signals in place of those with hurt hands."});
}

std::vector<Task> in_the_water() {
  return {
      distress_call,
      {"keep together", "Keep together, tied to each other if that can be done; hold on to whatever floats."},
      {"knees up, huddle", "Draw the knees up, arms to the sides; huddle, the weakest in the middle."},
      {"clothes on", "Keep clothes, shoes and headgear on; tighten the lifejacket and its crotch strap."},
      {"back to the waves", "Turn the back to the waves; pull up the spray hood if there is one."},
      {"do not swim off", "Do not swim off unless a raft or a shore is surely within reach."},
      {"whistle and light", "Whistle and light ready; use them when somebody may see or hear."}};
}

}  // namespace

std::vector<Task> first_hour_tasks(const scenario::ValidScenario& s, const study::LeversTried* levers) {
  if (!s.scenario.raft) return in_the_water();
  std::vector<Task> out{
      distress_call,
      {"count the crew", "Count the crew. Look for people in the water; throw the quoit, bring them in."},
      {"get clear", "Cut the painter only when all are aboard or the ship drags the raft down; get clear."},
      {"sea anchor", "Stream the sea anchor."},
      {"shut the entrances but leave a vent",
       "Shut the entrances against wind and spray, but leave an opening for air."}};
  if (aboard(s, ItemRole::bailer) || aboard(s, ItemRole::sponge))
    out.push_back({"bail", "Bail out, then sponge the floor dry."});
  if (s.scenario.raft->floor == scenario::FloorKind::inflated)
    out.push_back({"pump up the floor", "Pump up the floor."});
  out.push_back(
      {"wring out clothes", "Wring out wet clothes and put them back on; cover head, neck and hands."});
  if (aboard(s, ItemRole::seasick_medicine))
    out.push_back(
        {"tablets against seasickness",
         "Tablets against seasickness for everybody, as their leaflet says, before anybody is sick."});
  if (aboard(s, ItemRole::protective_aid) && aids_help(s, levers))
    out.push_back({"thermal protective aids",
                   "Put on the thermal protective aids: the coldest and the injured first."});
  out.push_back({"sit off the floor, close together",
                 "Sit on lifejackets, bags or pads, off the floor; sit close together."});
  if (aboard(s, ItemRole::first_aid))
    out.push_back({"treat the injured", "Treat the injured; stop bleeding first."});
  tasks_for_the_hurt(s, out);
  if (signals_aboard(s))
    out.push_back({"signals ready", "Lay the signals ready; use them only when somebody may see them."});
  out.push_back({"look for leaks", "Check tubes, valves and canopy for leaks; top up with the pump."});
  out.push_back(
      {"look-out", "Set a look-out and a roster: look-out, bailing, air, looking after each other."});
  out.push_back(
      {"ration", "Count water and food; agree on the ration and on who keeps it. Rig the rain catch."});
  return out;
}

std::string first_hour_line(const scenario::ValidScenario& s) {
  constexpr std::size_t most_letters = 115;  // two lines of a terminal
  std::string out;
  const std::vector<Task> tasks = first_hour_tasks(s);
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const std::string name = tasks[i].name;
    if (!out.empty() && out.size() + name.size() + 2 > most_letters)
      return fmt::format("{}, and {} more", out, tasks.size() - i);
    out += (out.empty() ? "" : ", ") + name;
  }
  return out;
}

}  // namespace bide::report
