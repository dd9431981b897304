#include <algorithm>

#include "bide/report/run/run_parts.hpp"

namespace bide::report::pages {
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

}  // namespace

// Common practice, no source, as the sheet says; items that are not aboard are left out.
html::Section first_hour(const Material& m) {
  const scenario::ValidScenario& s = m.scenario;
  html::Section out{"The first hour", {}, true};
  html::List list;
  list.to_tick = true;
  std::vector<std::string>& items = list.items;
  if (!s.scenario.raft) {
    items = {"Keep together, tied to each other if that can be done; hold on to whatever floats.",
             "Draw the knees up, arms to the sides; huddle, the weakest in the middle.",
             "Keep clothes, shoes and headgear on; tighten the lifejacket and its crotch strap.",
             "Turn the back to the waves; pull up the spray hood if there is one.",
             "Do not swim off unless a raft or a shore is surely within reach.",
             "Whistle and light ready; use them when somebody may see or hear."};
  } else {
    items = {"Count the crew. Look for people in the water; throw the quoit, bring them in.",
             "Cut the painter only when all are aboard or the ship drags the raft down; get clear.",
             "Stream the sea anchor.",
             "Shut the entrances against wind and spray, but leave an opening for air."};
    if (aboard(s, ItemRole::bailer) || aboard(s, ItemRole::sponge))
      items.push_back("Bail out, then sponge the floor dry.");
    if (s.scenario.raft->floor == scenario::FloorKind::inflated) items.push_back("Pump up the floor.");
    items.push_back("Wring out wet clothes and put them back on; cover head, neck and hands.");
    if (aboard(s, ItemRole::seasick_medicine))
      items.push_back(
          "Tablets against seasickness for everybody, as their leaflet says, before anybody is sick.");
    if (aboard(s, ItemRole::protective_aid))
      items.push_back("Put on the thermal protective aids: the coldest and the injured first.");
    items.push_back("Sit on lifejackets, bags or pads, off the floor; sit close together.");
    if (aboard(s, ItemRole::first_aid)) items.push_back("Treat the injured; stop bleeding first.");
    if (aboard(s, ItemRole::beacon)) items.push_back("Switch on the beacon and leave it on.");
    if (signals_aboard(s))
      items.push_back("Lay the signals ready; use them only when somebody may see them.");
    items.push_back("Check tubes, valves and canopy for leaks; top up with the pump.");
    items.push_back("Set a look-out and a roster: look-out, bailing, air, looking after each other.");
    items.push_back("Count water and food; agree on the ration and on who keeps it. Rig the rain catch.");
  }
  out.blocks.push_back(
      html::Paragraph{"Common practice, no source. The raft's own instructions come first; so does whoever "
                      "has been trained."});
  out.blocks.push_back(std::move(list));
  return out;
}

}  // namespace bide::report::pages
