import {execFileSync} from "node:child_process";

// Sheets of a PDF, as poppler counts them.
export function pages_in(path) {
  return Number(execFileSync("pdfinfo", [path], {encoding: "utf8"}).match(/^Pages:\s*(\d+)$/m)[1]);
}
