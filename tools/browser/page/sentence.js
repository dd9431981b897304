// The situation as a sentence whose words are controls.
import {find, make} from "./dom.js";
import {chosen_pack, chosen_raft, family, months, numbers, words_of_boarding, words_of_people} from "./situation.js";

const ruler = document.createElement("canvas").getContext("2d");

// A control as wide as its word.
function fit(control) {
  const {font, fontSize} = getComputedStyle(control);
  ruler.font = font;
  control.style.setProperty("--text", `${(ruler.measureText(control.value).width / Number.parseFloat(fontSize)).toFixed(2)}em`);  // in letters, for paper
}

// What is chosen is text, which runs over several lines where it is long; the control lies over it.
function choice(label, options, value, changed, pointer) {
  const control = make("select", {"aria-label": label, "data-pointer": pointer, onchange: () => changed(control.value)},
    options.map(([key, text]) => make("option", {value: key}, text)));
  control.value = value;
  return make("span.choice", {}, control, make("span.word", {"aria-hidden": "true"}, control.selectedOptions[0]?.textContent ?? ""));
}

function field(label, value, changed, pointer, settings = {}) {
  const control = make("input.word", {"aria-label": label, "data-pointer": pointer, value: String(value), autocomplete: "off",
                                      ...settings, oninput: () => fit(control), onchange: () => changed(control.value)});
  return control;
}

// Punctuation stays on the line of the control before it.
const held = (parts) => parts.map((each, i) => {
  const mark = typeof each === "string" && parts[i - 1]?.classList?.contains("choice") ? /^[.,;]/.exec(each)?.[0] : "";
  const next = parts[i + 1], follows = each.classList?.contains("choice") && typeof next === "string" ? /^[.,;]/.exec(next)?.[0] : "";
  return mark ? each.slice(1) : follows ? make("span.held", {}, each, follows) : each;
});

// "man 40, woman 38, girl 12, boy 9".
function ages_of(persons) {
  const grown = {M: "man", F: "woman"}, young = {M: "boy", F: "girl"}, of_age = 18;
  return family.slice(0, persons).map((each) => `${(Number(each.slice(1)) < of_age ? young : grown)[each[0]]} ${each.slice(1)}`).join(", ");
}

// @param place     where it stands
// @param situation what is chosen
// @param lists     of the engine
// @param changed   told what is new: {facts}, or {weather}
export function show_sentence(place, situation, lists, changed) {
  const facts = situation.facts;
  const focused = place.contains(document.activeElement) ? document.activeElement.getAttribute("aria-label") : null;
  const change = (key) => (value) => changed({facts: {...facts, [key]: value}});
  const change_number = (key) => (value) => change(key)(value === "" ? facts[key] : Number(value));  // an emptied box changes nothing
  const number = (label, key, pointer, least, most, step = "any") =>
    field(label, facts[key], change_number(key), pointer, {type: "number", min: String(least), max: String(most), step});
  const titles = (list) => list.map((each) => [each.key, each.title]);
  const raft = chosen_raft(facts, lists);

  const who = [choice("How many people", numbers.slice(1).map((word, i) => [i + 1, word]), facts.persons,
                      change_number("persons"), "/crew"),
               facts.persons === 1 ? " person, " : " people, ",
               choice("Who they are", Object.entries(words_of_people), facts.people, change("people"), "/crew"),
               facts.people === "typed"
                 ? [" ", field("The people, by sex and age; kg and m where known", facts.crew || "M40 F38 M12:45:1.52",
                               change("crew"), "/crew", {type: "text", class: "word wide"})] : "",
               facts.people === "family" ? make("span.quiet", {}, ` (${ages_of(facts.persons)})`) : "", ", "];
  const aboard = facts.boarding === "none" ? ["in the sea without a raft, "] : [
    "in ", choice("Raft", [["usual", `a raft for ${raft?.capacity_persons}, as usual`],
                           ...titles(lists.catalogue.rafts)], facts.raft, change("raft"), "/raft"),
    " with ", choice("Pack", [["usual", "its usual pack"],
                              ...titles(lists.catalogue.packs)], facts.pack, change("pack"), "/stores"), "; "];
  const where = [choice("Sea", [...titles(lists.seas), ["other", "another place"]], facts.sea, change("sea"), "/position"),
                 facts.sea === "other" ? [" at ", number("Latitude, degrees, north positive", "latitude_deg", "/position", -90, 90),
                                          "°, ", number("Longitude, degrees, east positive", "longitude_deg", "/position", -180, 180), "°"] : "",
                 situation.weather
                   ? [" in the weather of ", make("b", {"data-pointer": "/weather"}, situation.weather.name), " ",
                      make("button", {type: "button", onclick: () => changed({weather: null})}, "A month's weather instead"), ". "]
                   : [" in ", choice("Month", months.map((name, i) => [i + 1, name]), facts.month, change_number("month"), "/weather"), ". "]];
  const boarded = ["They ", choice("How they came aboard", Object.entries(words_of_boarding), facts.boarding, change("boarding"),
                                   "/boarding"),
                   facts.boarding === "swim" ? [" ", number("Minutes in the water", "minutes_in_water", "/boarding/minutes_in_water", 0, 1440),
                                                " minutes"] : "",
                   ", in ", choice("Clothing", titles(lists.catalogue.ensembles), facts.clothing, change("clothing"), "/crew/*/clothing"), ". "];
  const help = ["Help: ", choice("Help", [["no", "not considered"], ["yes", "in"]], facts.help_days === null ? "no" : "yes",
                                 (value) => change("help_days")(value === "yes" ? 3 : null), "/uncertain/rescue"),
                facts.help_days !== null ? [" ", number("Days until help", "help_days", "/uncertain/rescue", 0.1, 60), " days"] : "",
                facts.help_days > facts.days ? make("span.quiet", {role: "status"}, " (later than the time followed: follow them longer to see it)") : "",
                ". Followed for ", number("Days followed", "days", "/duration_h", 0.1, 60), " days."];
  place.replaceChildren(...[who, aboard, where, boarded, help].map((part) => make("span", {}, held(part.flat(3)))));
  place.querySelectorAll("input.word").forEach(fit);  // its font is known once it stands on the page
  if (focused) find(`[aria-label="${CSS.escape(focused)}"]`, place)?.focus();
}

// Where what the sentence chooses comes from.
export function sources_of(situation, lists) {
  const facts = situation.facts, {rafts, packs, ensembles} = lists.catalogue;
  const by_key = (list, key) => list.find((each) => each.key === key);
  const entry = (what, found) => found ? make("li", {}, make("b", {}, `${what}: ${found.title}. `), found.source ?? "") : null;
  return [
    entry("Raft", by_key(rafts, chosen_raft(facts, lists)?.key)),
    entry("Pack", by_key(packs, chosen_pack(facts, lists))),
    entry("Clothing", by_key(ensembles, facts.clothing)),
    make("li", {}, make("b", {}, "Place: "), lists.seas_source),
    situation.weather ? null : make("li", {}, make("b", {}, "Weather of the month: "), lists.climate_source)
  ].filter((each) => each);
}
