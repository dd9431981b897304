// The page: from what a reader chooses to what the engine answers.
import {figures, find, hand_out, make} from "./dom.js";
import {GivenUp, start_engine} from "./engine.js";
import {file_panel} from "./file.js";
import {futures_in, futures_wanted} from "./futures.js";
import {lessons_in} from "./lessons.js";
import {apart, first_situation, from_fragment, packed, scenario_of, unpacked} from "./situation.js";
import {show_sentence, sources_of} from "./sentence.js";
import {stay_in} from "./stay.js";
import {workbook} from "./xlsx.js";

const shipped = JSON.parse(find("#shipped").textContent);
const weather_files = new Map(Object.entries(shipped.weather));  // by name; those that are dropped in come to them
const quiet = (text) => make("p.quiet", {}, text);

const linked = new URLSearchParams(location.hash.slice(1));
let situation = from_fragment(linked.get("s")) ?? first_situation();
let lists = null, lanes = null, lessons = null, kept = null, asked = 0, shown = null;
const timings = globalThis.bide_timings = {};  // ms, for whoever measures

const refusal_words = (reasons) => reasons.map((each) => `${each.words || each.file}: ${each.message}`);

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
  find("#problems").replaceChildren(...reasons.map((each) => make("p.problem", {}, make("b", {}, each.words || each.file), `: ${each.message} `, each.pointer ? make("code.quiet", {}, each.pointer) : "")));
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
let bought = Promise.resolve(), tried = () => {};  // kept when what buys time has been tried, or is wanted no more

const becomes_old = (...ids) => ids.forEach((id) => find(id).classList.add("old"));
const is_new = (id) => find(id).classList.remove("old");
const tell = (state) => { find("#state").textContent = state; };

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
  document.body.classList.remove("comparing");
  tell(shown ? "Changed: the answer below is of the situation before. Asking the engine…" : "Asking the engine…");
  becomes_old("#stay", "#doubts", "#answer", "#sheets", "#rest", "#bought", "#difference");
  tried();
  bought = new Promise((done) => { tried = done; });
  try {
    const scenario = await scenario_of(situation, (question) => ask(lanes[0], question), lists);
    if (old()) return;
    const problem = (reasons) => {
      panel.show(scenario.text ?? "", situation);
      no_answer(reasons);
    };
    if (scenario.refused) return problem(scenario.refused);
    const run = await ask(lanes[0], {ask: "run", scenario: scenario.text, name: scenario.name});
    if (old()) return;
    if (run.refused) return problem(run.refused);
    shown = {...scenario, run};
    document.body.classList.remove("starting");
    show_problems([]);
    show_run(run);
    panel.show(scenario.text, situation);
    timings.run = performance.now() - begun;
    timings.first ??= performance.now();
    const report = await ask(lanes[0], {ask: "report", scenario: scenario.text, name: scenario.name, levers_to_come: true});
    if (old()) return;
    if (report.refused) return problem(report.refused);
    show_report(report);
    timings.range = performance.now() - begun;
    timings.first_range ??= performance.now();
    slow = setTimeout(() => later(turn, scenario).then(() => old() || tried()), 500);
  } catch (fault) {
    if (fault instanceof GivenUp || old()) return;
    no_answer([{pointer: "", file: "engine", message: `${fault.message} Change anything, or open the page again, to ask again.`}]);
  }
}

// Nothing is waited for any more.
function no_answer(reasons) {
  show_problems(reasons);
  find("#answer").setAttribute("aria-busy", "false");
  document.body.classList.remove("working");
  tell(shown ? "The answer below is of the situation before." : "");
  tried();
}

function show_run(run) {
  stay(run);
  ["#stay", "#doubts"].forEach(is_new);
  const of_odds = "/uncertain";  // the page draws futures itself
  find("#doubts").replaceChildren(...run.cautions.filter((each) => each.pointer !== of_odds).map((each) => quiet(`${each.words}: ${each.message}`)));
}

function show_answer(report) {
  show_html(find("#answer"), first_of(report).html);
  find("#answer").prepend(make("p.lead", {}, report.lead));
  for (const each of document.querySelectorAll("#answer dt")) explain(each);
  is_new("#answer");
  find("main").dataset.about = `${report.title}. ${report.lead}`;  // for pictures that are saved
  for (const each of document.querySelectorAll("#answer dd"))
    if (each.textContent === "being tried") each.parentElement.classList.add("to-come");  // not for paper
}

// A word of the glossary leads to it, and back.
function explain(term) {
  const known = [...document.querySelectorAll("#words dt")].find((each) => each.textContent === term.textContent.toLowerCase());
  if (!known) return;
  const button = make("button.of-word", {type: "button", "aria-label": `What “${term.textContent}” means`, onclick() {
    const entry = known.parentElement;
    entry.closest("details").open = true;
    entry.tabIndex = -1;
    entry.focus();
    entry.scrollIntoView({block: "center"});
    entry.onkeydown = ({key}) => { if (key === "Escape") button.focus(); };
  }}, "?");
  term.append(" ", button);
}

function show_report(report) {
  show_answer(report);
  find("#answer").setAttribute("aria-busy", "false");
  document.body.classList.remove("working");
  tell("");
  find("#sheets").replaceChildren(...report.sections.filter((each) => each.own_page).map((each) => {
    const caution = [...find("#cautions").querySelectorAll("p")].map((one) => one.cloneNode(true));
    const sheet = make("section.own-page", {}, make("div.for-paper", {}, caution, make("p.lead", {}, `${report.title}. ${report.lead}`)), make("h3", {}, each.title));
    sheet.insertAdjacentHTML("beforeend", each.html);
    return sheet;
  }));
  find("#rest").replaceChildren(...report.sections.filter((each) => !each.first && !each.own_page).map(folded));
  ["#sheets", "#rest"].forEach(is_new);
  globalThis.draw_charts?.();
}

