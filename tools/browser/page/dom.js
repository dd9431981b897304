// Elements, made and found.

export const find = (selector, within = document) => within.querySelector(selector);

// @param tag      "p", or "p.quiet"
// @param settings attributes; functions are listeners ("onclick"), null is left out
// @param content  elements and texts
export function make(tag, settings = {}, ...content) {
  const [name, ...classes] = tag.split(".");
  const element = document.createElement(name);
  element.classList.add(...classes);
  for (const [key, value] of Object.entries(settings)) {
    if (value === null || value === undefined || value === false) continue;
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (key in element && typeof value !== "string") element[key] = value;
    else element.setAttribute(key, value === true ? "" : value);
  }
  element.append(...content.flat().filter((each) => each !== null && each !== undefined));
  return element;
}

export function draw(tag, settings = {}, ...content) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [key, value] of Object.entries(settings)) element.setAttribute(key, value);
  element.append(...content.flat());
  return element;
}

// A file for the reader to keep.
// @param content text or bytes
export function hand_out(name, content, type) {
  const url = URL.createObjectURL(new Blob([content], {type}));
  make("a", {href: url, download: name}).click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

// At most two figures, as the reports have them.
export const figures = (value) =>
  value === null || value === undefined ? "?" : Math.abs(value) >= 100 ? String(Math.round(value))
    : String(Number(value.toPrecision(2)));
