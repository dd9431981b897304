// What a reader has chosen, and the scenario file that follows from it.
//
// A situation is either a few facts in a sentence, from which the engine makes a file, or a file that was brought.
// Values set field by field come on top of both.

export const first_situation = () => ({
  facts: {persons: 4, people: "usual", crew: "", raft: "usual", pack: "usual", sea: "biscay", latitude_deg: 45, longitude_deg: -5,
          month: 2, clothing: "temperate_sailing", boarding: "swim", minutes_in_water: 10, days: 5, help_days: null},
  file: null,     // {name, text}
  weather: null,  // measured, in place of the month's: {name, kind, from_unix_s, to_unix_s}; its text stays with the page
  set: {}         // value by pointer
});

export const months = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
                       "November", "December"];
export const numbers = ["no", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven",
                        "Twelve"];

// A pointer into a scenario as the list of fields has it: /crew/0/age_years belongs to /crew/*/age_years.
export const any_index = (pointer) => pointer.replace(/\/\d+(?=\/|$)/g, "/*");

// Two grown up, the others children: invented, for a lesson.
export const family = ["M40", "F38", "F12", "M9", "F15", "M7", "F6", "M14", "F17", "M16", "F8", "M11"];

export const words_of_people = {
  usual: "men and women of usual size", family: "a family, two grown up", unknown: "of whom nothing is known", typed: "these people"
};
export const words_of_boarding = {
  dry: "stepped aboard dry", swim: "swam to it for", float_free: "were in the water until it rose and inflated",
  none: "never reached it"
};

// What one situation has that another has not, in words: "stepped aboard dry".
// @param lists of the engine
export function apart(situation, other, lists) {
  const {facts} = situation, titled = (list, key) => list.find((each) => each.key === key)?.title ?? key;
  const boarded = (it) => (it.boarding === "swim" ? `swam ${it.minutes_in_water} minutes` : words_of_boarding[it.boarding]);
  const told = {
    persons: () => `${facts.persons} ${facts.persons === 1 ? "person" : "people"}`, people: () => words_of_people[facts.people], crew: () => facts.crew,
    raft: () => chosen_raft(facts, lists)?.title ?? facts.raft, pack: () => titled(lists.catalogue.packs, chosen_pack(facts, lists)),
    sea: () => titled(lists.seas, facts.sea), latitude_deg: () => `${facts.latitude_deg}° north`, longitude_deg: () => `${facts.longitude_deg}° east`,
    month: () => months[facts.month - 1], clothing: () => titled(lists.catalogue.ensembles, facts.clothing),
    boarding: () => boarded(facts), minutes_in_water: () => boarded(facts), days: () => `followed for ${facts.days} days`,
    help_days: () => (facts.help_days === null ? "help not considered" : `help in ${facts.help_days} days`)
  };
  if (situation.file || other.file) return situation.file?.text === other.file?.text ? set_apart() : situation.file?.title ?? "a sentence";
  const out = Object.keys(told).filter((key) => facts[key] !== other.facts[key]).map((key) => told[key]());
  if (JSON.stringify(situation.weather) !== JSON.stringify(other.weather)) out.push(situation.weather ? `weather of ${situation.weather.name}` : "weather of the month");
  return [...new Set([...out, set_apart()])].filter((each) => each).join(", ");

  function set_apart() {
    const pointers = new Set([...Object.keys(situation.set), ...Object.keys(other.set)]);
    const said = (pointer) => lists.fields.find((each) => each.pointer === any_index(pointer))?.said ?? pointer;
    return [...pointers].filter((each) => situation.set[each] !== other.set[each])
      .map((each) => `${said(each)} ${each in situation.set ? situation.set[each] : "as before"}`).join(", ");
  }
}

// Puts a value at a pointer; objects on the way are made. "*" stands for each entry of a list.
export function put(node, pointer, value) {
  const [key, ...rest] = pointer.slice(1).split("/").map((each) => each.replaceAll("~1", "/").replaceAll("~0", "~"));
  if (["__proto__", "constructor", "prototype"].includes(key)) return;  // no key of a scenario
  const on = rest.length ? "/" + rest.map((each) => each.replaceAll("~", "~0").replaceAll("/", "~1")).join("/") : "";
  if (key === "*") {
    for (let i = 0; i < node.length; ++i) on ? put(node[i], on, value) : node[i] = value;
  } else if (on) {
    node[key] ??= {};
    if (typeof node[key] === "object") put(node[key], on, value);
  } else {
    node[key] = value;
  }
}

