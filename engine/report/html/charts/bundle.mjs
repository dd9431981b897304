// Bundles charts.js into one script for every page, with the licences of what it holds, and writes its hash for the
// page's content security policy.   Usage: node bundle.mjs OUTPUT_FOLDER (node_modules beside this file)
import {createHash} from "node:crypto";
import {existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync} from "node:fs";
import {dirname, join} from "node:path";
import {fileURLToPath} from "node:url";
import {build} from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const out = process.argv[2];
const result = await build({
  absWorkingDir: here, entryPoints: ["charts.js"], bundle: true, minify: true, format: "iife", target: "es2020",
  charset: "ascii", legalComments: "none", metafile: true, write: false
});

// Packages by their licence text; copyright lines are listed once for each text.
const packages = new Set(Object.keys(result.metafile.inputs).flatMap((path) => {
  const found = path.match(/node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules\/)/);
  return found ? [found[1]] : [];
}));
const texts = new Map();
for (const name of [...packages].sort()) {
  const folder = join(here, "node_modules", name);
  const file = readdirSync(folder).find((each) => /^(licen[cs]e|copying)/i.test(each));
  if (!file) throw new Error(`${name} has no licence file`);
  const lines = readFileSync(join(folder, file), "utf8").split("\n").map((line) => line.trim());
  const owners = lines.filter((line) => /^copyright/i.test(line)).join("; ");
  const text = lines.filter((line) => !/^copyright/i.test(line)).join(" ").replace(/\s+/g, " ").trim();
  if (!texts.has(text)) texts.set(text, []);
  texts.get(text).push(`${name}: ${owners}`);
}
const licences = [...texts].map(([text, names]) => `${names.join("\n")}\n${text}`).join("\n\n").replaceAll("*/", "* /");
const script = `${result.outputFiles[0].text.trim()}\n/*\n${licences}\n*/\n`;

for (const word of ["</script", "<script", "<!--"]) {
  if (script.toLowerCase().includes(word)) throw new Error(`the script holds ${word} and cannot be inlined`);
}
if (!existsSync(out)) mkdirSync(out, {recursive: true});
writeFileSync(join(out, "charts_script.txt"), script);
writeFileSync(join(out, "charts_hash.txt"), createHash("sha256").update(script, "utf8").digest("base64"));
