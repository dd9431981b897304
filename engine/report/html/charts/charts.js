// The script of every page: draws each figure from the JSON that lies in it, and reads values out.
import {plot, areaY, axisX, axisY, barX, dot, gridX, gridY, line, lineY, rect, ruleX,
        ruleY} from "@observablehq/plot";

const symbols = ["circle", "square", "triangle", "diamond", "cross", "hexagon"];
// What style.css says of each look.
const of_style = (what) => symbols.map((_, i) => getComputedStyle(document.documentElement).getPropertyValue(`--${what}-${i}`).trim());
const dashes = of_style("dash");
const colour = (series) => `var(--series-${series.style % symbols.length})`;
const hatch = (series) => `url(#hatch-${series.style % symbols.length})`;
const printed_width = 672, printed_gap = 8, printed_height = 160;  // px on A4: the whole line; of charts along an axis

// How wide a figure is on paper: charts along an axis that follow each other lie in rows of two or three.
function width_on_paper(figure) {
  const along = (each) => each?.matches("figure.along") ?? false;
  let together = along(figure) ? 1 : 0;
  for (const next of ["previousElementSibling", "nextElementSibling"])
    for (let each = figure[next]; together > 0 && along(each); each = each[next]) ++together;
  const beside = together < 3 ? Math.max(1, together) : together % 3 === 0 ? 3 : 2;
  return Math.floor((printed_width - printed_gap * (beside - 1)) / beside);
}

const figures = (value) => String(Number(value.toPrecision(3)));
const with_unit = (text, axis) => (axis.unit ? `${text} ${axis.unit}` : text);
// A long run is shown in days; its values stay in hours.
const in_days = (axis) => axis.unit === "h" && axis.tick_every >= 24;
const title = (axis) => (in_days(axis) ? `${axis.label}, days` : axis.unit ? `${axis.label}, ${axis.unit}` : axis.label);
const tick_format = (axis) => (in_days(axis) ? {tickFormat: (value) => figures(value / 24)} : {});

// One series as marks. Across, categories run down the page and values to the right.
function marks(series, chart, printed) {
  const across = chart.categories.length > 0;
  const place = (point) => (across ? chart.categories[point.x] : point.x);
  const common = {stroke: colour(series), className: `${series.kind} series-${series.number}`};
  const spread = series.points.filter((point) => point.low !== null && point.high !== null);
  const whiskers = () => {
    const ends = {...common, className: `spread series-${series.number}`, strokeWidth: 1.5, marker: "tick"};
    return across ? ruleY(spread, {...ends, y: place, x1: "low", x2: "high"})
                  : ruleX(spread, {...ends, x: place, y1: "low", y2: "high"});
  };
  switch (series.kind) {
    case "line":
      return [lineY(series.points, {...common, x: place, y: "y", strokeWidth: 2,
                                    strokeDasharray: dashes[series.style % dashes.length]})];
    case "band":
      return [areaY(series.points, {...common, x: place, y1: "low", y2: "high", fill: colour(series), fillOpacity: 0.16,
                                    strokeOpacity: 0.5})];
    case "bars":
      // A bar without a value, whose whisker alone is drawn, would be stacked as a bar of length zero.
      return [barX(series.points.filter((point) => point.y !== null), {...common, x: "y", y: place, fill: colour(series), fillOpacity: 0.22, insetTop: printed ? 1 : 3,
                                   insetBottom: printed ? 1 : 3}), whiskers()];
    case "spans": {
      const piece = {...common, x1: "low", x2: "high"};
      const onward = dot(series.points.filter((point) => point.open),
                         {x: "high", y: place, symbol: "triangle", rotate: 90, r: printed ? 4 : 5, dx: printed ? 4 : 6, fill: colour(series)});
      return across ? [barX(series.points, {...piece, y: place, fill: hatch(series), insetTop: printed ? 2 : 5, insetBottom: printed ? 2 : 5}), onward]
                    : [rect(series.points, {...piece, stroke: "none", fill: "var(--ink)", fillOpacity: 0.07})];
    }
    case "marks":
      return [ruleX(series.points, {...common, x: place, strokeWidth: 1.5, strokeDasharray: "4 3"})];
    default: {
      const look = {...common, symbol: symbols[series.style % symbols.length], fill: "var(--page)", strokeWidth: 2, r: 4.5};
      return [whiskers(), across ? dot(series.points, {...look, x: "y", y: place}) : dot(series.points, {...look, x: place, y: "y"})];
    }
  }
}

