// The page: from what a reader chooses to what the engine answers.
import {figures, find, hand_out, make} from "./dom.js";
import {GivenUp, start_engine} from "./engine.js";
import {file_panel} from "./file.js";
import {lessons_in} from "./lessons.js";
import {first_situation, from_fragment, scenario_of, to_fragment} from "./situation.js";
import {show_sentence, sources_of} from "./sentence.js";
import {stay_in} from "./stay.js";

const futures_wanted = 500, futures_at_a_time = 20;
const shipped = JSON.parse(find("#shipped").textContent);
const weather_files = {...shipped.weather};  // by name; those that are dropped in come to them
const quiet = (text) => make("p.quiet", {}, text);

let situation = from_fragment(location.hash.replace(/^#s=/, "")) ?? first_situation();
let lists = null, lanes = null, kept = null, asked = 0, shown = null;
const timings = globalThis.bide_timings = {};  // ms, for whoever measures

const refusal_words = (reasons) => reasons.map((each) => `${each.pointer || each.file}: ${each.message}`);

// The question with the weather file that its scenario names, if there is one.
function with_files(question) {
  const files = {};
  for (const text of [question.scenario, ...(question.scenarios ?? []).map((each) => each.scenario)]) {
    const named = /"file"\s*:\s*"([^"\\]+)"/.exec(text ?? "")?.[1];
    const found = named && weather_files[named.split("/").at(-1)];
    if (found) files[named] = found;
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
const section_of = (answer, title) => answer.sections.filter((each) => each.title === title);

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

function show_report(report) {
  const first = report.sections.find((each) => each.first);
  find("#answer").innerHTML = first.html;
  find("#answer").prepend(make("p.lead", {}, report.lead));
  // What buys time takes longer; until then the report would send the reader to a terminal.
  for (const line of document.querySelectorAll("#answer dl.facts div"))
    if (find("dt", line).textContent === "Buys most") find("dd", line).textContent = "being tried…";
  find("#answer").setAttribute("aria-busy", "false");
  document.body.classList.remove("working");
  const paper = ["Ration card", "The first hour"];
  const is_paper = (each) => paper.includes(each.title);
  find("#sheets").replaceChildren(...report.sections.filter(is_paper).map((each) => {
    const sheet = make("section.own-page", {}, make("h3", {}, each.title));
    sheet.insertAdjacentHTML("beforeend", each.html);
    return sheet;
  }));
  find("#rest").replaceChildren(...report.sections.filter((each) => !each.first && !is_paper(each) && each.title !== levers_title).map((each) => {
    const part = make("details.folded", {}, make("summary", {}, each.title));
    part.insertAdjacentHTML("beforeend", each.html);
    return part;
  }));
  globalThis.draw_charts?.();
}

// ---- what takes longer: side by side, and what buys time -------------------------------------------------------

const levers_title = "What would buy more time";

async function later(turn, scenario) {
  const old = () => turn !== asked;
  find("#bought").replaceChildren(quiet("Trying each change…"));
  try {
    const together = [beside(turn, scenario)];
    together.push(ask(lanes[1], {ask: "report", levers: true, scenario: scenario.text, name: scenario.name}).then((report) => {
      if (old()) return;
      if (report.refused) return find("#bought").replaceChildren(...refusal_words(report.refused).map(quiet));
      show_sections(find("#bought"), section_of(report, levers_title));
      const facts = report.sections.find((each) => each.first);
      const answer = find("#answer"), lead = find(".lead", answer);
      answer.innerHTML = facts.html;
      if (lead) answer.prepend(lead);
      globalThis.draw_charts?.();
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

const odds = {
  running: 0,
  stop() {
    ++this.running;
    find("#draw").hidden = false;
    find("#stop").hidden = true;
    find(".progress").hidden = true;
    find("#futures").replaceChildren();
  },
  async start(scenario, wanted = futures_wanted) {
    const mine = ++this.running, begun = performance.now(), parts = [];
    const current = () => mine === this.running;
    let next = 0, drawn = 0, told = 0;
    find("#draw").hidden = true;
    find("#stop").hidden = false;
    find(".progress").hidden = false;
    find("#drawn").max = wanted;
    const question = {scenario: scenario.text, name: scenario.name, seed: 1};
    const tell = async (all) => {
      const in_order = [];
      for (const part of parts) {
        if (!part) break;
        in_order.push(part);
      }
      const end = Math.min(in_order.length * futures_at_a_time, wanted);
      if (end === 0 || end === told) return;
      told = end;
      const answer = await ask(lanes[0], {...question, ask: "odds", end, parts: in_order});
      if (!current()) return;
      if (answer.refused) find("#futures").replaceChildren(...refusal_words(answer.refused).map(quiet));
      else show_sections(find("#futures"), all ? answer.sections : answer.sections.filter((each) => each.first));
    };
    const work = async (lane) => {
      while (next < wanted && current()) {
        const begin = next, place = begin / futures_at_a_time;
        next = Math.min(begin + futures_at_a_time, wanted);
        const end = next;
        const part = await ask(lane, {...question, ask: "draw", begin, end});
        if (!current()) return;
        if (part.refused) throw new Error(refusal_words(part.refused).join("; "));
        parts[place] = part;
        drawn += end - begin;
        find("#drawn").value = drawn;
        find("#drawn-words").textContent = `${drawn} of ${wanted}`;
        if (drawn >= 4 * Math.max(told, 25) && !lanes[0].busy) tell(false).catch(() => {});
      }
    };
    try {
      await Promise.all([work(lanes[1]), work(lanes[2])]);
      timings.futures = performance.now() - begun;
      if (current()) await tell(true);
    } catch (fault) {
      if (!(fault instanceof GivenUp) && current()) find("#futures").replaceChildren(quiet(fault.message));
    }
    if (!current()) return;
    find("#draw").hidden = false;
    find("#stop").hidden = true;
    find(".progress").hidden = true;
  }
};

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
  if (situation.file) {
    place.replaceChildren(`From a file: ${situation.file.title ?? situation.file.name}. `, make("button", {type: "button", onclick: () => change(first_situation())}, "Begin with a sentence instead"));
    find("#sources").replaceChildren(make("li", {}, "What the file states, and the defaults of the engine: see “The file behind it”."));
    return;
  }
  show_sentence(place, situation, lists, (facts) => change({...situation, facts}));
  find("#sources").replaceChildren(...sources_of(situation, lists));
}

function bring(name, text) {
  let title = name;
  try {
    title = JSON.parse(text).name ?? name;
  } catch { /* the engine says what is wrong with it */ }
  return change({...first_situation(), file: {name, text, title}});
}

function take_files(files) {
  for (const file of files)
    file.text().then((text) => {
      if (text.trimStart().startsWith("{")) return bring(file.name, text);
      weather_files[file.name] = text;
      return update();
    });
}

const panel = file_panel(find("#panel"), {
  bring, take_files, shipped: shipped.scenarios,
  set: (pointer, value) => {
    const set = {...situation.set};
    if (value === undefined) delete set[pointer];
    else set[pointer] = value;
    return change({...situation, set});
  },
  hand_out: async (what) => {
    const stem = (shown.run.title || "situation").replace(/[^A-Za-z0-9]+/g, "_").toLowerCase();
    const question = {scenario: shown.text, name: shown.name};
    if (what === "scenario") return hand_out(`${stem}.json`, shown.text, "application/json");
    if (what === "link") return navigator.clipboard?.writeText(`${location.href.split("#")[0]}#s=${to_fragment(situation)}`);
    if (what === "timeline") return hand_out(`${stem}.csv`, (await ask(lanes[1], {...question, ask: "timeline_file"})).text, "text/csv");
    return hand_out(`${stem}.html`, (await ask(lanes[1], {...question, ask: "report_file"})).text, "text/html");
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
find("#draw").onclick = () => odds.start(shown);
find("#stop").onclick = () => {
  lanes.slice(1).forEach((lane) => lane.give_up());
  odds.stop();
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
  lessons_in(find("#class"), shipped, {
    bring, ask: (question) => ask(lanes[1], question), show_sections, first_range: () => find("#answer dl.facts")?.innerText ?? "",
    odds: async ({file, situation: known, futures}) => {
      const text = file ? shipped.scenarios[file] : (await ask(lanes[1], known)).scenario;
      await bring(file ?? "first_call.json", text);
      find("#odds").scrollIntoView();
      await odds.start(shown, futures);
    }
  });
  await update();
}

globalThis.bide = {ask: (question) => ask(lanes[0], question), lane: () => lanes[0], timings, figures};
start().catch((fault) => {
  find("#sentence").textContent = `The engine could not be started: ${fault.message}. A browser of 2023 or later is needed.`;
});
