// Guesses of a class, and where they lie beside what the engine says.
import {make} from "./dom.js";

const most_guesses = 60, most_letters = 60, hours_in = {h: 1, d: 24};
const time_share = 86;  // % of the picture, for the time followed; what is later lies beyond

const hours = ({value, unit}) => (value === null ? null : value * hours_in[unit]);
const time_of = ({value, unit}) => (value === null ? "" : `${value} ${unit}`);
const said = (guess) => [guess.words, time_of(guess)].filter((each) => each).join(", ");
const by_name = (guess) => guess.words || time_of(guess);

// Guesses as a link holds them; what is none is left out.
const read = (given) => (Array.isArray(given) ? given : []).slice(0, most_guesses).flatMap((each) => {
  const timed = Number.isFinite(each?.value) && each.value >= 0 && Object.hasOwn(hours_in, each.unit ?? "");
  const guess = {value: timed ? each.value : null, unit: timed ? each.unit : "h", words: typeof each?.words === "string" ? each.words.slice(0, most_letters) : ""};
  return said(guess) ? [guess] : [];
});

// Ticks of the time followed, some five of them: {hour, words}.
function ticks(horizon_h) {
  const unit = horizon_h >= 48 ? "d" : "h", end = horizon_h / hours_in[unit];
  const step = [1, 2, 3, 5, 6, 10, 12].find((each) => end / each <= 6) ?? Math.ceil(end / 6);
  return Array.from({length: Math.floor(end / step) + 1}, (_, i) => ({hour: i * step * hours_in[unit], words: i === 0 ? "0" : `${i * step} ${unit}`}));
}

