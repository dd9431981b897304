// Lessons as guided steps: a question and guesses first, what the engine says after them.
//
// The lessons are the files of scenarios/lessons/: a paragraph that begins with bold words is a step, an indented
// line is a command, which is asked of the engine here.
import {make} from "./dom.js";

// Steps of a lesson, {title, blocks: [{kind: "text" | "command" | "list", ...}]}.
export function steps_of(markdown) {
  const lesson = {title: "", steps: []};
  for (const block of markdown.split(/\n\s*\n/)) {
    const text = block.replace(/\s*\n(?!\s*\d+\. |    )/g, " ").trimEnd();
    const step = lesson.steps.at(-1);
    const bold = /^\*\*(.+?)\*\*\s*/.exec(text);
    if (text.startsWith("# ")) lesson.title = text.slice(2);
    else if (bold) lesson.steps.push({title: bold[1].replace(/\.$/, ""), blocks: parts_of(text.slice(bold[0].length))});
    else if (step) step.blocks.push(...parts_of(text));
  }
  return lesson;
}

function parts_of(text) {
  const out = [];
  for (const line of text.split("\n")) {
    const item = /^\s*\d+\. (.*)/.exec(line);
    if (/^    \S/.test(line)) out.push({kind: "command", text: line.trim()});
    else if (item && out.at(-1)?.kind === "list") out.at(-1).items.push(item[1]);
    else if (item) out.push({kind: "list", items: [item[1]]});
    else if (line.trim()) out.push({kind: "text", text: line.trim()});
  }
  return out;
}

// What a caller knows at night, by the program's flags.
function situation_by(after) {
  const [latitude_deg, longitude_deg] = after("--place")[0].split(",").map(Number);
  const out = {ask: "situation", name: "People in distress", latitude_deg, longitude_deg};
  for (const key of ["crew", "abandoned", "now", "last-contact", "raft", "clothing", "boarding"])
    if (after(`--${key}`).length) out[key.replace("-", "_")] = after(`--${key}`)[0];
  for (const [key, flag] of [["persons", "--persons"], ["sea_degC", "--sea"]])
    if (after(flag).length) out[key] = Number(after(flag)[0]);
  return out;
}

// What a command asks, for this page; null for one that only the program takes.
export function asked_by(command, scenarios) {
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map((each) => each[1] ?? each[2]);
  const files = words.filter((each) => each.endsWith(".json")).map((each) => each.split("/").at(-1)).filter((each) => each in scenarios);
  const after = (option) => words.flatMap((each, i) => (each === option ? [words[i + 1]] : []));
  const named = (file) => ({scenario: scenarios[file], name: file});
  const futures = Number(after("-n")[0] ?? 200);
  if (words[0] !== "bide") return null;
  if (words[1] === "odds" && after("--abandoned").length) return {ask: "odds", futures, situation: situation_by(after)};
  if (files.length === 0) return null;
  if (words[1] === "run") return {ask: "report", ...named(files[0])};
  if (words[1] === "levers") return {ask: "report", levers: true, ...named(files[0])};
  if (words[1] === "compare") return {ask: "compare", scenarios: files.map(named), vary: after("--vary")};
  if (words[1] === "odds") return {ask: "odds", file: files[0], futures};
  return null;
}

const plain = (text) => text.replace(/\*\*|`/g, "");

// @param shipped {scenarios, lessons}: texts by file name
// @param does    what the page does with what is asked here
export function lessons_in(place, shipped, does) {
  const guesses = [];

  function run_button(command) {
    const question = asked_by(command, shipped.scenarios);
    const output = make("div.output", {"aria-live": "polite"});
    if (!question) return [make("p.quiet", {}, "In a terminal: ", make("code", {}, command))];
    const run = async () => {
      if (question.ask === "odds") return does.odds(question);
      output.replaceChildren(make("p.quiet", {}, "Asking the engine…"));
      try {
        const answer = await does.ask(question);
        if (answer.refused) return output.replaceChildren(...answer.refused.map((each) => make("p.problem", {}, `${each.pointer} ${each.message}`)));
        const wanted = question.levers ? answer.sections.filter((each) => each.title.startsWith("What would buy")) : question.ask === "report" ? answer.sections.filter((each) => each.first) : answer.sections;
        output.replaceChildren(make("p.lead", {}, `${answer.title}. ${answer.lead}`));
        const shown = make("div");
        output.append(shown);
        does.show_sections(shown, wanted);
        if (guesses.length) output.prepend(make("p.guessed", {}, `Guessed: ${guesses.join("; ")}.`));
      } catch (fault) {
        output.replaceChildren(make("p.quiet", {}, fault.message));
      }
    };
    return [make("p.buttons", {}, make("button", {type: "button", onclick: run}, question.ask === "odds" ? "Draw these futures" : "Ask the engine"),
                 make("code", {}, command)), output];
  }

  const block = (each) => each.kind === "text" ? [make("p", {}, plain(each.text))]
    : each.kind === "list" ? [make("ol", {}, each.items.map((item) => make("li", {}, plain(item))))] : run_button(each.text);

  // @param opens what waits for the first guess
  function guess_form(opens) {
    const entry = make("input", {type: "text", "aria-label": "A guess", autocomplete: "off", placeholder: "for instance: 30 h, because of the cold"});
    const list = make("ul");
    const add = (event) => {
      event.preventDefault();
      if (!entry.value.trim()) return;
      guesses.push(entry.value.trim());
      list.append(make("li", {}, entry.value.trim()));
      entry.value = "";
      entry.focus();
      opens.forEach((each) => { each.disabled = false; });
    };
    return make("form.guess", {onsubmit: add}, make("p", {}, "Guess first, each of you. What the engine says opens with the first guess."), entry,
                make("button", {type: "submit"}, "Add this guess"), list);
  }

  function show(name) {
    const lesson = steps_of(shipped.lessons[name]), area = make("div.lesson");
    guesses.length = 0;
    let at = 0;
    const next = make("button", {type: "button", onclick: () => open(at + 1)}, "Next step");
    const open = (step) => {
      at = step;
      const here = lesson.steps[at];
      next.hidden = at + 1 >= lesson.steps.length;
      const part = make("div.step", {}, make("h4", {tabIndex: -1}, `${at + 1}. ${here.title}`), here.blocks.flatMap(block));
      if (at === 0) {
        const opens = [next, ...part.querySelectorAll("button")];
        opens.forEach((each) => { each.disabled = true; });
        part.append(guess_form(opens));
      }
      area.insertBefore(part, next);
      if (at > 0) part.querySelector("h4").focus();
    };
    area.append(make("h3", {}, lesson.title), next);
    open(0);
    place.replaceChildren(...choose(), area);
  }

  const choose = () => [
    make("p", {}, "Each is 45 minutes: a question and guesses first, then what the engine says, then talk. Made for a room with a projector."),
    make("ul.lessons", {}, Object.entries(shipped.lessons).map(([name, text]) =>
      make("li", {}, make("button.link", {type: "button", onclick: () => show(name)}, steps_of(text).title))))];
  place.replaceChildren(...choose());
}