function draw(chart, width, printed) {
  const across = chart.categories.length > 0;
  const narrow = width < 480;
  const label_width = printed ? (width < 480 ? 12 : 26) : narrow ? 8.5 : 15;  // em, of a category's name
  // Rows high enough for the longest name, at 12 px and some 1.8 letters an em.
  const name_lines = Math.max(1, ...chart.categories.map((name) => Math.ceil(name.length / (label_width * 1.8))));
  const row_height = Math.max(printed ? 11 : narrow ? 34 : 30, (printed ? 1 : 8) + (printed ? 10 : 13) * name_lines);
  const scales = across
    ? {x: {label: title(chart.y), zero: chart.y.from_zero}, y: {label: null, domain: chart.categories}}
    : {x: {label: title(chart.x), zero: chart.x.from_zero, nice: true, inset: 6},
       y: {label: title(chart.y), zero: chart.y.from_zero, nice: true}};
  // Ticks at whole days, say, where the axis asks for them and they do not crowd.
  const ticks = (axis, wide_count, narrow_count) => {
    if (!axis.tick_every) return {ticks: narrow ? narrow_count : wide_count};
    const last = Math.max(...chart.series.flatMap((series) =>
      series.points.map((point) => (across ? point.high ?? point.y ?? 0 : point.x))));
    const every = axis.tick_every * Math.max(1, Math.ceil(last / axis.tick_every / (narrow ? 5 : 10)));
    return {ticks: Array.from({length: Math.floor(last / every) + 1}, (_, i) => i * every)};
  };
  const axes = across
    ? [gridX(ticks(chart.y, 8, 4)), axisX({labelAnchor: "center", labelArrow: "none", ...tick_format(chart.y), ...ticks(chart.y, 8, 4)}),
       axisY({lineWidth: label_width, tickSize: 0}), ruleX([0])]
    : [gridY({ticks: 6}), axisX({labelAnchor: "center", labelArrow: "none", ...tick_format(chart.x), ...ticks(chart.x, 9, 5)}),
       axisY({labelArrow: "none", ticks: 6})];
  const svg = plot({
    ...scales,
    width,
    height: across ? (printed ? 42 : 60) + chart.categories.length * row_height : printed ? printed_height : narrow ? 270 : 340,
    marginLeft: across ? 12 + label_width * (printed ? 10.5 : 12) : printed ? 40 : 50,
    marginTop: across ? 8 : 28,
    marginBottom: printed ? 34 : 42,
    marginRight: printed ? 10 : 20,
    style: {background: "none", fontFamily: "inherit", fontSize: printed ? "10px" : "12px", overflow: "visible"},
    marks: [...axes, ...chart.series.flatMap((series) => marks(series, chart, printed))]
  });
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", chart.sentence);
  return svg;
}