// @param asked {text, in_hours, first}: what the class is asked, whether it guesses a time or words alone, and whether it
//              is asked at the start
// @param given guesses that are there already
// @param does  {changed()}
// @return {form, all(), beside(until, options, of): the guesses beside the engine's ranges; options names these,
//         of says "futures" where a range is of futures}
export function guesses_in(asked, given, does) {
  const all = read(given), pictures = [];
  const value = make("input", {type: "number", min: "0", step: "any", "aria-label": "A guess", placeholder: "time"});
  const unit = make("select", {"aria-label": "In hours or days"}, make("option", {value: "h"}, "hours"), make("option", {value: "d"}, "days"));
  const words = make("input", {type: "text", maxLength: most_letters, "aria-label": "Name or reason", autocomplete: "off",
                               placeholder: asked.in_hours ? "name or reason" : "name, and the guess"});
  const list = make("ul"), wanting = make("p.wanting", {role: "status"});

  function show() {
    const row = (guess, i) => make("li", {}, said(guess), " ",
      make("button.link", {type: "button", "aria-label": `Change ${said(guess)}`, onclick: () => {
        value.value = guess.value ?? "";
        unit.value = guess.unit;
        words.value = guess.words;
        all.splice(i, 1);
        changed();
        (asked.in_hours ? value : words).focus();
      }}, "change"), " ",
      make("button.link", {type: "button", "aria-label": `Remove ${said(guess)}`, onclick: () => {
        all.splice(i, 1);
        changed();
        words.focus();
      }}, "remove"));
    list.replaceChildren(...all.map(row));
    pictures.forEach((draw) => draw());
  }
  function changed() {
    show();
    does.changed();
  }
  function add(event) {
    event.preventDefault();
    const number = value.value === "" ? null : Number(value.value);
    const guess = {value: number, unit: unit.value, words: words.value.trim()};
    const refusal = value.validity.badInput ? "The time must be a number." : number < 0 ? "A time is 0 or more."
      : !said(guess) ? (asked.in_hours ? "Type a time, or words, first." : "Type words first.")
      : all.length >= most_guesses ? `At most ${most_guesses} guesses.` : "";
    wanting.textContent = refusal;
    if (refusal) return;
    all.push(guess);
    value.value = words.value = "";
    changed();
    (asked.in_hours ? value : words).focus();
  }
  const form = make("form.guess", {onsubmit: add, noValidate: true},
    make("p", {}, asked.text, make("span.quiet", {}, ` The first guess opens the answer.${asked.in_hours ? " “Not within the time followed” is a guess too: type a later time." : ""}`)),
    make("p.buttons", {}, asked.in_hours ? [value, unit] : [], words, make("button", {type: "submit"}, "Add this guess")), wanting, list);

  // ---- beside the engine ----------------------------------------------------------------------------------------

  const timed = () => all.filter((guess) => guess.value !== null);

  // What is said of one option.
  function verdict({able_h, central_h, horizon_h, words: told}, name, of) {
    const [from, to] = able_h, guesses = timed(), names = (some) => some.map(by_name).join("; ");
    const inside = guesses.filter((guess) => from !== null && from <= hours(guess) && (to === null || hours(guess) <= to));
    const later = guesses.filter((guess) => hours(guess) > horizon_h);
    const middle = of === "futures" ? "median future" : "central case";
    const out = [`${name}the first person is able until: ${told.range}${of === "futures" ? " in 8 of 10 futures" : ""}, ${middle} ${told.central}.`];
    if (guesses.length === 0) return out;
    const all_in = inside.length === guesses.length && guesses.length > 1;
    out.push(all_in ? `All ${guesses.length} guesses lie in this range.`
      : `${inside.length} of ${guesses.length} ${guesses.length === 1 ? "guess lies" : "guesses lie"} in this range${inside.length ? `: ${names(inside)}` : ""}.`);
    if (later.length) out.push(`Not within the time followed (${told.horizon})${central_h === null ? `, as the ${middle}` : ""}: ${names(later)}.`);
    if (central_h === null) return out;
    const far = (guess) => Math.abs(hours(guess) - Math.max(central_h, 0)), least = Math.min(...guesses.map(far));
    return [...out, `Nearest to the ${middle}: ${names(guesses.filter((guess) => far(guess) === least))}.`];
  }

  // Names above the marks, in as many rows as they need. The latest lie lowest, so that the line from a name down to
  // its mark passes before the names that are lower.
  function names(place, wide_px) {
    const letter_px = 0.62 * Number.parseFloat(getComputedStyle(document.body).fontSize) * 1.2, taken = [];
    const sorted = timed().sort((a, b) => hours(b) - hours(a));
    const out = sorted.flatMap((guess) => {
      const at = place(hours(guess)) / 100 * wide_px, needs = Math.min(said(guess).length * letter_px + 10, wide_px);
      const left = Math.max(0, Math.min(at, wide_px - needs));
      let row = taken.findIndex((begin) => left + needs <= begin);
      if (row < 0) row = taken.length;
      taken[row] = left;
      const name = make("span.guess-name", {}, said(guess));
      name.style.left = `${left}px`;
      const line = make("i");  // from the name down to its mark
      line.style.left = `${at}px`;
      for (const each of [name, line]) each.style.setProperty("--row", row);
      return [line, name];
    });
    const lane = make("div.lane", {}, ...out);
    lane.style.setProperty("--rows", taken.length);
    return lane;
  }

  function picture(until, titles, wide_px) {
    const horizon_h = Math.max(...until.map((each) => each.horizon_h));
    const place = (hour) => (hour > horizon_h ? (time_share + 100) / 2 : time_share * Math.max(hour, 0) / horizon_h);
    const piece = (kind, from, to) => {
      const made = make(`i.${kind}`);
      made.style.left = `${from}%`;
      if (to !== undefined) made.style.width = `${to - from}%`;
      return made;
    };
    const bars = until.map(({able_h: [from, to], central_h}, i) => {
      const marks = timed().map((guess) => piece("guess-mark", place(hours(guess))));
      const range = from === null ? [] : [piece("range", place(from), to === null ? time_share : place(to))];
      const onward = to === null ? [make("span.onward", {title: "goes on after the time followed"}, "▶")] : [];
      onward.forEach((each) => { each.style.left = `${time_share}%`; });
      const middle = central_h === null ? [] : [piece("central", place(central_h))];
      return make("div.band", {}, make("span.who", {}, titles[i] ?? "engine"), make("div.bar", {}, piece("later", time_share, 100), ...range, ...onward, ...middle, ...marks));
    });
    const scale = ticks(horizon_h).map(({hour, words: text}) => {
      const tick = make("span", {}, text);
      tick.style.left = `${place(hour)}%`;
      return tick;
    });
    const end = make("span.later-word", {}, "later");
    end.style.left = `${(time_share + 100) / 2}%`;
    return make("div.guess-chart", {}, make("div.band", {}, make("span.who", {}, "guesses"), names(place, wide_px)), ...bars,
                make("div.band", {}, make("span.who"), make("div.scale", {}, ...scale, end)));
  }

  function beside(until, options, of) {
    const box = make("div.guessed"), many = (until ?? []).length > 1;
    const titles = many ? until.map((_, i) => options[i] ?? `option ${i + 1}`) : [];
    let wide_px = 700, wide = 0;  // of a bar, and of the box
    const draw = () => {
      const untimed = all.filter((guess) => guess.value === null);
      box.replaceChildren(
        ...(untimed.length ? [make("p.large", {}, `${asked.first ? "Guessed at the start" : "Guessed"}: ${untimed.map(said).join("; ")}`)] : []),
        ...(until && timed().length ? [picture(until, titles, wide_px),
          make("ul.key", {"aria-hidden": "true"}, [["range", "range of the engine"], ["central", of === "futures" ? "median future" : "central case"],
            ["guess-mark", "a guess"], ["later", "later than the time followed"]].map(([kind, text]) => make("li", {}, make(`i.${kind}`), text)))] : []),
        ...(until && timed().length ? until.map((each, i) => make("p.large", {}, verdict(each, many ? `Option ${i + 1}, ${titles[i]}: ` : "Engine: ", of).join(" "))) : []));
      box.hidden = box.children.length === 0;
    };
    new ResizeObserver(() => {
      if (box.clientWidth === wide || box.clientWidth === 0) return;
      wide = box.clientWidth;
      draw();
      wide_px = box.querySelector(".bar")?.clientWidth ?? wide_px;
      draw();
    }).observe(box);
    pictures.push(draw);
    draw();
    return box;
  }

  show();
  return {form, beside, all: () => all};
}
