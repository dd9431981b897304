// The stay as a band for each person over one time axis, and the hour that the reader points at.
import {figures, find, make} from "./dom.js";
import {section, told} from "./raft.js";

const most_bands = 8;

const clock = (run, hour) => {
  const utc = new Date(1000 * (run.start_unix_s + 3600 * hour)).toUTCString();  // "Thu, 16 Jan 2031 07:12:00 GMT"
  return `${utc.slice(5, 11).replace(/^0/, "")} ${utc.slice(17, 22)} UTC`;
};

// Hours of darkness, as shares of the axis.
function nights(run) {
  const {time_h, sun_W_m2} = run.course, out = [];
  let from = null;
  time_h.forEach((hour, i) => {
    const dark = sun_W_m2[i] <= 0;
    if (dark && from === null) from = hour;
    if (from !== null && (!dark || i + 1 === time_h.length)) {
      out.push([from, hour]);
      from = null;
    }
  });
  return out;
}

function band(name, pieces, horizon_h) {
  const share = (hour) => `${100 * hour / horizon_h}%`;
  const bar = make("div.bar");
  for (const [kind, from, to] of pieces)
    if (to > from) {
      const piece = make(`i.${kind}`);
      piece.style.left = share(from);
      piece.style.width = share(to - from);
      bar.append(piece);
    }
  return make("div.band", {}, make("span.who", {}, name), bar);
}

function bands(run) {
  const horizon_h = run.horizon_h;
  const of_person = (each) => [["able", 0, each.able_h ?? horizon_h], ["unable", each.able_h ?? horizon_h, each.alive_h ?? horizon_h]];
  const shown = run.persons.slice(0, most_bands).map((each) => band(each.name, of_person(each), horizon_h));
  if (run.persons.length > most_bands) shown.push(make("p.quiet", {}, `${run.persons.length - most_bands} more are in the report.`));
  const light = band("night", nights(run).map(([from, to]) => ["dark", from, to]), horizon_h);
  return [...shown, light];
}

// When help comes, as the situation states it: [its mark across the bands, its words]; nothing where it states none.
function help(run) {
  if (!run.help_h) return null;
  const [low, middle, high] = run.help_h, share = (hour) => `${100 * Math.min(hour / run.horizon_h, 1)}%`;
  const range = low === high ? "" : `; 8 in 10 cases between ${figures(low)} h and ${figures(high)} h`;
  const mark = make("i.help");
  mark.style.left = share(middle);
  return middle > run.horizon_h
    ? {mark: null, words: `Help, as stated, comes after ${figures(middle)} h: later than the time followed${range}.`}
    : {mark, words: `Help, as stated, comes after ${figures(middle)} h (${clock(run, middle)})${range}: the dashed line.`};
}

// @param place where it stands
// @return takes a run and shows it; the hour stays where the reader put it
export function stay_in(place) {
  let run = null, hour = 6;  // by then people are where they stay
  const slider = make("input", {type: "range", min: "0", step: "any", "aria-label": "Hour of the stay", oninput: () => show(Number(slider.value))});
  const plot = make("div.plot"), caption = make("figcaption"), drawing = make("figure.drawing-of-raft", {}, caption, plot), of_help = make("p.of-help");
  const reading = make("dl.facts.reading-of-hour"), rows = make("div.bands");
  const when = make("output.when", {"aria-live": "polite"});
  const line = make("i.now");
  const show = (at) => {
    hour = Math.min(Math.max(at, 0), run.horizon_h);
    slider.value = String(hour);
    slider.setAttribute("aria-valuetext", `${figures(hour)} hours, ${clock(run, hour)}`);
    when.textContent = `${figures(hour)} h: ${clock(run, hour)}`;
    line.style.left = `${100 * hour / run.horizon_h}%`;
    plot.replaceChildren(section(run, hour));
    caption.textContent = `In the raft after ${figures(hour)} h`;
    if (!find(".save", drawing) && globalThis.save_buttons) drawing.append(globalThis.save_buttons(drawing));
    reading.replaceChildren(...told(run, hour).map(([what, words]) => make("div", {}, make("dt", {}, what), make("dd", {}, words))));
  };
  const pointed = (event) => {
    if (event.type === "pointermove" && event.buttons === 0) return;
    const box = find(".bar", rows).getBoundingClientRect();
    show((event.clientX - box.left) / box.width * run.horizon_h);
  };
  rows.addEventListener("pointerdown", pointed);
  rows.addEventListener("pointermove", pointed);
  place.replaceChildren(
    make("p.quiet", {}, "One case of many: the central one, drawn hour by hour. Move along it."),
    rows, of_help, make("div.band.hours", {}, make("span.who", {}, when), make("div.slider", {}, slider)), drawing, reading,
    make("ul.key", {"aria-hidden": "true"}, ["able", "unable", "dark"].map((kind) =>
      make("li", {}, make(`i.${kind}`), {able: "able", unable: "alive, not able", dark: "night"}[kind]))));
  return (next) => {
    run = next;
    slider.max = String(run.horizon_h);
    rows.replaceChildren(...bands(run));
    const stated = help(run);
    find(".bar", rows).append(...[line, stated?.mark].filter((each) => each));
    of_help.textContent = stated?.words ?? "";
    rows.style.setProperty("--tall", `${rows.offsetHeight}px`);
    show(hour);
  };
}