// What each series looks like, in words and as a sample of its mark.
function legend(chart) {
  const list = document.createElement("ul");
  list.className = "legend";
  const across = chart.categories.length > 0;
  for (const series of chart.series) {
    const item = document.createElement("li");
    // A band, a bar and a vertical mark are shown as small ones of themselves.
    const sample = {
      line: () => [line([[0, 0.5], [1, 0.5]], {stroke: colour(series), strokeWidth: 2,
                                               strokeDasharray: dashes[series.style % dashes.length]})],
      band: () => [areaY([[0], [1]], {x: "0", y1: () => 0.1, y2: () => 0.9, fill: colour(series), fillOpacity: 0.2})],
      bars: () => [areaY([[0], [1]], {x: "0", y1: () => 0.1, y2: () => 0.9, fill: colour(series), fillOpacity: 0.3})],
      spans: () => [rect([[0, 1]], {x1: "0", x2: "1", y1: () => 0, y2: () => 1, stroke: across ? colour(series) : "none",
                                    fill: across ? hatch(series) : "var(--ink)", fillOpacity: across ? 1 : 0.12})],
      marks: () => [ruleX([0.5], {stroke: colour(series), strokeWidth: 1.5, strokeDasharray: "4 3"})],
      points: () => [dot([[0.5, 0.5]], {stroke: colour(series), strokeWidth: 2, r: 4.5, fill: "var(--page)",
                                        symbol: symbols[series.style % symbols.length]})]
    };
    const swatch = plot({width: 34, height: 14, margin: 2, axis: null, x: {domain: [0, 1]}, y: {domain: [0, 1]},
                         style: {background: "none"}, marks: sample[series.kind]()});
    swatch.setAttribute("aria-hidden", "true");
    item.append(swatch, series.name);
    list.append(item);
  }
  return list;
}

function reading(chart, series, point) {
  const across = chart.categories.length > 0;
  if (series.kind === "spans" && !across) return `${series.name}, ${figures(point.low)} to ${with_unit(figures(point.high), chart.x)}`;
  const where = across ? chart.categories[point.x] : with_unit(figures(point.x), chart.x);
  const value = point.y === null ? "" : `: ${with_unit(figures(point.y), chart.y)}`;
  const sized = series.kind === "spans" && point.y !== null;  // where it lies says nothing more
  const spread = sized || point.low === null || point.high === null
    ? "" : `${point.y === null ? ": " : ", "}${figures(point.low)} to ${with_unit(figures(point.high), chart.y)}${point.open ? " or later" : ""}`;
  return `${series.name}, ${where}${value}${spread}${point.label ? ` (${point.label})` : ""}`;
}

// Every point that can be read out, with its place on the drawing.
function stops(chart, svg) {
  const [x, y] = [svg.scale("x"), svg.scale("y")];
  const across = chart.categories.length > 0;
  return chart.series.map((series) => series.points.flatMap((point) => {
    const middle = point.low !== null && point.high !== null ? (point.low + point.high) / 2 : null;
    const value = series.kind === "spans" ? middle : point.y ?? middle;
    if (value === null && series.kind !== "marks") return [];
    const at = series.kind === "spans" && !across
      ? [x.apply(middle), y.range[1]]
      : across
      ? [x.apply(value), y.apply(chart.categories[point.x]) + y.bandwidth / 2]
      : [x.apply(point.x), value === null ? y.range[1] : y.apply(value)];
    return [{at, text: reading(chart, series, point)}];
  })).filter((list) => list.length > 0);
}

function read_out(holder, chart, output) {
  let lists = [], cursor = null, where = [0, 0];
  const show = (row, column) => {
    where = [row, Math.max(0, Math.min(column, lists[row].length - 1))];
    const stop = lists[where[0]][where[1]];
    cursor.setAttribute("cx", stop.at[0]);
    cursor.setAttribute("cy", stop.at[1]);
    cursor.setAttribute("visibility", "visible");
    output.textContent = stop.text;
  };
  const hide = () => {
    cursor.setAttribute("visibility", "hidden");
    output.textContent = "";
  };
  const nearest_column = (row, x) =>
    lists[row].reduce((best, stop, i, all) => (Math.abs(stop.at[0] - x) < Math.abs(all[best].at[0] - x) ? i : best), 0);
  holder.addEventListener("pointermove", (event) => {
    const box = holder.firstChild.getBoundingClientRect();
    const scale = holder.firstChild.width.baseVal.value / box.width;
    const [x, y] = [(event.clientX - box.left) * scale, (event.clientY - box.top) * scale];
    let best = null, least = 60;
    lists.forEach((list, row) => list.forEach((stop, column) => {
      const distance = Math.hypot(stop.at[0] - x, stop.at[1] - y);
      if (distance < least) [least, best] = [distance, [row, column]];
    }));
    if (best) show(...best);
    else hide();
  });
  holder.addEventListener("pointerleave", hide);
  holder.addEventListener("focus", () => show(...where));
  holder.addEventListener("blur", hide);
  holder.addEventListener("keydown", (event) => {
    const [row, column] = where;
    const other = (step) => {
      const next = (row + step + lists.length) % lists.length;
      return [next, nearest_column(next, lists[row][column].at[0])];
    };
    const to = {ArrowRight: [row, column + 1], ArrowLeft: [row, column - 1], Home: [row, 0], End: [row, Infinity],
                ArrowDown: other(1), ArrowUp: other(-1)}[event.key];
    if (!to) return;
    event.preventDefault();
    show(...to);
  });
  return (svg) => {
    lists = stops(chart, svg);
    if (!lists[where[0]] || !lists[where[0]][where[1]]) where = [0, 0];
    cursor = document.createElementNS("http://www.w3.org/2000/svg", "circle");
    cursor.setAttribute("class", "cursor");
    cursor.setAttribute("r", 9);
    cursor.setAttribute("visibility", "hidden");
    svg.append(cursor);
  };
}

