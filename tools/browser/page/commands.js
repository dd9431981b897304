// The commands in the texts of lessons as questions to the engine.
import {any_index, months} from "./situation.js";

// A command in words, and what comes after each of its options.
function words_of(command) {
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map((each) => each[1] ?? each[2]);
  return {words, after: (option) => words.flatMap((each, i) => (each === option ? [words[i + 1]] : []))};
}

const hours_of = (text) => Number.parseFloat(text) * (text.endsWith("d") ? 24 : 1);
const place_of = (text) => {
  const [latitude_deg, longitude_deg] = text.split(",").map(Number);
  return {latitude_deg, longitude_deg};
};

// What a caller knows at night, by the program's flags.
function situation_by(after) {
  const out = {ask: "situation", name: "People in distress", ...place_of(after("--place")[0])};
  for (const key of ["crew", "abandoned", "now", "last-contact", "raft", "clothing", "boarding"])
    if (after(`--${key}`).length) out[key.replace("-", "_")] = after(`--${key}`)[0];
  for (const [key, flag] of [["persons", "--persons"], ["sea_degC", "--sea"]])
    if (after(flag).length) out[key] = Number(after(flag)[0]);
  return out;
}

// A raft and a pack to choose, in each of several waters: "Rockall in January".
function choice_by(after, lists) {
  const rafts = after("--rafts")[0].split(",").map((word) => ({kind: word.replace(/^2x/, ""), one_of_two: word.startsWith("2x")}));
  const help_h = after("--help-after")[0].split(",").map(hours_of);
  const waters = after("--place").map((place) => {
    const [title, month] = place.split(" in ");
    const sea = lists.seas.find((each) => each.title === title);
    const number = String(months.indexOf(month) + 1).padStart(2, "0");
    return {ask: "situation", name: place, latitude_deg: sea.latitude_deg, longitude_deg: sea.longitude_deg, crew: after("--crew")[0],
            abandoned: "0h", now: `2031-${number}-15T12:00Z`, ahead_h: help_h.at(-1), raft: rafts[0].kind};
  });
  return {ask: "choose", rafts, help_h, packs: after("--packs").flatMap((each) => each.split(",")), waters};
}

// @param command   a line of a lesson
// @param scenarios texts by file name
// @param lists     of the engine
// @return {question, words, of, file}: what it asks, for people; of which scenarios, by their titles; and the scenario
//         file that may be opened (or null). Null for a command that only the program takes. Odds come as
//         {ask: "odds", futures, scenario or situation}.
export function asked_by(command, scenarios, lists) {
  const {words, after} = words_of(command);
  const names = words.filter((each) => each.endsWith(".json")).map((each) => each.split("/").at(-1)).filter((each) => each in scenarios);
  const named = (name) => ({scenario: scenarios[name], name}), title = (name) => JSON.parse(scenarios[name]).name;
  const asked = (question, said, of = said) => ({question, words: said, of, file: names[0] ?? null});
  const futures = after("-n").map(Number)[0];
  if (words[0] !== "bide") return null;
  if (words[1] === "odds" && after("--abandoned").length)
    return asked({ask: "odds", futures, situation: situation_by(after)}, "The odds, from what is known so far");
  if (words[1] === "choose") {
    const question = choice_by(after, lists);
    return asked(question, `The chance that all are able when help comes: ${question.waters.map((each) => each.name).join(", ")}`);
  }
  if (names.length === 0) return null;
  const first = named(names[0]);
  if (words[1] === "run") return asked({ask: "report", ...first}, title(names[0]));
  if (words[1] === "levers") return asked({ask: "report", levers: true, ...first}, `${title(names[0])}: what would buy time`);
  if (words[1] === "odds") return asked({ask: "odds", futures, scenario: first}, `${title(names[0])}: the odds`);
  if (words[1] !== "compare") return null;
  const varied = after("--vary").map((each) => {
    const [pointer, values] = each.split("="), field = lists.fields.find((one) => one.pointer === any_index(pointer));
    return `${field?.said ?? pointer} ${values.replaceAll(",", " or ")} ${field?.unit ?? ""}`.trim();
  });
  const of = [...new Set(names.map(title))].join(" beside ");
  return asked({ask: "compare", scenarios: names.map(named), vary: after("--vary")}, varied.length ? `${of}: ${varied.join(", ")}` : of, of);
}
