// The raft in section at one hour: people, water on the floor, temperatures, openings, sea and sky.
import {draw, figures} from "./dom.js";

const width = 640, height = 300, waterline = 205, middle = 320;

// How each part looks: said at the part itself, so that a saved drawing needs no style.
const ink = "var(--ink)", stroked = (stroke, width, fill = "none") => ({fill, stroke, "stroke-width": width});
const look = {
  sea: stroked("var(--water)", 1.5, "var(--sea)"), tube: stroked(ink, 3, "var(--page)"), skin: stroked(ink, 3),
  insulated: stroked(ink, 1.5, "var(--page)"), canopy: stroked(ink, 4), inner: stroked(ink, 1.5), water: {fill: "var(--water)"},
  rain: stroked("var(--water)", 1.5)
};
const body = {"stroke-linecap": "round", "stroke-linejoin": "round"};
const people_look = {
  able: {limbs: {...stroked("var(--series-0)", 7), ...body}, head: {fill: "var(--series-0)"}},
  unable: {limbs: {...stroked("var(--series-1)", 7), ...body}, head: {fill: "var(--series-1)"}},
  lost: {limbs: {...stroked("var(--quiet)", 1.5), "stroke-dasharray": "3 3"}, head: {...stroked("var(--quiet)", 1.5), "stroke-dasharray": "3 3"}}
};

// Row of the course at an hour.
export function row_at(run, hour) {
  const times = run.course.time_h;
  let row = 0;
  while (row + 1 < times.length && times[row + 1] <= hour) ++row;
  return row;
}

const state_at = (person, hour) => person.alive_h !== null && hour >= person.alive_h ? "lost"
  : person.able_h !== null && hour >= person.able_h ? "unable" : "able";

// Waves as high as they are, on the scale of the raft.
function sea(metres, scale) {
  const crest = Math.min(metres * scale / 2, 40), length = 160;
  let path = `M0,${waterline}`;
  for (let x = 0; x < width; x += length)
    path += ` q${length / 4},${-crest} ${length / 2},0 q${length / 4},${crest} ${length / 2},0`;
  return draw("path", {d: `${path} V${height} H0 Z`, ...look.sea});
}

function person(x, floor, size, state) {
  const group = draw("g", {}), {head, limbs} = people_look[state];
  if (state === "able") {
    group.append(draw("circle", {cx: x, cy: floor - size, r: size / 5.5, ...head}),
                 draw("path", {d: `M${x},${floor - size * 0.78} V${floor - size * 0.22} q0,${size * 0.2} ${size * 0.2},${size * 0.2} h${size * 0.3}`, ...limbs}));
  } else {
    group.append(draw("circle", {cx: x - size * 0.3, cy: floor - size * 0.18, r: size / 5.5, ...head}),
                 draw("path", {d: `M${x - size * 0.1},${floor - size * 0.15} H${x + size * 0.5}`, ...limbs}));
  }
  return group;
}

const label = (x, y, text, anchor = "middle") => draw("text", {x, y, "text-anchor": anchor, "font-size": 15, fill: ink}, text);

function people(run, hour, from, to, floor, size) {
  const most = 12, shown = run.persons.slice(0, most);
  const step = (to - from) / shown.length;
  const out = shown.map((each, i) => person(from + step * (i + 0.5) - size * 0.1, floor, Math.min(size, step * 1.4), state_at(each, hour)));
  if (run.persons.length > most) out.push(label(to, floor - size - 8, `and ${run.persons.length - most} more`, "end"));
  return out;
}

