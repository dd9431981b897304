// The engine compiled for a browser beside the program, on every shipped scenario: the same result, number by number.
//   node equal.mjs ENGINE BIDE SCENARIOS OUT    ENGINE.js and ENGINE.wasm; OUT gets the results, as {name: text}
//
// The program's lanes take exp and log from another library, which rounds the last digits otherwise. Over three weeks
// of drinking whenever there is water, some drink then falls into another step, and so does the rain that finds room:
// that scenario is held to a hundredth, and these two to their sums. Over eight days of rations one end of a range
// moves by a minute: that one is held to five in ten thousand.
import {strict as assert} from "node:assert";
import {execFileSync} from "node:child_process";
import {readFileSync, readdirSync, writeFileSync} from "node:fs";
import {createRequire} from "node:module";
import {join} from "node:path";
import {door_of} from "../../tools/browser/page/door.js";

const [engine, bide, folder, out] = process.argv.slice(2);
const by_sum = "three_weeks_by_buoy.json";
const looser = {[by_sum]: 1e-2, "long_pack_far_offshore.json": 5e-4};
const tolerance_of = (name) => looser[name] ?? 1e-4;  // of the larger number, or of one
let tolerance = 0;
const factory = createRequire(import.meta.url)(`${engine}.js`);
const ask = door_of(await factory({wasmBinary: readFileSync(`${engine}.wasm`)}));

let numbers = 0, worst = 0, where = "", unequal = 0;
function compare(native, ours, path) {
  if (typeof native === "number" && typeof ours === "number") {
    const off = Math.abs(native - ours) / Math.max(Math.abs(native), Math.abs(ours), 1);
    ++numbers;
    if (native !== ours) ++unequal;
    if (off > worst) [worst, where] = [off, path];
    assert.ok(off <= tolerance, `${path}: the program has ${native}, the page ${ours}`);
  } else if (Array.isArray(native) && Array.isArray(ours) && native.length !== ours.length) {
    assert.fail(`${path}: the program has ${native.length} entries, the page ${ours.length}`);
  } else if (native && typeof native === "object") {
    assert.deepEqual(Object.keys(ours ?? {}), Object.keys(native), `${path}: keys`);
    for (const key of Object.keys(native)) compare(native[key], ours[key], `${path}/${key}`);
  } else {
    assert.equal(ours, native, path);
  }
}

function with_water_summed(result) {
  const is_water = (event) => ["water_issued", "rain_caught"].includes(event.kind), water_L = {};
  for (const {kind, person, given} of result.events.filter(is_water)) {
    const whose = `${kind} ${person ?? ""}`;
    water_L[whose] = (water_L[whose] ?? 0) + given;
  }
  assert.ok(Object.keys(water_L).length > 1, "nobody drinks");
  return {...result, events: result.events.filter((event) => !is_water(event)), water_L};
}

const weather = Object.fromEntries(readdirSync(join(folder, "weather")).map((name) => [`weather/${name}`, readFileSync(join(folder, "weather", name), "utf8")]));
const results = {}, names = readdirSync(folder).filter((name) => name.endsWith(".json"));
assert.ok(names.length > 10, "too few scenarios");
for (const name of names) {
  const scenario = readFileSync(join(folder, name), "utf8");
  execFileSync(bide, ["run", join(folder, name), "--json", "native.json", "--quiet"], {stdio: ["ignore", "ignore", "ignore"]});
  const answer = ask({ask: "report", scenario, name: join(folder, name), result: true, files: weather});
  assert.ok(!answer.refused, `${name}: ${JSON.stringify(answer.refused)}`);
  results[name] = answer.result;
  tolerance = tolerance_of(name);
  const both = [readFileSync("native.json", "utf8"), answer.result].map((text) => JSON.parse(text));
  for (const each of both) delete each.made_by;  // two builds
  compare(...(name === by_sum ? both.map(with_water_summed) : both), name);
}
// Futures that were drawn in parts give the odds of those drawn together.
const scenario = readFileSync(join(folder, "uncertain_tropics.json"), "utf8");
const draw = (begin, end) => ask({ask: "draw", scenario, begin, end});
const odds = (parts) => ask({ask: "odds", scenario, end: 24, parts, result: true}).result;
assert.equal(odds([draw(0, 10), draw(10, 24)]), odds([draw(0, 24)]), "odds from parts");
// The same futures by the program: odds are shares of them and hours read off them, so one future that ends in another
// minute moves an hour by as much; shares are the same.
const drawn = "uncertain_tropics.json", futures = 24, odds_tolerance = 1e-3;
execFileSync(bide, ["odds", join(folder, drawn), "-n", String(futures), "--no-levers", "--json", "native_odds.json", "--quiet"], {stdio: "ignore"});
{
  const [native, ours] = [readFileSync("native_odds.json", "utf8"), odds([draw(0, futures)])].map((text) => JSON.parse(text));
  for (const each of [native, ours]) delete each.made_by;
  tolerance = odds_tolerance;
  const before = numbers;
  compare(native, ours, `odds of ${drawn}`);
  assert.ok(numbers > before + 100, "the odds hold too few numbers");
}
writeFileSync(out, JSON.stringify({runs: results, odds: {name: drawn, futures, result: odds([draw(0, futures)])}}));
console.log(`${names.length} scenarios, ${numbers} numbers, ${unequal} not the same to the last bit; largest difference ${worst.toExponential(1)} at ${where}`);
