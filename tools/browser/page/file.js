// The scenario file: shipped ones, files brought and taken, its text, and every field by name.
import {find, make} from "./dom.js";
import {told_of} from "./sentence.js";
import {any_index} from "./situation.js";

const most_fields = 12;

// A value as it is typed, of the kind that its field holds; undefined when nothing was typed.
function value_of(text, field) {
  const typed = text.trim();
  if (typed === "") return undefined;
  if (field.holds === "truth") return typed === "true" ? true : typed === "false" ? false : typed;
  const number = Number(typed);
  return field.holds === "number" && Number.isFinite(number) ? number : typed;
}

// Line of a text where the last key of a pointer stands, searched key by key.
function line_of(text, pointer) {
  let at = 0;
  for (const key of pointer.split("/").slice(1)) {
    const found = /^\d+$/.test(key) ? at : text.indexOf(`"${key}"`, at);
    if (found >= 0) at = found;
  }
  return at;
}

// "A" to "Z", then "AA".
const letters = (i) => (i >= 26 ? letters(Math.floor(i / 26) - 1) : "") + String.fromCharCode(65 + i % 26);

// Values of a scenario at a pointer, {who, value}; "*" stands for each entry of a list, and people have letters.
function values_at(scenario, pointer) {
  let found = [{who: "", value: scenario}];
  for (const key of pointer.slice(1).split("/"))
    found = found.flatMap(({who, value}) => {
      if (key !== "*") return value && typeof value === "object" && Object.hasOwn(value, key) ? [{who, value: value[key]}] : [];
      return (Array.isArray(value) ? value : []).map((each, i) => ({who: pointer.startsWith("/crew/*") ? `Person ${letters(i)}` : `${i + 1}:`, value: each}));
    });
  return found.filter(({value}) => value === null || typeof value !== "object");
}

// Whether a list that a pointer goes through, as /failures/*/at_h does, has an entry to set.
const has_entries = (scenario, pointer) => !pointer.includes("/*") || values_at(scenario, pointer).length > 0 ||
  pointer.slice(1).split("/*")[0].split("/").reduce((node, key) => node?.[key], scenario)?.length > 0;

