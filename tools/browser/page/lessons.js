// Lessons as guided steps: a question and guesses first, what the engine says after them.
import {asked_by} from "./commands.js";
import {find, make} from "./dom.js";
import {guesses_in} from "./guesses.js";
import {lesson_of} from "./lesson_text.js";

const plain = (text) => text.replace(/\*\*|`/g, "");
const refused = (place, reasons) => place.replaceChildren(...reasons.map((each) => make("p.problem", {}, `${each.words || each.file}: ${each.message}`)));
const capital = (text) => text[0].toUpperCase() + text.slice(1);

const said_of = (options) => options.map((each, i) => `Option ${i + 1}: ${each}.`).join(" ");

// Says that the engine is at work, and for how long.
// @return ends it
function asking(place) {
  const since = performance.now(), passed = make("span"), note = make("p.asking", {role: "status"}, make("progress"), " Asking the engine… ", passed);
  const timer = setInterval(() => { passed.textContent = `${Math.round((performance.now() - since) / 1000)} s`; }, 1000);
  place.replaceChildren(note);
  return () => {
    clearInterval(timer);
    note.remove();
  };
}

// @param shipped {scenarios, lessons}: texts by file name
// @param lists   of the engine
// @param does    what the page does with what is asked here; entered(), left() and changed() are told
// @return {state(with_guesses): what a link needs to bring the lessons back, restore(state), guesses(): how many there are}
export function lessons_in(place, shipped, lists, does) {
  const begun = new Map();  // lessons by file name
  let open_one = null;      // name of the one that has the page

  // ---- what a command answers ------------------------------------------------------------------------------------

  // Answer first; the rest folded, for it would fill the wall.
  function show_answer(output, answer, question, of, options, guesses, comments) {
    const shown = make("div"), about = options.length ? `${of}. ${said_of(options)}` : `${answer.title}. ${answer.lead}`;
    output.dataset.about = about;  // for pictures that are saved
    const until = question.levers ? undefined : answer.until;
    output.replaceChildren(guesses.beside(until, options, question.ask === "odds" ? "futures" : "runs"), make("p.lead", {}, about), shown);
    if (question.levers) {
      does.show_sections(shown, [{title: "", html: answer.levers, first: true}]);
      comment_on(shown, comments, "Every change tried, with weight and room");
      return globalThis.draw_charts?.();
    }
    does.show_sections(shown, [does.first_of(answer)]);
    comment_on(shown, comments);
    if (answer.from_now) {
      const table = make("div");
      shown.append(make("h5", {}, "From now on"), table);
      does.show_sections(table, [{title: "", html: answer.from_now, first: true}]);
    }
    output.append(...answer.sections.filter((each) => !each.first && !each.own_page).map(does.folded));
    globalThis.draw_charts?.();
  }

  // What the lesson says of an answer stands under its first sentences, before its picture.
  // @param fold title under which all that follows the picture is folded; none: it stays open
  function comment_on(shown, comments, fold) {
    const picture = find("figure", shown);
    if (!picture) return shown.append(...comments);
    if (fold) {
      const rest = make("details.folded", {}, make("summary", {}, fold));
      while (picture.nextSibling) rest.append(picture.nextSibling);
      picture.after(rest);
    }
    picture.before(...comments);
  }

  async function scenario_of(question) {
    const made = await does.ask(question);
    if (made.refused) throw made.refused;
    return {scenario: made.scenario, name: question.name};
  }

  // One water after the other, each as soon as it is known.
  async function choose(question, options, output, current, guesses, comments) {
    const chosen = said_of(options);
    output.replaceChildren(guesses.beside(), make("p.lead", {}, chosen));
    for (const water of question.waters) {
      const part = make("div"), waits = make("div");
      output.append(part);
      part.append(make("h5", {}, water.name), waits);
      const done = asking(waits);
      try {
        const {scenario, name} = await scenario_of(water);
        const before = JSON.parse(scenario);
        delete before.uncertain.known;  // the choice comes before anything has happened
        const answer = await does.ask({...question, scenarios: [{scenario: JSON.stringify(before), name}]});
        if (!current()) return;
        if (answer.refused) return refused(part, answer.refused);
        const shown = make("div");
        part.dataset.about = `${name}. ${chosen}`;
        part.append(shown);
        does.show_sections(shown, [does.first_of(answer)]);
        part.append(...answer.sections.filter((each) => !each.first).map(does.folded));
      } finally {
        done();
      }
    }
    output.append(...comments);
    globalThis.draw_charts?.();
  }

  // @param comments what the lesson says of the answer: shown with it, not before
  // @param gate     the guesses without which it is not asked
  // @param guesses  those that its answer is shown beside
  function run_button({text: command, options}, gate, guesses, comments) {
    const asked = asked_by(command, shipped.scenarios, lists);
    if (!asked) return [make("p.quiet", {}, "With the program only: ", make("code", {}, command))];
    const {question, words, of, file} = asked;
    const choices = options.join(", or "), one_scenario = question.scenarios?.length === 1;
    const said = options.length && question.ask === "compare" ? (one_scenario ? `${of}: ${choices}` : choices) : words;
    const output = make("div.output", {"aria-live": "polite"});
    let turn = 0;
    const run = async () => {
      const mine = ++turn, current = () => mine === turn;
      button.asked = true;
      button.dispatchEvent(new CustomEvent("asked", {bubbles: true}));
      if (button.ariaDisabled === "true") return;  // a button that is disabled would lose the focus
      button.ariaDisabled = "true";
      const done = asking(output);
      try {
        if (question.ask === "choose") await choose(question, options, output, current, guesses, comments);
        else if (question.ask === "odds") {
          const known = question.scenario ?? await scenario_of(question.situation);
          const drawn = does.futures_in(output, {
            show: (at, answer, all) => all && show_answer(at, answer, question, of, options, guesses, comments), stopped() {}});
          await drawn.start({text: known.scenario, name: known.name}, question.futures);
        } else {
          const answer = await does.ask(question);
          if (answer.refused) return refused(output, answer.refused);
          show_answer(output, answer, question, of, options, guesses, comments);
        }
        output.scrollIntoView({block: "start"});
      } catch (fault) {
        if (Array.isArray(fault)) refused(output, fault);
        else output.replaceChildren(make("p.quiet", {}, fault.message || "Given up: the situation was changed meanwhile. Ask again."));
      } finally {
        done();
        button.ariaDisabled = "false";
      }
    };
    const button = make("button.asks", {type: "button", onclick: run}, "Ask the engine");
    button.gate = gate;
    const opened = file ? make("button.link.quiet", {type: "button", onclick: () => {
      leave();
      does.open(file);
    }}, "Open it as the situation, to change things") : null;
    return [make("div.asked", {}, make("p.buttons", {}, button, make("span", {}, capital(said), ".")),
                 make("details.quiet", {}, make("summary", {}, "As a command of the program"), make("code", {}, command), make("p", {}, opened))), output];
  }

  // ---- one lesson ------------------------------------------------------------------------------------------------

  // @param given {at, guesses} from a link
  function begin(name, given) {
    const lesson = lesson_of(shipped.lessons[name]), parts = [];  // steps that were opened, by number
    const steps = make("div.steps-open"), area = make("div.lesson");
    let at = -1;

    // Each question has its guesses. The first, about the whole lesson, opens it; the others each open what they stand
    // before.
    const questions = lesson.steps.flatMap((each) => each.blocks).filter((each) => each.kind === "guess");
    const guessed = new Map(questions.map((each, i) => [each, guesses_in({...each, first: i === 0}, given?.guesses?.[i], {changed() {
      open_up();
      does.changed();
    }})]));
    const opening = guessed.get(questions[0]);
    // A guess is about the scenario that the lesson asks of first: beside an answer about another it would be wrong.
    const file_of = (command) => command.text.match(/scenarios\/\w+\.json/)?.[0];
    const asked_first = lesson.steps.flatMap((each) => each.blocks).find((each) => each.kind === "command");
    function open_up() {
      const waits = opening.all().length === 0;
      jumps.slice(1).forEach((each) => { each.disabled = waits; });
      next.disabled = waits || at + 1 >= lesson.steps.length;
      const unasked = [...(parts[at]?.querySelectorAll("button.asks") ?? [])].some((each) => !each.asked);
      next.textContent = at + 1 < lesson.steps.length ? `${unasked ? "Skip to" : "Next"}: ${lesson.steps[at + 1].title}` : "End of the lesson";
      for (const each of area.querySelectorAll("button.asks")) each.disabled = waits || each.gate.all().length === 0;
    }

    // What follows a command, up to the next question or command, comments its answer.
    function shown(blocks, gate = opening) {
      const asks = blocks.findIndex((each) => each.kind === "command");
      const before = asks < 0 ? blocks : blocks.slice(0, asks);
      gate = guessed.get(before.findLast((each) => each.kind === "guess")) ?? gate;
      if (asks < 0) return before.flatMap(block);
      const rest = blocks.slice(asks + 1), end = rest.findIndex((each) => each.kind === "command" || each.kind === "guess");
      const mine = end < 0 ? rest : rest.slice(0, end);
      const beside = [...(gate === opening ? [] : [gate]), ...(file_of(blocks[asks]) === file_of(asked_first) ? [opening] : [])];
      return [...before.flatMap(block), ...run_button(blocks[asks], gate, {beside: (...answer) => make("div", {}, beside.map((each) => each.beside(...answer)))}, mine.flatMap(block)), ...(end < 0 ? [] : shown(rest.slice(end), opening))];
    }
    const block = (each) => each.kind === "text" ? [make("p", {}, plain(each.text))]
      : each.kind === "list" ? [make("ol", {}, each.items.map((item) => make("li", {}, plain(item))))]
      : each.kind === "guess" ? [guessed.get(each).form]
      : [make("details.teacher", {}, make("summary", {}, "For the teacher"), make("p", {}, plain(each.text)))];

    function part_of(step) {
      const here = lesson.steps[step];
      return make("details.step.folded", {}, make("summary", {}, make("h4", {}, `${step + 1} of ${lesson.steps.length}. ${here.title} `, make("span.quiet", {}, `${here.minutes} min`))),
                  shown(here.blocks));
    }
    function go(step, still = false) {
      if (step < 0 || step >= lesson.steps.length) return;
      at = step;
      if (!parts[step]) {
        parts[step] = part_of(step);
        steps.insertBefore(parts[step], parts.slice(step + 1).find((each) => each) ?? null);
      }
      parts.forEach((each, i) => { each.open = i === step; });
      jumps.forEach((each, i) => i === step ? each.setAttribute("aria-current", "step") : each.removeAttribute("aria-current"));
      back.disabled = step === 0;
      open_up();
      if (still) return;
      find("summary", parts[step]).focus({preventScroll: true});
      parts[step].scrollIntoView({block: "start"});
      does.changed();
    }
    const back = make("button", {type: "button", onclick: () => go(at - 1)}, "Back");
    const next = make("button.next", {type: "button", onclick: () => go(at + 1)});
    const again = () => {
      if (!confirm("Begin this lesson again? Its guesses and answers go.")) return;
      begun.delete(name);
      enter(name);
    };
    area.addEventListener("asked", () => open_up());
    const jumps = lesson.steps.map((each, i) => make("button.link", {type: "button", onclick: () => go(i)}, `${i + 1}. ${each.title}`));
    area.append(make("h3", {tabIndex: -1}, lesson.title, " ", make("span.quiet", {}, `${lesson.minutes} min`)),
                make("p.able", {}, make("b", {}, "Able until"), ": ", lists.words.find(([word]) => word === "able until")[1]),
                make("details.words", {}, make("summary", {}, "Words used here"),
                     make("dl.facts", {}, lists.words.map(([word, meaning]) => make("div", {}, make("dt", {}, word), make("dd", {}, meaning))))),
                make("ol.steps", {"aria-label": "Steps"}, jumps.map((each) => make("li", {}, each))), steps,
                make("p.buttons.bar-below", {}, back, next, make("button", {type: "button", onclick: leave}, "Leave the lesson"),
                     make("button", {type: "button", onclick: again}, "Begin again")));
    const first = Number.isInteger(given?.at) && given.at > 0 && given.at < lesson.steps.length ? given.at : 0;
    go(first, true);
    return {area, go: (by) => { if (by < 0 || !next.disabled) go(at + by); }, state: () => ({at, guesses: [...guessed.values()].map((each) => each.all())})};
  }

  // In class the lesson has the whole page, and the workers.
  function enter(name, given) {
    if (!begun.has(name)) begun.set(name, begin(name, given));
    open_one = name;
    const {area} = begun.get(name);
    place.replaceChildren(area);
    document.body.classList.add("in-class");
    does.entered();
    find("h3", area).focus({preventScroll: true});
    window.scrollTo(0, 0);
    window.dispatchEvent(new Event("resize"));  // charts that were hidden find their width
    does.changed();
  }
  function leave() {
    const name = open_one;
    open_one = null;
    document.body.classList.remove("in-class");
    place.replaceChildren(...choose_lesson());
    window.dispatchEvent(new Event("resize"));
    find(`[data-lesson="${CSS.escape(name)}"]`, place).focus();
    does.changed();
    does.left();
  }
  document.addEventListener("keydown", (event) => {
    const by = {ArrowLeft: -1, ArrowRight: 1}[event.key];
    if (!by || !open_one || event.altKey || event.ctrlKey || event.metaKey || event.target.closest?.("input, select, textarea, .plot")) return;
    event.preventDefault();
    begun.get(open_one).go(by);
  });

  const choose_lesson = () => [
    make("p", {}, "A question and guesses first, then what the engine says, then talk. A lesson takes the whole page, in letters for a projector; the arrow keys go from step to step."),
    make("ul.lessons", {}, Object.entries(shipped.lessons).map(([name, text]) => {
      const {title, minutes} = lesson_of(text), count = begun.get(name)?.state().guesses.flat().length ?? 0;
      const state = begun.has(name) ? `, begun${count ? `, ${count} ${count === 1 ? "guess" : "guesses"}` : ""}: goes on where it was` : "";
      return make("li", {}, make("button.link", {type: "button", "data-lesson": name, onclick: () => enter(name)}, title),
                  make("span.quiet", {}, ` ${minutes} min${state}`));
    }))];
  place.replaceChildren(...choose_lesson());

  return {
    state: (with_guesses) => begun.size === 0 ? null : {open: open_one, begun: Object.fromEntries([...begun].map(([name, each]) => {
      const {at, guesses} = each.state();
      return [name, with_guesses ? {at, guesses} : {at}];
    }))},
    guesses: () => [...begun.values()].reduce((sum, each) => sum + each.state().guesses.flat().length, 0),
    restore(state) {
      for (const [name, given] of Object.entries(state?.begun ?? {}))
        if (Object.hasOwn(shipped.lessons, name)) begun.set(name, begin(name, given));
      if (begun.has(state?.open)) enter(state.open);
      else place.replaceChildren(...choose_lesson());
    }
  };
}
