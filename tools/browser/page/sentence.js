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

// Opens the fold of sources at one entry, and goes there; Escape goes back to the word.
function open_source(entry, back) {
  const place = find(`#${id_of(entry)}`);
  place.closest("details").open = true;
  place.focus({preventScroll: true});
  place.scrollIntoView({block: "center"});
  place.onkeydown = (event) => { if (event.key === "Escape") back.focus(); };
}
const id_of = (entry) => `source-${entry.toLowerCase().replace(/[^a-z]+/g, "-")}`;

// What ends a control: its last word, the way to its source, punctuation. They stay on one line.
function tail(word, entry) {
  const button = make("button.of-source", {type: "button", "aria-label": `Source: ${entry}`, onclick: () => open_source(entry, button)}, "?");
  return make("span.held", {}, word, button);
}

// What is chosen is text, which runs over several lines where it is long; the control lies over it.
function choice(label, options, value, changed, pointer, entry = label) {
  const control = make("select", {"aria-label": label, "data-pointer": pointer, onchange: () => changed(control.value)},
    options.map(([key, text]) => make("option", {value: key}, text)));
  control.value = value;
  const text = control.selectedOptions[0]?.textContent ?? "", last = text.lastIndexOf(" ") + 1;
  return make("span.choice", {}, control, last ? make("span.word", {"aria-hidden": "true"}, text.slice(0, last)) : null,
              tail(make("span.word.last", {"aria-hidden": "true"}, text.slice(last)), entry));
}

function field(label, value, changed, pointer, settings = {}, entry = label) {
  const control = make("input.word", {"aria-label": label, "data-pointer": pointer, value: String(value), autocomplete: "off",
                                      ...settings, oninput: () => fit(control), onchange: () => changed(control.value)});
  return tail(control, entry);
}

// Punctuation stays with the control before it.
const held = (parts) => parts.map((each, i) => {
  const end = parts[i - 1]?.querySelector?.(".of-source") ?? null, mark = end && typeof each === "string" ? /^[.,;°]+/.exec(each)?.[0] : null;
  if (!mark) return each;
  end.after(mark);
  return each.slice(mark.length);
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
  const number = (label, key, pointer, least, most, entry = label) =>
    field(label, facts[key], change_number(key), pointer, {type: "number", min: String(least), max: String(most), step: "any"}, entry);
  const titles = (list) => list.map((each) => [each.key, each.title]);
  const raft = chosen_raft(facts, lists);

  const who = [choice("How many people", numbers.slice(1).map((word, i) => [i + 1, word]), facts.persons,
                      change_number("persons"), "/crew"),
               facts.persons === 1 ? " person, " : " people, ",
               choice("Who they are", Object.entries(words_of_people), facts.people, change("people"), "/crew"),
               facts.people === "typed"
                 ? [" ", field("The people, by sex and age; kg and m where known", facts.crew || "M40 F38 M12:45:1.52",
                               change("crew"), "/crew", {type: "text", class: "word wide"}, "Who they are")] : "",
               facts.people === "family" ? make("span.quiet", {}, ` (${ages_of(facts.persons)})`) : "", ", "];
  const aboard = facts.boarding === "none" ? ["in the sea without a raft, "] : [
    "in ", choice("Raft", [["usual", `a raft for ${raft?.capacity_persons}, as usual`],
                           ...titles(lists.catalogue.rafts)], facts.raft, change("raft"), "/raft"),
    " with ", choice("Pack", [["usual", "its usual pack"],
                              ...titles(lists.catalogue.packs)], facts.pack, change("pack"), "/stores"), "; "];
  const where = [choice("Sea", [...titles(lists.seas), ["other", "another place"]], facts.sea, change("sea"), "/position"),
                 facts.sea === "other" ? [" at ", number("Latitude, degrees, north positive", "latitude_deg", "/position", -90, 90, "Sea"),
                                          "°, ", number("Longitude, degrees, east positive", "longitude_deg", "/position", -180, 180, "Sea"), "°"] : "",
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
                facts.help_days !== null ? [" ", number("Days until help", "help_days", "/uncertain/rescue", 0.1, 60, "Help"), " days"] : "",
                facts.help_days > facts.days ? make("span.quiet", {role: "status"}, " (later than the time followed: follow them longer to see it)") : "",
                ". Followed for ", number("Days followed", "days", "/duration_h", 0.1, 60), " days."];
  place.replaceChildren(...[who, aboard, where, boarded, help].map((part) => make("span", {}, held(part.flat(3).filter((each) => each !== "")))));
  place.querySelectorAll("input.word").forEach(fit);  // its font is known once it stands on the page
  if (focused) find(`[aria-label="${CSS.escape(focused)}"]`, place)?.focus();
}

// What the engine says of an input: its sentence, and the sources that it keeps.
// @param field of the engine's list
export const told_of = (field) => [make("p", {}, field.sentence), ...(field.sources.length ? [make("ul", {}, field.sources.map((each) => make("li", {}, each)))] : [])];

// Where what the sentence chooses comes from, an entry for each of its controls.
export function sources_of(situation, lists) {
  const facts = situation.facts, {packs, ensembles} = lists.catalogue;
  const by_key = (list, key) => list.find((each) => each.key === key);
  const entry = (name, pointers, chosen = null) => {
    const fields = pointers.map((pointer) => lists.fields.find((each) => each.pointer === pointer)).filter((each) => each);
    const none = !chosen && fields.every((each) => each.sources.length === 0);
    return make("li", {id: id_of(name), tabIndex: -1}, make("b", {}, `${name}. `), chosen?.title ? `${chosen.title}. ` : "", chosen?.source ?? "",
                fields.flatMap(told_of), none ? make("p.quiet", {}, "You state this: the engine keeps no source for it.") : null);
  };
  const aboard = facts.boarding !== "none";
  return [
    entry("How many people", ["/crew"]),
    entry("Who they are", ["sex", "age_years", "height_m", "mass_kg", "body_fat_pct", "vo2max_mL_kg_min"].map((key) => `/crew/*/${key}`)),
    ...(aboard ? [entry("Raft", ["/raft/kind", "/raft/floor_area_m2"], chosen_raft(facts, lists)), entry("Pack", ["/stores/pack"], by_key(packs, chosen_pack(facts, lists)))] : []),
    entry("Sea", ["/position"], {source: lists.seas_source}),
    entry("Month", ["/weather"], situation.weather ? null : {source: lists.climate_source}),
    entry("How they came aboard", ["/boarding/kind", "/boarding/in_water", "/boarding/water_shipped_L"]),
    ...(facts.boarding === "swim" ? [entry("Minutes in the water", ["/boarding/minutes_in_water"])] : []),
    entry("Clothing", ["/crew/*/clothing"], by_key(ensembles, facts.clothing)),
    entry("Help", ["/uncertain/rescue"]),
    entry("Days followed", ["/duration_h"])
  ];
}