// A chart as a drawing of its own: title, what it is of, legend and notice in it, every colour written out. What it
// is of stands at the figure or about it in "data-about"; without that it is the page's title.
function standalone(figure) {
  const holder = figure.querySelector(".plot svg");
  const [width, height] = [holder.width.baseVal.value, holder.height.baseVal.value];
  const style = getComputedStyle(document.body);
  const ns = "http://www.w3.org/2000/svg";
  const element = (name, attributes, text) => {
    const made = document.createElementNS(ns, name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    if (text !== undefined) made.textContent = text;
    return made;
  };
  // A copy whose colours no longer lean on the page's style.
  const resolved = (original) => {
    const copy = original.cloneNode(true);
    const [from, to] = [[original, ...original.querySelectorAll("*")], [copy, ...copy.querySelectorAll("*")]];
    from.forEach((each, i) => {
      for (const key of ["fill", "stroke"])
        if (/var\(|currentColor/.test(each.getAttribute(key) ?? "")) to[i].setAttribute(key, getComputedStyle(each)[key]);
      for (const key of ["class", "tabindex"]) to[i].removeAttribute(key);
    });
    copy.querySelectorAll("style, [visibility=hidden]").forEach((each) => each.remove());
    copy.removeAttribute("style");
    return copy;
  };
  const out = element("svg", {width, "font-family": "DejaVu Sans, Verdana, Arial, sans-serif", "font-size": 12, fill: style.color});
  const ground = element("rect", {width, fill: style.backgroundColor});
  out.append(resolved(document.querySelector("svg.hatches defs")), ground);
  out.append(element("text", {x: 12, y: 22, "font-size": 15, "font-weight": "bold"}, figure.querySelector("figcaption").textContent));
  let [x, y] = [12, 38];
  const wrapped = (text, size) => {
    let line = "";
    const flush = () => {
      out.append(element("text", {x: 12, y, "font-size": size}, line));
      [line, y] = ["", y + 1.3 * size];
    };
    for (const word of text.split(" ")) {
      if ((line.length + word.length + 1) * 0.61 * size > width - 24) flush();
      line += line ? ` ${word}` : word;
    }
    flush();
  };
  wrapped(figure.closest("[data-about]")?.dataset.about ?? document.title, 12);
  for (const item of figure.querySelectorAll(".legend li")) {
    const name = item.lastChild.textContent, needs = 46 + 7 * name.length;  // the sample before it may hold a style
    if (x > 12 && x + needs > width) [x, y] = [12, y + 18];
    const swatch = resolved(item.querySelector("svg"));
    swatch.setAttribute("x", x);
    swatch.setAttribute("y", y);
    out.append(swatch, element("text", {x: x + 40, y: y + 11}, name));
    x += needs;
  }
  y += 22;
  const drawing = resolved(holder);
  drawing.setAttribute("y", y);
  drawing.setAttribute("overflow", "visible");
  out.append(drawing);
  y += height + 14;
  wrapped([".notice", ".advice"].map((each) => document.querySelector(each).textContent).join(" "), 10);
  for (const each of [out, ground]) each.setAttribute("height", y);
  out.setAttribute("viewBox", `0 0 ${width} ${y}`);
  return out;
}

// Buttons that save a chart as a file; a page may ask them for a figure of its own.
function saving(figure) {
  const download = (blob, ending) => {
    const file = figure.querySelector("figcaption").textContent.replace(/[^A-Za-z0-9]+/g, "_").toLowerCase();
    const link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = `${file}.${ending}`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  };
  const save = {
    SVG: (svg, text) => download(new Blob([text], {type: "image/svg+xml"}), "svg"),
    PNG: (svg, text) => {
      const scale = 2, image = new Image();
      image.onload = () => {
        const canvas = document.createElement("canvas");
        [canvas.width, canvas.height] = [scale * svg.width.baseVal.value, scale * svg.height.baseVal.value];
        canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
        canvas.toBlob((blob) => download(blob, "png"));
      };
      image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
    }
  };
  const list = document.createElement("p");
  list.className = "save";
  for (const kind of Object.keys(save)) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = `Save as ${kind}`;
    button.addEventListener("click", () => {
      const svg = standalone(figure);
      save[kind](svg, new XMLSerializer().serializeToString(svg));
    });
    list.append(button);
  }
  return list;
}

// What tells the pieces of a bar apart without their colours.
function hatches() {
  const all = document.createElement("div");
  all.setAttribute("aria-hidden", "true");
  all.innerHTML = `<svg class="hatches"><defs>${of_style("hatch").map((d, i) => `<pattern id="hatch-${i}" width="8" height="8"
    patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="var(--series-${i})" fill-opacity="0.22"/><path d="${d}"
    stroke="var(--series-${i})" stroke-width="1.6" fill="none"/></pattern>`).join("")}</defs></svg>`;
  document.body.append(all);
}
hatches();
globalThis.save_buttons = saving;

let redraws = [];
function set_up(figure) {
  figure.classList.add("set-up");
  const chart = JSON.parse(figure.querySelector('script[type="application/json"]').textContent);
  chart.series.forEach((series, number) => {
    series.number = number;
    series.points = series.points.map(([x, y, low, high, label, open]) =>
      ({x, y, low: low ?? null, high: high ?? null, label: label ?? "", open: open ?? false}));
  });
  const holder = document.createElement("div");
  holder.className = "plot";
  holder.tabIndex = 0;
  holder.setAttribute("role", "group");
  holder.setAttribute("aria-label", "Values of this chart, one at a time: left and right within a series, up and down between series");
  const output = document.createElement("p");
  output.className = "reading";
  output.setAttribute("role", "status");
  const place = figure.querySelector(".drawing");
  place.replaceChildren(legend(chart), holder, output, saving(figure));
  const attach = read_out(holder, chart, output);
  let drawn = 0;
  const redraw = (width, printed = false) => {
    if (width <= 0 || width === drawn) return;
    drawn = width;
    const svg = draw(chart, width, printed);
    holder.replaceChildren(svg);
    attach(svg);
  };
  const fit = () => redraw(Math.round(place.clientWidth));
  const print = () => {
    const on_paper = width_on_paper(figure);
    figure.style.width = `${on_paper}px`;
    redraw(on_paper, true);
  };
  const unprint = () => {
    figure.style.width = "";
    fit();
  };
  redraws.push({figure, fit, print, unprint});
  fit();
  figure.closest("details.folded")?.addEventListener("toggle", fit);
}

// Draws the figures that are new. A page whose sections come and go asks again.
globalThis.draw_charts = () => {
  redraws = redraws.filter(({figure}) => figure.isConnected);
  document.querySelectorAll("figure.chart:not(.set-up)").forEach(set_up);
};
draw_charts();
window.addEventListener("resize", () => redraws.forEach((each) => each.fit()));

window.addEventListener("beforeprint", () => redraws.forEach((each) => each.print()));
window.addEventListener("afterprint", () => redraws.forEach((each) => each.unprint()));
