// Guesses of a class, and where they lie beside what the engine says.
import {figures, make} from "./dom.js";

const until_words = ([from, to], horizon_h) => {
  const end = to === null ? `after ${figures(horizon_h)} h` : `${figures(to)} h`;
  return from === null ? end : `${figures(from)} h to ${end}`;
};
const inside = (hours, [from, to], horizon_h) => (from ?? horizon_h) <= hours && (to === null || hours <= to);

// @param opens what waits for the first guess
// @return {form, beside(until, share_of): rows that show the guesses beside the engine's ranges, or nothing without a
//         guess; share_of says which share of futures a range holds}
export function guesses_in(opens) {
  const all = [];  // {hours or null, words}
  const hours = make("input", {type: "number", min: "0", step: "any", "aria-label": "A guess in hours", placeholder: "hours"});
  const words = make("input", {type: "text", "aria-label": "Reason or name", autocomplete: "off", placeholder: "reason or name"});
  const list = make("ul"), wanting = make("p.quiet", {role: "status"});
  const said = ({hours: h, words: reason}) => [h === null ? "" : `${h} h`, reason].filter((each) => each).join(", ");
  function add(event) {
    event.preventDefault();
    const guess = {hours: hours.value === "" ? null : Number(hours.value), words: words.value.trim()};
    wanting.textContent = said(guess) ? "" : "Type hours, or words, first.";
    if (!said(guess)) return;
    all.push(guess);
    list.append(make("li", {}, said(guess)));
    hours.value = words.value = "";
    hours.focus();
    opens().forEach((each) => { each.disabled = false; });
  }
  const form = make("form.guess", {onsubmit: add, noValidate: true},
    make("p", {}, "Guess first, each of you: after how many hours is the first person no longer able, or which way is better, and why? The answers open with the first guess."),
    make("p.buttons", {}, hours, words, make("button", {type: "submit"}, "Add this guess")), wanting, list);

  function row(each, i, many, share_of) {
    const {able_h, horizon_h} = each, share = (h) => `${100 * Math.min(Math.max(h / horizon_h, 0), 1)}%`;
    const bar = make("div.bar"), range = make("i.range");
    range.style.left = share(able_h[0] ?? horizon_h);
    range.style.right = `calc(100% - ${share(able_h[1] ?? horizon_h)})`;
    bar.append(range);
    const numbers = all.filter((guess) => guess.hours !== null);
    for (const guess of numbers) {
      const tick = make("i.guess-mark", {title: said(guess)});
      tick.style.left = share(guess.hours);
      bar.append(tick);
    }
    const within = numbers.filter((guess) => inside(guess.hours, able_h, horizon_h)).length;
    return [make("div.band", {}, make("span.who", {}, many ? `option ${i + 1}` : "engine"), bar),
            make("p.quiet", {}, `${many ? `Option ${i + 1}: the` : "The"} first person is able until ${until_words(able_h, horizon_h)}${share_of}` +
              (numbers.length ? `; ${within} of ${numbers.length} guesses in hours lie there.` : "."))];
  }

  return {
    form,
    beside: (until, share_of = "") => all.length === 0 ? [] : [
      make("div.guessed", {}, make("p", {}, make("b", {}, `Guessed: ${all.map(said).join("; ")}.`)),
           (until ?? []).flatMap((each, i) => row(each, i, until.length > 1, share_of)))]
  };
}
