// The page: from what a reader chooses to what the engine answers.
import {figures, find, hand_out, make} from "./dom.js";
import {GivenUp, start_engine} from "./engine.js";
import {file_panel} from "./file.js";
import {futures_in, futures_wanted} from "./futures.js";
import {lessons_in} from "./lessons.js";
import {first_situation, from_fragment, scenario_of, to_fragment} from "./situation.js";
import {show_sentence, sources_of} from "./sentence.js";
import {stay_in} from "./stay.js";
import {workbook} from "./xlsx.js";

const shipped = JSON.parse(find("#shipped").textContent);
const weather_files = new Map(Object.entries(shipped.weather));  // by name; those that are dropped in come to them
const quiet = (text) => make("p.quiet", {}, text);

let situation = from_fragment(location.hash.replace(/^#s=/, "")) ?? first_situation();
let lists = null, lanes = null, kept = null, asked = 0, shown = null;
const timings = globalThis.bide_timings = {};  // ms, for whoever measures

const refusal_words = (reasons) => reasons.map((each) => `${each.pointer || each.file}: ${each.message}`);

// The weather file that a scenario names, as it names it; undefined where there is none.
function weather_named_in(text) {
  try {
    const named = JSON.parse(text).weather?.file;
    return typeof named === "string" ? named : undefined;
  } catch {
    return undefined;  // the engine says what is wrong with it
  }
}
const alone = (path) => path.split("/").at(-1);

// The question with the weather files that its scenarios name.
function with_files(question) {
  const files = {...question.files};
  for (const text of [question.scenario, ...(question.scenarios ?? []).map((each) => each.scenario)]) {
    const named = text && weather_named_in(text);
    if (named && weather_files.has(alone(named))) files[named] = weather_files.get(alone(named));
  }
  return {...question, files};
}
const ask = (lane, question) => lane.ask(with_files(question));

function show_sections(place, sections) {
  place.replaceChildren(...sections.map((each) => {
    const part = make("div", {}, sections.length > 1 && !each.first ? make("h3", {}, each.title) : null);
    part.insertAdjacentHTML("beforeend", each.html);  // the engine escapes every text in it
    return part;
  }));
  globalThis.draw_charts?.();
}
function show_html(place, html) {
  place.innerHTML = html;  // the engine escapes every text in it
  globalThis.draw_charts?.();
}
const first_of = (answer) => answer.sections.find((each) => each.first);
const folded = (section) => {
  const part = make("details.folded", {}, make("summary", {}, section.title));
  part.insertAdjacentHTML("beforeend", section.html);
  return part;
};

// ---- problems and doubts -------------------------------------------------------------------------------------

function show_problems(reasons) {
  document.querySelectorAll("[aria-invalid]").forEach((each) => each.removeAttribute("aria-invalid"));
  find("#problems").replaceChildren(...reasons.map((each) => make("p.problem", {}, make("code", {}, each.pointer || each.file), ` ${each.message}`)));
  for (const each of reasons)
    for (const control of document.querySelectorAll("[data-pointer]")) {
      const pointer = control.dataset.pointer;
      const same = each.pointer === pointer || each.pointer.startsWith(pointer.replace("/*", "/")) || pointer.startsWith(`${each.pointer}/`);
      if (each.pointer && same) control.setAttribute("aria-invalid", "true");
    }
  panel.problems(reasons);
}

// ---- the answer ----------------------------------------------------------------------------------------------

let slow = null;  // waits for the reader to pause

// Shows what follows from the situation as it now is. Older questions are given up.
async function update() {
  const turn = ++asked, begun = performance.now();
  const old = () => turn !== asked;
  lanes.forEach((lane) => lane.give_up());
  clearTimeout(slow);
  odds.stop();
  odds.clear();
  show_controls();
  find("#answer").setAttribute("aria-busy", "true");
  document.body.classList.add("working");
  try {
    const scenario = await scenario_of(situation, (question) => ask(lanes[0], question), lists);
    if (old()) return;
    const problem = (reasons) => {
      show_problems(reasons);
      panel.show(scenario.text ?? "", situation);
      document.body.classList.remove("working");
      document.body.classList.add("refused");
    };
    if (scenario.refused) return problem(scenario.refused);
    const run = await ask(lanes[0], {ask: "run", scenario: scenario.text, name: scenario.name});
    if (old()) return;
    if (run.refused) return problem(run.refused);
    shown = {...scenario, run};
    document.body.classList.remove("refused", "starting");
    show_problems([]);
    show_run(run);
    panel.show(scenario.text, situation);
    timings.run = performance.now() - begun;
    timings.first ??= performance.now();
    const report = await ask(lanes[0], {ask: "report", scenario: scenario.text, name: scenario.name});
    if (old()) return;
    if (report.refused) return problem(report.refused);
    show_report(report);
    timings.range = performance.now() - begun;
    timings.first_range ??= performance.now();
    slow = setTimeout(() => later(turn, scenario), 500);
  } catch (fault) {
    if (!(fault instanceof GivenUp) && !old()) show_problems([{pointer: "", file: "engine", message: fault.message}]);
  }
}

function show_run(run) {
  stay(run);
  find("#doubts").replaceChildren(...run.cautions.map((each) => quiet(`${each.pointer}: ${each.message}`)));
  find("#answer").setAttribute("aria-busy", "true");
}

function show_answer(report) {
  show_html(find("#answer"), first_of(report).html);
  find("#answer").prepend(make("p.lead", {}, report.lead));
}

function show_report(report) {
  show_answer(report);
  find("#answer").setAttribute("aria-busy", "false");
  document.body.classList.remove("working");
  find("#sheets").replaceChildren(...report.sections.filter((each) => each.own_page).map((each) => {
    const sheet = make("section.own-page", {}, make("h3", {}, each.title));
    sheet.insertAdjacentHTML("beforeend", each.html);
    return sheet;
  }));
  find("#rest").replaceChildren(...report.sections.filter((each) => !each.first && !each.own_page).map(folded));
  globalThis.draw_charts?.();
}

// ---- what takes longer: side by side, and what buys time -------------------------------------------------------

async function later(turn, scenario) {
  const old = () => turn !== asked;
  find("#bought").replaceChildren(quiet("Trying each change…"));
  try {
    const together = [beside(turn, scenario)];
    together.push(ask(lanes[1], {ask: "report", levers: true, scenario: scenario.text, name: scenario.name}).then((report) => {
      if (old()) return;
      if (report.refused) return find("#bought").replaceChildren(...refusal_words(report.refused).map(quiet));
      show_html(find("#bought"), report.levers);
      show_answer(report);
      timings.levers = performance.now();
    }));
    await Promise.all(together);
  } catch (fault) {
    if (!(fault instanceof GivenUp) && !old()) find("#bought").replaceChildren(quiet(fault.message));
  }
}

async function beside(turn, scenario) {
  for (const id of ["#swap", "#drop"]) find(id).hidden = !kept;
  find("#kept").textContent = kept ? `Kept: ${kept.title}.` : "";
  if (!kept || kept.text === scenario.text) {
    find("#difference").replaceChildren(kept ? quiet("Now change one thing in the sentence above.") : "");
    return;
  }
  find("#difference").replaceChildren(quiet("Comparing…"));
  const compared = await ask(lanes[2], {ask: "compare", scenarios: [
    {scenario: kept.text, name: "kept"}, {scenario: scenario.text, name: "changed"}]});
  if (turn !== asked) return;
  if (compared.refused) find("#difference").replaceChildren(...refusal_words(compared.refused).map(quiet));
  else {
    show_sections(find("#difference"), compared.sections);
    find("#difference").prepend(quiet("Option 1 is the one that was kept, option 2 the one above."));
  }
}

// ---- odds ------------------------------------------------------------------------------------------------------

const for_futures = {
  ask, lanes: () => lanes,
  show: (place, answer, all) => show_sections(place, all ? answer.sections : [first_of(answer)]),
  refused: (place, reasons) => place.replaceChildren(...refusal_words(reasons).map(quiet)),
  stopped() { find("#draw").hidden = false; },
  drawn(took) { timings.futures = took; }
};
const odds = futures_in(find("#futures"), for_futures);

// ---- controls ----------------------------------------------------------------------------------------------------

function change(next) {
  situation = next;
  try {
    history.replaceState(null, "", `#s=${to_fragment(situation)}`);
  } catch { /* a browser that keeps a local file's address as it is: the link button still works */ }
  return update();
}

function show_controls() {
  const place = find("#sentence");
  find("#set-by-hand").replaceChildren(...Object.entries(situation.set).map(([pointer, value]) =>
    make("p.quiet", {}, "Also set: ", make("code", {}, `${pointer} = ${JSON.stringify(value)}`), " ",
         make("button.link", {type: "button", onclick: () => set_field(pointer, undefined)}, "undo"))));
  if (situation.file) {
    place.replaceChildren(`From a file: ${situation.file.title ?? situation.file.name}. `, make("button", {type: "button", onclick: () => change(first_situation())}, "Begin with a sentence instead"));
    find("#sources").replaceChildren(make("li", {}, "What the file states, and the defaults of the engine: see “The file behind it”."));
    return;
  }
  show_sentence(place, situation, lists, (next) => change({...situation, ...next}));
  find("#sources").replaceChildren(...sources_of(situation, lists));
}

function set_field(pointer, value) {
  const set = {...situation.set};
  if (value === undefined) delete set[pointer];
  else set[pointer] = value;
  return change({...situation, set});
}

function bring(name, text) {
  let title = name;
  try {
    title = JSON.parse(text).name ?? name;
  } catch { /* the engine says what is wrong with it */ }
  return change({...first_situation(), file: {name, text, title}});
}

// A weather file takes the place of the month's weather, or is the one that the scenario file names.
async function take_weather(name, text) {
  const refuse = (message) => show_problems([{pointer: "", file: name, message}]);
  if (text.includes("\0")) return refuse("is no text; allowed: scenario files (JSON), weather files (CSV or a buoy's text)");
  const found = await ask(lanes[0], {ask: "weather_file", file: name, files: {[name]: text}});
  if (found.refused) return show_problems(found.refused);
  weather_files.set(name, text);
  if (!situation.file) {  // what was set of the month's weather goes with it
    const set = Object.fromEntries(Object.entries(situation.set).filter(([pointer]) => !pointer.startsWith("/weather/")));
    const days_in_it = Math.floor((found.to_unix_s - found.from_unix_s) / 864) / 100;
    const facts = {...situation.facts, days: Math.min(situation.facts.days, days_in_it)};
    return change({...situation, facts, set, weather: {name, ...found}});
  }
  const named = weather_named_in(situation.file.text);
  if (named && alone(named) === name) return update();
  return refuse(`the scenario file ${named ? `names ${named}` : "names no weather file"}; begin with a sentence to use this one`);
}

async function take_files(files) {
  const texts = await Promise.all([...files].map(async (file) => [file.name, await file.text()]));
  const is_scenario = ([name, text]) => name.endsWith(".json") || text.trimStart().startsWith("{");
  const scenario = texts.find(is_scenario), weather = texts.filter((each) => !is_scenario(each));
  if (!scenario) return weather.length ? take_weather(...weather[0]) : undefined;
  weather.forEach(([name, text]) => weather_files.set(name, text));
  return bring(...scenario);
}

const panel = file_panel(find("#panel"), {
  bring, take_files, shipped: shipped.scenarios,
  set: set_field,
  hand_out: async (what) => {
    const stem = (shown.run.title || "situation").replace(/[^A-Za-z0-9]+/g, "_").toLowerCase();
    const question = {scenario: shown.text, name: shown.name};
    const answer = (asked) => ask(lanes[1], {...question, ask: asked});
    if (what === "scenario") return hand_out(`${stem}.json`, shown.text, "application/json");
    if (what === "link") return navigator.clipboard?.writeText(`${location.href.split("#")[0]}#s=${to_fragment(situation)}`);
    if (what === "timeline") return hand_out(`${stem}.csv`, (await answer("timeline_file")).text, "text/csv");
    if (what === "workbook") return hand_out(`${stem}.xlsx`, workbook((await answer("sheets")).sheets), "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet");
    return hand_out(`${stem}.html`, (await answer("report_file")).text, "text/html");
  }
});
const stay = stay_in(find("#stay"));

find("#keep").onclick = () => {
  if (!shown) return;
  kept = {text: shown.text, title: shown.run.title, situation: structuredClone(situation)};
  update();
};
find("#swap").onclick = () => change(kept.situation);
find("#drop").onclick = () => {
  kept = null;
  update();
};
find("#draw").textContent = `Draw ${futures_wanted} futures`;
find("#draw").onclick = () => {
  find("#draw").hidden = true;
  odds.start(shown);
};
find("#print").onclick = () => print();
document.addEventListener("dragover", (event) => event.preventDefault());
document.addEventListener("drop", (event) => {
  event.preventDefault();
  take_files(event.dataTransfer.files);
});

function show_lists() {
  find("#words").replaceChildren(...lists.words.map(([word, meaning]) => make("div", {}, make("dt", {}, word), make("dd", {}, meaning))));
  panel.lists(lists);
  if (lists.charts) document.body.append(make("script", {}, lists.charts));
}

async function start() {
  const engine = await start_engine(find("#engine").textContent, find("#worker").textContent);
  lanes = [engine.lane()];
  lists = await lanes[0].ask({ask: "lists"});
  show_lists();
  lanes.push(engine.lane(), engine.lane());
  lessons_in(find("#class"), shipped, lists, {
    ask: (question) => ask(lanes[1], question), show_sections, folded, first_of,
    open: (name) => {
      find("#situation").scrollIntoView();
      return bring(name, shipped.scenarios[name]);
    },
    futures_in: (place, more) => futures_in(place, {...for_futures, ...more})
  });
  await update();
}

globalThis.bide = {ask: (question) => ask(lanes[0], question), lane: () => lanes[0], timings, figures};
start().catch((fault) => {
  find("#sentence").textContent = `The engine could not be started: ${fault.message}. A browser of 2023 or later is needed.`;
});
