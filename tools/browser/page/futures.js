// Odds from many futures, drawn by several workers at once, and shown where they were asked for while they fill in.
import {find, make} from "./dom.js";
import {GivenUp} from "./engine.js";

export const futures_wanted = 500;
const futures_at_a_time = 20, first_shown_at = 100;

let stop_last = () => {};  // the workers are shared: who begins ends the one before

// @param place where the odds appear
// @param does  {ask(lane, question), lanes(): first one that reads off, then those that draw, show(place, answer, all),
//              refused(place, reasons), stopped(): told when nothing is drawn any more}
// @return {start(scenario, wanted), stop()}
export function futures_in(place, does) {
  const bar = make("progress", {value: 0, "aria-label": "Futures drawn"}), words = make("output");
  const stop_button = make("button", {type: "button", onclick: () => stop(true)}, "Stop");
  const progress = make("div.progress", {hidden: true}, bar, " ", words, " ", stop_button), shown = make("div", {"aria-live": "polite"});
  place.replaceChildren(progress, shown);
  let running = 0;

  // @param cut_off whether work is going on that is to end
  function stop(cut_off) {
    ++running;
    progress.hidden = true;
    if (cut_off) does.lanes().slice(1).forEach((lane) => lane.give_up());
    does.stopped();
  }

  async function start(scenario, wanted = futures_wanted) {
    stop_last();
    stop_last = () => stop(true);
    const mine = ++running, begun = performance.now(), parts = [];
    const current = () => mine === running;
    const [reader, ...drawers] = does.lanes();
    const question = {scenario: scenario.text, name: scenario.name};
    let next = 0, drawn = 0, told = 0;
    shown.replaceChildren();
    progress.hidden = false;
    bar.max = wanted;
    const tell = (count) => {
      drawn = count;
      bar.value = count;
      words.textContent = `${count} of ${wanted}`;
    };
    tell(0);
    // Reads off those that lie side by side from the first.
    const read_off = async () => {
      const gap = parts.findIndex((each) => each === undefined), in_order = gap < 0 ? parts : parts.slice(0, gap);
      const end = Math.min(in_order.length * futures_at_a_time, wanted);
      if (end === 0 || end === told) return;
      told = end;
      const answer = await does.ask(reader, {...question, ask: "odds", end, parts: in_order});
      if (!current()) return;
      if (answer.refused) does.refused(shown, answer.refused);
      else does.show(shown, answer, end === wanted);
    };
    const work = async (lane) => {
      while (next < wanted && current()) {
        const begin = next, end = Math.min(begin + futures_at_a_time, wanted);
        next = end;
        const part = await does.ask(lane, {...question, ask: "draw", begin, end});
        if (!current()) return;
        if (part.refused) return does.refused(shown, part.refused), stop(true);
        for (let i = parts.length; i < begin / futures_at_a_time; ++i) parts[i] = undefined;
        parts[begin / futures_at_a_time] = part;
        tell(drawn + end - begin);
        if (drawn < wanted && drawn >= Math.max(4 * told, first_shown_at) && !reader.busy) read_off().catch(() => {});
      }
    };
    try {
      await Promise.all(drawers.map(work));
      if (!current()) return;
      does.drawn?.(performance.now() - begun);
      await read_off();
    } catch (fault) {
      if (!(fault instanceof GivenUp) && current()) shown.replaceChildren(make("p.quiet", {}, fault.message));
    }
    if (current()) stop(false);
  }
  return {start, stop: () => stop(false), clear: () => shown.replaceChildren()};
}