// @param does what the page does with what is asked here
export function file_panel(place, does) {
  let fields = [], set = {}, reasons = [], scenario = null;
  const text = make("textarea", {rows: 14, spellcheck: false, "aria-label": "Text of the scenario file"});
  const search = make("input", {type: "search", placeholder: "wind, age, minutes…", oninput: () => show_fields()});
  const linked = make("p", {role: "status"});
  const matches = make("div.fields"), wrong = make("div", {role: "status"});
  const opened = make("input", {type: "file", multiple: true, accept: ".json,.csv,.txt", "aria-label": "Open scenario or weather files",
                                onchange: () => does.take_files(opened.files)});
  const picked = make("select", {"aria-label": "Scenarios that come with it", onchange: () => picked.value && does.bring(picked.value, does.shipped[picked.value])},
    make("option", {value: ""}, "Scenarios that come with it…"),
    Object.entries(does.shipped).map(([name, each]) => make("option", {value: name}, JSON.parse(each).name)));
  const button = (words, action) => make("button", {type: "button", onclick: action}, words);

  // A pointer of the file, such as /crew/0/age_years, belongs to the field /crew/*/age_years.
  const reason_for = (pointer) => reasons.find((each) => each.pointer === pointer || any_index(each.pointer) === pointer);

  // What the situation has there now, and whom a change reaches.
  function present(pointer) {
    const found = values_at(scenario, pointer), many = pointer.includes("/*");
    const shown = ({who, value}) => `${who ? `${who} ` : ""}${value}`;
    return (found.length ? `Now: ${found.map(shown).join(", ")}. ` : "Now: not stated. ") + (many ? `A change reaches every ${pointer.startsWith("/crew/*") ? "person" : "entry"}. ` : "");
  }

  function row(field) {
    const value = set[field.pointer], reason = reason_for(field.pointer), id = `field${field.pointer.replaceAll("/", "-").replaceAll("*", "each")}`;
    const changed = (control) => does.set(field.pointer, value_of(control.value, field));
    const words = field.holds === "truth" ? ["true", "false"] : field.words;
    const settings = {id, "aria-describedby": `${id}-about`, "aria-invalid": reason ? "true" : null};
    const control = words.length
      ? make("select", {...settings, onchange: () => changed(control)}, ["", ...words].map((each) => make("option", {value: each}, each || "as it is")))
      : make("input", {...settings, type: "text", autocomplete: "off", onchange: () => changed(control)});
    control.value = value === undefined ? "" : String(value);
    if (!has_entries(scenario, field.pointer))
      return make("div.field", {}, make("code", {}, field.pointer), make("div.quiet", {},
        make("p", {}, "There is none in this situation. Add one in the text of the file, below, and its fields can be set here."), told_of(field)));
    return make("div.field", {}, make("label", {for: id}, make("code", {}, field.pointer)), control,
      make("div.quiet", {id: `${id}-about`}, make("p", {}, `${present(field.pointer)}Allowed: ${field.allowed}. If left out: ${field.absent}.`), told_of(field)),
      reason ? make("p.problem", {}, reason.message) : null);
  }

  function show_fields() {
    const wanted = search.value.toLowerCase().split(/\s+/).filter((each) => each);
    const fits = (field) => field.pointer in set || reason_for(field.pointer) ||
      (wanted.length && wanted.every((word) => `${field.pointer} ${field.sentence}`.toLowerCase().includes(word)));
    const found = fields.filter((field) => field.holds !== "parts" && fits(field));
    matches.replaceChildren(...found.slice(0, most_fields).map(row));
    if (found.length > most_fields) matches.append(make("p.quiet", {}, `${found.length - most_fields} more: another word narrows the list.`));
  }

  function show_reasons() {
    wrong.replaceChildren(...reasons.map((each) => make("p.problem", {}, make("button.link", {type: "button", onclick: () => {
      const at = line_of(text.value, each.pointer);
      text.focus();
      text.setSelectionRange(at, text.value.indexOf("\n", at) < 0 ? text.value.length : text.value.indexOf("\n", at));
    }}, each.pointer || each.file), ` ${each.message}`)));
  }

  place.replaceChildren(
    make("p", {}, "The same file that the program reads and writes. Drop one anywhere on this page, with the weather file that it names; or a weather file alone (CSV, or a buoy's text), to put measured weather into the sentence."),
    make("p.buttons", {}, picked, opened),
    make("p.buttons", {}, button("Save the scenario", () => does.hand_out("scenario")), button("Save the report", () => does.hand_out("report")),
      button("Save as a workbook (XLSX)", () => does.hand_out("workbook")),
      button("Save the hours as CSV", () => does.hand_out("timeline")), button("Copy a link to this situation", async () => {
        const {words, link} = await does.hand_out("link");
        linked.replaceChildren(words, link ? make("textarea", {rows: 3, readOnly: true, "aria-label": "The link", onfocus: ({target}) => target.select()}, link) : "");
      })), linked,
    make("h3", {}, "Any field by name"),
    make("p", {}, make("label", {}, "Find a field: ", search)), matches,
    make("details", {}, make("summary", {}, "The text of the file"), text,
      make("p.buttons", {}, button("Use this text", () => does.bring("edited.json", text.value)))),
    wrong);

  return {
    lists: (lists) => { fields = lists.fields; },
    show: (file, situation) => {
      if (file && document.activeElement !== text) text.value = file;
      try {
        scenario = JSON.parse(file);
      } catch {
        scenario = null;  // the engine says what is wrong with it
      }
      set = situation.set;
      if (!matches.contains(document.activeElement)) show_fields();
    },
    problems: (now) => {
      reasons = now;
      show_reasons();
      show_fields();
    }
  };
}
