// The text of a lesson as steps.
//
// The lessons are the files of scenarios/lessons/: a paragraph that begins with bold words is a step, with its minutes
// in brackets; an indented line is a command; "Option 1: ...; option 2: ..." says what that command compares; "Guess:"
// or "Guess in words:" is what the class is asked; a quoted paragraph is for the teacher.

// What stands in one paragraph.
function blocks_of(text) {
  const guess = /^Guess( in words)?: (.*)/s.exec(text);
  if (guess) return [{kind: "guess", text: `Guess first: ${guess[2]}`, in_hours: !guess[1]}];
  if (text.startsWith("> ")) {
    const note = text.slice(2).replaceAll(" > ", " ").replace(/^For the teacher: /, "");
    return [{kind: "teacher", text: note[0].toUpperCase() + note.slice(1)}];
  }
  const out = [];
  for (const line of text.split("\n")) {
    const item = /^\s*\d+\. (.*)/.exec(line);
    if (/^    \S/.test(line)) out.push({kind: "command", text: line.trim(), options: []});
    else if (item && out.at(-1)?.kind === "list") out.at(-1).items.push(item[1]);
    else if (item) out.push({kind: "list", items: [item[1]]});
    else if (line.trim()) out.push({kind: "text", text: line.trim()});
  }
  return out;
}

// "Option 1: never bails; option 2: every 2 h." as ["never bails", "every 2 h"]; null for another text.
const options_of = (text) =>
  /^Option 1: /.test(text) ? text.replace(/\.$/, "").split("; ").map((each) => each.replace(/^option \d+: /i, "")) : null;

// @return {title, minutes, steps: [{title, minutes, blocks: [{kind: "text" | "list" | "command" | "teacher" | "guess", ...}]}]}
export function lesson_of(markdown) {
  const lesson = {title: "", minutes: 0, steps: []};
  for (const paragraph of markdown.split(/\n\s*\n/)) {
    const text = paragraph.replace(/\s*\n(?!\s*\d+\. |    )/g, " ").trimEnd();
    const bold = /^\*\*(.+?)\*\*(?: \((\d+) min\))?\.?\s*/.exec(text);
    if (text.startsWith("# ")) lesson.title = text.slice(2);
    else if (bold) lesson.steps.push({title: bold[1].replace(/[.:]$/, ""), minutes: Number(bold[2] ?? 0), blocks: blocks_of(text.slice(bold[0].length))});
    else {
      const blocks = lesson.steps.at(-1)?.blocks ?? [], options = options_of(text), command = blocks.findLast((each) => each.kind === "command");
      if (options && command) command.options = options;
      else blocks.push(...blocks_of(text));
    }
  }
  lesson.minutes = lesson.steps.reduce((sum, each) => sum + each.minutes, 0);
  return lesson;
}