function raft(run, row, hour) {
  const it = run.raft, course = run.course;
  const across = 2 * Math.sqrt(it.floor_area_m2 / Math.PI) + 2 * it.tube_diameter_m;  // m, as if round
  const scale = Math.min(420 / across, 150);
  const tube = it.tube_diameter_m * scale / 2, half = across * scale / 2;
  const floor = waterline + tube * 0.7, top = floor - Math.max(it.canopy_height_m * scale, tube * 2.5);
  const left = middle - half, right = middle + half;
  const inner = [left + 2 * tube, right - 2 * tube];
  const group = draw("g", {});
  const water_mm = course.floor_water_L[row] / it.floor_area_m2;  // L/m2 is mm
  const deep = Math.min(water_mm / 1000 * scale, tube);
  if (water_mm > 0.05) group.append(draw("rect", {x: inner[0], y: floor - Math.max(deep, 2), width: inner[1] - inner[0], height: Math.max(deep, 2), ...look.water}));
  if (it.floor !== "single") group.append(draw("rect", {x: inner[0], y: floor, width: inner[1] - inner[0], height: it.floor === "foam" ? 4 : 9, ...look.insulated}));
  group.append(draw("path", {d: `M${inner[0]},${floor} H${inner[1]}`, ...look.skin}));
  for (const x of [left + tube, right - tube]) group.append(draw("circle", {cx: x, cy: waterline - tube * 0.3, r: tube, ...look.tube}));
  if (it.canopy !== "none") {
    const arc = (drop) => `M${left + tube},${waterline - tube} C${left + tube},${top + drop - 20} ${right - tube},${top + drop - 20} ${right - tube},${waterline - tube}`;
    const share = Math.min(course.opening_m2[row] / it.opening_area_m2, 1);
    const skin = draw("path", {d: arc(0), ...look.canopy, pathLength: 100});
    // The entrance is drawn at the right-hand side: as large a gap as it is open.
    skin.setAttribute("stroke-dasharray", `${97 - 25 * share} ${25 * share} 3`);
    group.append(skin);
    if (it.canopy === "two_skins") group.append(draw("path", {d: arc(9), ...look.inner}));
  }
  group.append(...people(run, hour, inner[0] + 8, inner[1] - 8, floor, Math.min(0.75 * scale, 80)));
  const highest = it.canopy === "none" ? floor - 90 : 0.75 * (top - 20) + 0.25 * (waterline - tube);  // of the curve
  if (course.inside_degC.length) group.append(label(middle, highest - 12, `${figures(course.inside_degC[row])} °C inside`));
  return group;
}

// What the drawing shows, in words.
export function told(run, hour) {
  const row = row_at(run, hour), course = run.course, at = (name) => figures(course[name][row]);
  const names = (state) => run.persons.filter((each) => state_at(each, hour) === state).map((each) => each.letters);
  const inside = run.raft && hour >= run.boarded_h && course.inside_degC.length;
  const out = [["outside", `${at("outside_degC")} °C, wind ${at("wind_m_s")} m/s`], ["sea", `${at("sea_degC")} °C, waves ${at("wave_height_m")} m`]];
  if (inside) out.push(["inside", `${at("inside_degC")} °C, carbon dioxide ${at("co2_ppm")} ppm`],
                       ["floor", `${at("floor_water_L")} L of water`], ["openings", `${at("opening_m2")} m²`],
                       ["drinking water", `${at("water_L")} L aboard`]);
  for (const [state, words] of [["able", "able"], ["unable", "alive, not able"], ["lost", "no longer alive in this run"]])
    if (names(state).length) out.push([words, names(state).join(", ")]);
  return out;
}

// @param run  what the engine answered to "run"
// @param hour since the start
export function section(run, hour) {
  const row = row_at(run, hour), course = run.course;
  const aboard = run.raft && hour >= run.boarded_h;
  const svg = draw("svg", {viewBox: `0 0 ${width} ${height}`, width, height, class: "section",
                           role: "img", "aria-label": told(run, hour).map(([what, words]) => `${what}: ${words}`).join("; ")});
  svg.append(draw("rect", {x: 0, y: 0, width, height, fill: course.sun_W_m2[row] > 0 ? "var(--sky)" : "var(--night)"}));
  if (course.rain_mm_h[row] > 0)
    for (let i = 0; i < 30; ++i) svg.append(draw("path", {d: `M${(i * 83) % width},${(i * 47) % 150} l-4,12`, ...look.rain}));
  svg.append(sea(course.wave_height_m[row], 12));
  svg.append(aboard ? raft(run, row, hour) : draw("g", {}, people(run, hour, 200, 440, waterline + 34, 70)));
  svg.append(label(12, 24, `${figures(course.outside_degC[row])} °C, wind ${figures(course.wind_m_s[row])} m/s`, "start"),
             label(12, height - 12, `sea ${figures(course.sea_degC[row])} °C`, "start"));
  return svg;
}