// ---- what takes longer: side by side, and what buys time -------------------------------------------------------

let completed = 0;  // number of the change whose slow answers are there

async function later(turn, scenario) {
  if (document.body.classList.contains("in-class")) return;  // the lesson has all workers
  const old = () => turn !== asked;
  find("#bought").replaceChildren(quiet("Trying each change…"));
  is_new("#bought");
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
    completed = turn;
  } catch (fault) {
    if (!(fault instanceof GivenUp) && !old()) find("#bought").replaceChildren(quiet(fault.message));
  }
}

async function beside(turn, scenario) {
  for (const id of ["#swap", "#drop"]) find(id).hidden = !kept;
  const place = find("#difference");
  is_new("#difference");
  find("#kept").textContent = kept ? `Kept: ${kept.title}.` : "";
  if (!kept || kept.text === scenario.text) {
    place.replaceChildren(kept ? quiet("Now change one thing in the sentence above.") : "");
    return;
  }
  place.replaceChildren(quiet("Comparing…"));
  const [before, after] = [apart(kept.situation, situation, lists), apart(situation, kept.situation, lists)];
  const compared = await ask(lanes[2], {ask: "compare", scenarios: [
    {scenario: titled(kept.text, before), name: "kept"}, {scenario: titled(scenario.text, after), name: "changed"}]});
  if (turn !== asked) return;
  if (compared.refused) place.replaceChildren(...refusal_words(compared.refused).map(quiet));
  else {
    place.dataset.about = compared.lead;
    show_sections(place, compared.sections);
    place.prepend(make("p", {}, make("b", {}, `Option 1, kept: ${before}. Option 2, as above: ${after}.`)),
                  make("p.screen", {}, "What would buy more time, below, is tried on option 2. To try it on option 1, go back to it."));
    document.body.classList.add("comparing");  // it is printed too
  }
}

// A scenario under a name that says what it has that the other has not.
function titled(text, what) {
  const scenario = JSON.parse(text);
  return JSON.stringify({...scenario, name: `${scenario.name}: ${what}`});
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

// What a link needs to bring all of this back; nothing is kept elsewhere. Guesses, which may have names, come into it
// only when somebody asks for a link.
function fragment(with_guesses) {
  const state = lessons?.state(with_guesses);
  return `#s=${packed(situation)}${state ? `&l=${packed(state)}` : ""}`;
}
function remember() {
  try {
    history.replaceState(null, "", fragment(false));
  } catch { /* a browser that keeps a local file's address as it is: the link button still works */ }
}
addEventListener("beforeunload", (event) => { if (lessons?.guesses()) event.preventDefault(); });

// @return what to say of it
async function copy_link() {
  const link = `${location.href.split("#")[0]}${fragment(true)}`;
  const holds = `It holds the situation${lessons?.guesses() ? " and the lessons with their guesses and names" : ""}${situation.weather || (situation.file && weather_named_in(situation.file.text)) ? ", but not the weather file: send that with it" : ""}.`;
  try {
    await navigator.clipboard.writeText(link);
    return {words: `The link is copied. ${holds}`};
  } catch {
    return {words: `This browser lets no page copy: take the link from here. ${holds}`, link};
  }
}

function change(next) {
  situation = next;
  remember();
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
    if (what === "link") return copy_link();
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
// What buys time stands on the list: print when it is known. The browser's own command prints the answer before them.
find("#print").onclick = async () => {
  find("#print").textContent = "Trying what buys time first…";
  for (let waits = null; waits !== bought;) await (waits = bought);
  find("#print").textContent = "Print card and list";
  document.body.classList.add("sheets-alone");
  print();
  document.body.classList.remove("sheets-alone");
};
// A link within the page moves the page alone: the address holds the situation.
find("header nav").addEventListener("click", (event) => {
  const to = event.target.closest("a");
  if (!to) return;
  event.preventDefault();
  const part = find(to.getAttribute("href"));
  part.tabIndex = -1;
  part.focus({preventScroll: true});
  part.scrollIntoView();
});
new ResizeObserver(([{target}]) => document.documentElement.style.setProperty("--cautions", `${target.offsetHeight}px`)).observe(find("#cautions"));
find("#all-cautions").onclick = ({target}) => {
  const open = find("#cautions").classList.toggle("open");
  target.setAttribute("aria-expanded", open);
  target.textContent = open ? "less" : "all of it";
};
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
  lessons = lessons_in(find("#class"), shipped, lists, {
    changed: remember, ask: (question) => ask(lanes[0], question), show_sections, folded, first_of,
    entered() {
      odds.stop();
      lanes.slice(1).forEach((lane) => lane.give_up());
    },
    left: () => completed === asked || update(),
    open: (name) => {
      find("#situation").scrollIntoView();
      return bring(name, shipped.scenarios[name]);
    },
    futures_in: (place, more) => futures_in(place, {...for_futures, ...more})
  });
  lessons.restore(unpacked(linked.get("l")));
  await update();
}

globalThis.bide = {ask: (question) => ask(lanes[0], question), lane: () => lanes[0], timings, figures};
start().catch((fault) => {
  find("#sentence").textContent = `The engine could not be started: ${fault.message}. A browser of 2023 or later is needed.`;
});