const persons_in = (facts) => facts.people === "typed" ? facts.crew.trim().split(/[\s,]+/).length : facts.persons;
const raft_of = (facts, lists) =>
  facts.raft === "usual" ? lists.usual_rafts[persons_in(facts)] ?? "" : facts.raft;
export const chosen_raft = (facts, lists) => lists.catalogue.rafts.find((each) => each.key === raft_of(facts, lists));
export const chosen_pack = (facts, lists) =>
  facts.pack === "usual" ? chosen_raft(facts, lists)?.pack ?? "none" : facts.pack;

function question_of(facts, lists) {
  const sea = lists.seas.find((each) => each.key === facts.sea);
  const out = {
    ask: "new", name: "", month: facts.month, days: facts.days, clothing: facts.clothing, raft: raft_of(facts, lists),
    pack: chosen_pack(facts, lists), boarding: facts.boarding === "none" ? "swim" : facts.boarding,
    place: sea?.title ?? `${facts.latitude_deg},${facts.longitude_deg}`,
    latitude_deg: sea?.latitude_deg ?? facts.latitude_deg, longitude_deg: sea?.longitude_deg ?? facts.longitude_deg
  };
  out.name = `${numbers[facts.persons] ?? facts.persons} in ${out.place} in ${months[facts.month - 1]}`;
  if (facts.people === "typed") out.crew = facts.crew;
  else if (facts.people === "family") out.crew = family.slice(0, facts.persons).join(" ");
  else out.persons = facts.persons;
  return out;
}

// What the sentence says and a new scenario does not hold.
function finish(scenario, {facts, weather}) {
  if (facts.people === "unknown") put(scenario, "/uncertain/crew_unknown", true);
  if (facts.boarding === "swim") put(scenario, "/boarding/minutes_in_water", facts.minutes_in_water);
  if (facts.boarding === "none") {
    scenario.boarding = {kind: "none"};
    delete scenario.raft;
    delete scenario.stores;
    delete scenario.routine;
  }
  if (weather) {
    scenario.setting = `Invented people and place. Weather of the file ${weather.name}, from its first row on.`;
    scenario.weather = {kind: weather.kind, file: weather.name};
    scenario.start_time_utc = new Date(1000 * weather.from_unix_s).toISOString().replace(".000", "");
    delete scenario.uncertain.weather;  // what was measured does not vary
  }
  if (facts.help_days !== null) put(scenario, "/uncertain/rescue", {kind: "fixed", at_h: 24 * facts.help_days});
}

// @param ask   asks the engine
// @param lists what it answered to "lists"
// @return {text, name} of the scenario, or {refused}
export async function scenario_of(situation, ask, lists) {
  let scenario = null;
  if (situation.file) {
    if (Object.keys(situation.set).length === 0) return situation.file;
    try {
      scenario = JSON.parse(situation.file.text);
    } catch {
      return situation.file;  // the engine says what is wrong, and where
    }
  } else {
    const made = await ask(question_of(situation.facts, lists));
    if (made.refused) return made;
    scenario = JSON.parse(made.scenario);
    finish(scenario, situation);
  }
  for (const [pointer, value] of Object.entries(situation.set)) put(scenario, pointer, value);
  return {text: JSON.stringify(scenario, null, 2) + "\n", name: situation.file?.name ?? "situation.json"};
}

// A plain value in a link, and back; null for what is none.
export function packed(value) {
  const bytes = new TextEncoder().encode(JSON.stringify(value));
  return btoa(Array.from(bytes, (each) => String.fromCharCode(each)).join("")).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}
export function unpacked(text) {
  try {
    const letters = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    return JSON.parse(new TextDecoder().decode(Uint8Array.from(letters, (each) => each.charCodeAt(0))));
  } catch {
    return null;
  }
}

// The situation in a link. Only what is in the link is ever read from it.
export function from_fragment(text) {
  try {
    const read = unpacked(text);
    const first = first_situation(), facts = {...first.facts};
    const fits = (key, value) => key === "help_days" ? value === null || typeof value === "number" : typeof value === typeof first.facts[key];
    for (const key of Object.keys(facts))
      if (read.facts && Object.hasOwn(read.facts, key) && fits(key, read.facts[key])) facts[key] = read.facts[key];
    const file = typeof read.file?.text === "string" ? {name: String(read.file.name), text: read.file.text} : null;
    const given = read.weather, is = (kind, ...keys) => keys.every((key) => typeof given[key] === kind);
    const weather = given && is("string", "name", "kind") && is("number", "from_unix_s", "to_unix_s") ? given : null;
    return {facts, file, weather, set: typeof read.set === "object" && read.set ? read.set : {}};
  } catch {
    return null;
  }
}
