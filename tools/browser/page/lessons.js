// Lessons as guided steps: a question and guesses first, what the engine says after them.
//
// The lessons are the files of scenarios/lessons/: a paragraph that begins with bold words is a step, an indented
// line is a command, which is asked of the engine here.
import {asked_by} from "./commands.js";
import {find, make} from "./dom.js";
import {guesses_in} from "./guesses.js";

// Steps of a lesson, {title, blocks: [{kind: "text" | "command" | "list", ...}]}.
export function steps_of(markdown) {
  const lesson = {title: "", steps: []};
  for (const block of markdown.split(/\n\s*\n/)) {
    const text = block.replace(/\s*\n(?!\s*\d+\. |    )/g, " ").trimEnd();
    const step = lesson.steps.at(-1);
    const bold = /^\*\*(.+?)\*\*\s*/.exec(text);
    if (text.startsWith("# ")) lesson.title = text.slice(2);
    else if (bold) lesson.steps.push({title: bold[1].replace(/[.:]$/, ""), blocks: parts_of(text.slice(bold[0].length))});
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

const plain = (text) => text.replace(/\*\*|`/g, "");
const refused = (place, reasons) => place.replaceChildren(...reasons.map((each) => make("p.problem", {}, `${each.pointer || each.file} ${each.message}`)));

// @param shipped {scenarios, lessons}: texts by file name
// @param lists   of the engine
// @param does    what the page does with what is asked here
export function lessons_in(place, shipped, lists, does) {
  let guesses = null;

  // Answer first; the rest folded, for it would fill the wall.
  function show_answer(output, answer, question) {
    const shown = make("div");
    output.replaceChildren(...guesses.beside(answer.until, question.ask === "odds" ? " in 8 of 10 futures" : ""), make("p.lead", {}, `${answer.title}. ${answer.lead}`), shown);
    if (question.levers) return does.show_sections(shown, [{title: "", html: answer.levers, first: true}]);
    does.show_sections(shown, [does.first_of(answer)]);
    output.append(...answer.sections.filter((each) => !each.first && !each.own_page).map(does.folded));
    globalThis.draw_charts?.();
  }

  async function scenario_of(question) {
    const made = await does.ask(question);
    if (made.refused) throw made.refused;
    return {scenario: made.scenario, name: question.name};
  }

  // One water after the other, each as soon as it is known.
  async function choose(question, output, current) {
    for (const [i, water] of question.waters.entries()) {
      const {scenario, name} = await scenario_of(water);
      const before = JSON.parse(scenario);
      delete before.uncertain.known;  // the choice comes before anything has happened
      const part = make("div", {}, make("h4", {}, name), make("p.quiet", {}, "Drawing futures…"));
      if (i === 0) output.replaceChildren(...guesses.beside());
      output.append(part);
      const answer = await does.ask({...question, scenarios: [{scenario: JSON.stringify(before), name}]});
      if (!current()) return;
      if (answer.refused) return refused(part, answer.refused);
      const shown = make("div");
      part.replaceChildren(make("h4", {}, name), shown);
      does.show_sections(shown, [does.first_of(answer)]);
      part.append(...answer.sections.filter((each) => !each.first).map(does.folded));
    }
    globalThis.draw_charts?.();
  }

  function run_button(command) {
    const asked = asked_by(command, shipped.scenarios, lists);
    if (!asked) return [make("p.quiet", {}, "With the program only: ", make("code", {}, command))];
    const {question, words, file} = asked;
    const output = make("div.output", {"aria-live": "polite"});
    let turn = 0;
    const run = async () => {
      const mine = ++turn, current = () => mine === turn;
      if (button.ariaDisabled === "true") return;  // a button that is disabled would lose the focus
      button.ariaDisabled = "true";
      output.replaceChildren(make("p.quiet", {}, "Asking the engine…"));
      try {
        if (question.ask === "choose") return await choose(question, output, current);
        if (question.ask === "odds") {
          const known = question.scenario ?? await scenario_of(question.situation);
          const drawn = does.futures_in(output, {
            show: (at, answer, all) => all ? show_answer(at, answer, question) : does.show_sections(at, [does.first_of(answer)]), stopped() {}});
          return await drawn.start({text: known.scenario, name: known.name}, question.futures);
        }
        const answer = await does.ask(question);
        if (answer.refused) return refused(output, answer.refused);
        show_answer(output, answer, question);
      } catch (fault) {
        if (Array.isArray(fault)) refused(output, fault);
        else output.replaceChildren(make("p.quiet", {}, fault.message || "Given up: the situation was changed meanwhile. Ask again."));
      } finally {
        button.ariaDisabled = "false";
      }
    };
    const button = make("button", {type: "button", onclick: run}, "Ask the engine");
    const open = file ? make("button.link.quiet", {type: "button", onclick: () => {
      leave();
      does.open(file);
    }}, "Open it as the situation, to change things") : null;
    return [make("div.asked", {}, make("p.buttons", {}, button, make("span", {}, words)),
                 make("details.quiet", {}, make("summary", {}, "As a command of the program"), make("code", {}, command), make("p", {}, open))), output];
  }

  const block = (each) => each.kind === "text" ? [make("p", {}, plain(each.text))]
    : each.kind === "list" ? [make("ol", {}, each.items.map((item) => make("li", {}, plain(item))))] : run_button(each.text);

  // In class the lesson has the whole page.
  function enter() {
    document.body.classList.add("in-class");
    find(".lesson h3", place).focus();
  }
  function leave() {
    document.body.classList.remove("in-class");
    window.dispatchEvent(new Event("resize"));  // charts that were hidden find their width
    find(".back button", place)?.focus();
  }

  function show(name) {
    const lesson = steps_of(shipped.lessons[name]), area = make("div.lesson"), steps = lesson.steps;
    let at = 0;
    const next = make("button", {type: "button", onclick: () => open(at + 1)});
    const open = (step) => {
      at = step;
      const here = steps[at], last = at + 1 >= steps.length;
      next.hidden = last;
      if (!last) next.textContent = `Next step: ${steps[at + 1].title}`;
      const part = make("div.step", {}, make("h4", {tabIndex: -1}, `${at + 1} of ${steps.length}. ${here.title}`));
      const blocks = here.blocks.map((each) => ({kind: each.kind, shown: block(each)}));
      if (at === 0) {  // the question, the guesses, then what answers it
        const begin = blocks.findIndex((each) => each.kind === "command"), cut = begin < 0 ? blocks.length : begin;
        blocks.splice(cut, 0, {kind: "guess", shown: [guesses.form]});
      }
      part.append(...blocks.flatMap((each) => each.shown));
      area.insertBefore(part, bar);
      if (at === 0) waiting().forEach((each) => { each.disabled = true; });
      else {
        find("h4", part).focus({preventScroll: true});
        part.scrollIntoView();
      }
    };
    const waiting = () => [next, ...area.querySelectorAll(".asked > .buttons > button")];
    guesses = guesses_in(waiting);
    const bar = make("p.buttons", {}, next, make("button.leave", {type: "button", onclick: leave}, "Leave the lesson"));
    area.append(make("h3", {tabIndex: -1}, lesson.title), bar);
    open(0);
    place.replaceChildren(...choose_lesson(), make("p.buttons.back", {}, make("button", {type: "button", onclick: enter}, "Back to the lesson below")), area);
    enter();
    window.scrollTo(0, 0);
  }

  const choose_lesson = () => [
    make("p.of-choice", {}, "Each is 45 minutes: a question and guesses first, then what the engine says, then talk. A lesson takes the whole page, in letters for a projector."),
    make("ul.lessons.of-choice", {}, Object.entries(shipped.lessons).map(([name, text]) =>
      make("li", {}, make("button.link", {type: "button", onclick: () => show(name)}, steps_of(text).title))))];
  place.replaceChildren(...choose_lesson());
}
