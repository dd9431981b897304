// Writes the one file: page, style, script, engine, scenarios and lessons.
//   node bundle.mjs SOURCES CHARTS ENGINE MADE_OF OUTPUT   (CHARTS has the bundled drawing script and node_modules;
//   ENGINE.js and ENGINE.wasm are the compiled engine; MADE_OF is a file with a hash over all of it)
import {createHash} from "node:crypto";
import {readFileSync, readdirSync, writeFileSync} from "node:fs";
import {createRequire} from "node:module";
import {basename, dirname, join} from "node:path";
import {fileURLToPath} from "node:url";
import {gzipSync} from "node:zlib";

import {door_of} from "./door.js";

const here = dirname(fileURLToPath(import.meta.url));
const [sources, charts, engine, made_of, output] = process.argv.slice(2);
const {build} = createRequire(join(charts, "bundle.mjs"))("esbuild");
const most_bytes = 2.5e6;

const script = async (name) => (await build({entryPoints: [join(here, name)], bundle: true, minify: true, format: "iife", target: "es2022",
                                            charset: "ascii", legalComments: "none", write: false})).outputFiles[0].text.trim();
const texts = (folder, kind) => Object.fromEntries(readdirSync(join(sources, folder)).filter((name) => name.endsWith(kind) && name !== "README.md").sort()
  .map((name) => [name, readFileSync(join(sources, folder, name), "utf8")]));
const hash = (text) => `'sha256-${createHash("sha256").update(text, "utf8").digest("base64")}'`;

// The engine's own words, so that they stand on the page before anything runs.
async function cautions() {
  const factory = createRequire(import.meta.url)(`${engine}.js`);
  return door_of(await factory({wasmBinary: readFileSync(`${engine}.wasm`)}))({ask: "lists"});
}

const app = await script("app.js");
const worker = `${readFileSync(`${engine}.js`, "utf8")}\n${await script("worker.js")}`;
const shipped = JSON.stringify({scenarios: texts("scenarios", ".json"), lessons: texts("scenarios/lessons", ".md"),
                                weather: texts("scenarios/weather", "")}).replaceAll("<", "\\u003c");
const style = [join(sources, "engine/report/html/style.css"), join(here, "style.css")].map((path) => readFileSync(path, "utf8")).join("\n");
const drawing = `'sha256-${readFileSync(join(charts, "out/charts_hash.txt"), "utf8")}'`;
const {notice, advice} = await cautions();
// No request may leave the page; workers run from what is in it.
const policy = `default-src 'none'; script-src ${hash(app)} ${drawing} 'wasm-unsafe-eval'; worker-src blob:; style-src 'unsafe-inline'; img-src data:; ` +
  "base-uri 'none'; form-action 'none'";
const parts = {
  POLICY: policy, SOURCES: readFileSync(made_of, "utf8"), STYLE: style, ENGINE: gzipSync(readFileSync(`${engine}.wasm`), {level: 9}).toString("base64"), WORKER: worker, SHIPPED: shipped, APP: app, NOTICE: notice, ADVICE: advice
};
for (const name of ["STYLE", "WORKER", "SHIPPED", "APP"])
  if (/<\/(script|style)\b|<!--/i.test(parts[name])) throw new Error(`${name} would close its element`);
const page = readFileSync(join(here, "index.html"), "utf8")
  .replace(/\b(POLICY|SOURCES|STYLE|ENGINE|WORKER|SHIPPED|APP|NOTICE|ADVICE)\b/g, (name) => parts[name]);
const bytes = Buffer.byteLength(page);
if (bytes > most_bytes) throw new Error(`${basename(output)}: ${bytes} bytes; at most ${most_bytes}`);
writeFileSync(output, page);
console.log(`${basename(output)}: ${(bytes / 1e6).toFixed(2)} MB`);
