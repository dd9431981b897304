// The page that the engine works in, as a reader has it: opened from disk, without a network.
//   node page.mjs CHROMIUM FIREFOX PAGE RESULTS SCENARIOS   FIREFOX may be ""; RESULTS from equal.mjs
//
// Prints what was measured. Screenshots and a print stay in the working folder, for people to look at.
import {strict as assert} from "node:assert";
import {spawnSync} from "node:child_process";
import {readFileSync, statSync, writeFileSync} from "node:fs";
import {createServer} from "node:http";
import {join, resolve} from "node:path";
import {pathToFileURL} from "node:url";
import playwright from "playwright-core";

import {pages_in} from "./paper.mjs";

const [chromium, firefox, file, results_file, scenarios] = process.argv.slice(2);
const url = pathToFileURL(resolve(file)).href;
const results = JSON.parse(readFileSync(results_file, "utf8"));
// The aims on an idle laptop, printed beside what was measured. A test machine does other work meanwhile: five times as
// much is a bar against disasters, no aim.
const aims_ms = {first: 2_000, range: 5_000, run: 150, futures: 10_000};
const times_slower = 5;
const most_ms = Object.fromEntries(Object.entries(aims_ms).map(([what, aim]) => [what, times_slower * aim]));

const wrong = [];
const measured = {};

async function open(browser, fragment = "") {
  const context = await browser.newContext({viewport: {width: 1200, height: 900}});
  const page = await context.newPage();
  page.on("console", (message) => { if (["error", "warning"].includes(message.type())) wrong.push(message.text()); });
  page.on("pageerror", (error) => wrong.push(String(error)));
  context.on("request", (request) => {
    const asked = request.url();
    if (asked.split("#")[0] !== url && !asked.startsWith("blob:")) wrong.push(`asks for ${asked}`);
  });
  await page.goto(url + fragment);
  await settled(page);
  return page;
}
const settled = (page) => page.waitForFunction(() => document.querySelector("#answer")?.getAttribute("aria-busy") === "false" &&
  !document.body.classList.contains("working"), null, {timeout: 120_000});
// A control of the sentence.
const control = (page, name) => page.locator(`#sentence [aria-label="${name}"]`);
const answer = (page) => page.locator("#answer dl.facts").first().innerText();
const clean = (what) => assert.deepEqual(wrong, [], `${what}: errors or requests`);

async function opens(browser, name) {
  const page = await open(browser);
  const timings = await page.evaluate(() => globalThis.bide_timings);
  measured[`${name}: first picture, ms after opening`] = timings.first;
  measured[`${name}: first answer with its range, ms`] = timings.first_range;
  assert.ok(timings.first < most_ms.first, `first picture after ${timings.first} ms`);
  assert.ok(timings.first_range < most_ms.range, `first answer after ${timings.first_range} ms`);
  assert.match(await answer(page), /Able until[\s\S]*Alive until/);
  assert.equal(await page.locator("#cautions .notice").isVisible(), true);
  assert.match(await page.locator("#cautions").innerText(), /Never a reason to end, delay or narrow a search/);
  assert.ok(await page.locator("#answer .plot svg").count() > 0, "the answer has no picture");
  clean("opening");
  return page;
}

// Each scenario gives the very bytes that the same engine gives in node.
async function same_results(page) {
  for (const [name, result] of Object.entries(results.runs)) {
    const weather = {"weather/invented_station.txt": readFileSync(join(scenarios, "weather/invented_station.txt"), "utf8")};
    const question = {ask: "report", scenario: readFileSync(join(scenarios, name), "utf8"), name: join(scenarios, name), result: true, files: weather};
    const here = await page.evaluate((asked) => globalThis.bide.lane().ask(asked), question);
    assert.equal(here.result, result, `${name}: not the bytes of node`);
  }
  const {name, futures: end, result} = results.odds, scenario = readFileSync(join(scenarios, name), "utf8");
  const odds = await page.evaluate(async ([text, last]) => {
    const ask = (question) => globalThis.bide.lane().ask({scenario: text, ...question});
    const parts = [await ask({ask: "draw", begin: 0, end: 10}), await ask({ask: "draw", begin: 10, end: last})];
    return ask({ask: "odds", end: last, parts, result: true});
  }, [scenario, end]);
  assert.equal(odds.result, result, "odds: not the bytes of node");
}

async function changes(page, name) {
  const runs = [];
  for (const value of ["5", "4", "6", "4"]) {
    await control(page, "How many people").selectOption(value);
    await settled(page);
    runs.push(await page.evaluate(() => globalThis.bide_timings.run));
  }
  runs.sort((a, b) => a - b);
  measured[`${name}: run after a change, ms (middle of 4)`] = (runs[1] + runs[2]) / 2;
  measured[`${name}: its range, ms`] = await page.evaluate(() => globalThis.bide_timings.range);
  assert.ok(runs[3] < most_ms.run, `a change took ${runs[3]} ms`);
  clean("changes");
}

async function controls(page) {
  const before = await answer(page);
  const month = control(page, "Month");
  await month.focus();
  await page.keyboard.press("ArrowDown");  // by keyboard alone
  await page.waitForFunction((old) => document.querySelector("#answer dl.facts")?.innerText !== old, before, {timeout: 60_000});
  await settled(page);
  assert.notEqual(await answer(page), before, "another month changes nothing");
  assert.equal(await page.evaluate(() => document.activeElement.getAttribute("aria-label")), "Month", "the focus is lost");
  // The hour is moved by keyboard, and read out.
  const hour = page.getByLabel("Hour of the stay");
  await hour.focus();
  await page.keyboard.press("End");
  assert.match(await page.locator(".when").innerText(), /^120 h/);
  assert.match(await page.locator(".section").getAttribute("aria-label"), /outside: .*sea: /);
  clean("controls");
}

// Every word of the sentence by keyboard alone, and a name for whatever can be reached.
async function by_keyboard(page) {
  const link = () => new URL(page.url()).hash;
  const press = async (name, key) => {
    const one = control(page, name);
    await one.focus();
    await page.keyboard.press(key);
  };
  const type = async (name, text) => {
    await control(page, name).focus();
    await page.keyboard.press("Control+a");
    await page.keyboard.type(text);
    await page.keyboard.press("Tab");
  };
  const changes = async (what, does) => {
    const before = link();
    await does();
    await page.waitForFunction((old) => location.hash !== old, before, {timeout: 20_000}).catch(() => { throw new Error(`${what} changes nothing by keyboard`); });
    await settled(page).catch(() => { throw new Error(`${what}: no end of waiting`); });
  };
  const start = page.url();
  for (const name of ["How many people", "Raft", "Pack", "Clothing", "Sea", "Month", "How they came aboard", "Help"])
    await changes(name, () => press(name, "ArrowDown"));
  await changes("the last of the seas", () => press("Sea", "End"));
  for (const [name, text] of [["Latitude, degrees, north positive", "50"], ["Longitude, degrees, east positive", "-20"], ["Days followed", "2"], ["Days until help", "1"]])
    await changes(name, () => type(name, text));
  await control(page, "How they came aboard").selectOption("swim");
  await settled(page);
  await changes("Minutes in the water", () => type("Minutes in the water", "4"));
  await control(page, "Who they are").selectOption("typed");
  await settled(page);
  const crew = page.locator("#sentence input[type=text]");
  await changes("the crew", async () => {
    await crew.focus();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("M50 F9");
    await page.keyboard.press("Tab");
  });
  assert.match(await page.locator("#answer .lead").innerText(), /^2 people/);
  const nameless = await page.evaluate(() => [...document.querySelectorAll("a, button, input, select, textarea, summary")].filter((each) =>
    each.checkVisibility() && !(each.getAttribute("aria-label") || [...each.labels ?? []].map((one) => one.innerText).join("") || each.innerText || each.title || "").trim()).map((each) => each.outerHTML.slice(0, 100)));
  assert.deepEqual(nameless, [], "controls without a name");
  await page.goto("about:blank");
  await page.goto(start);
  await settled(page);
  clean("keyboard");
}

// Quick changes: only the last is answered.
async function given_up(page) {
  for (const value of ["1", "2", "3", "8", "12"]) await control(page, "How many people").selectOption(value);
  await settled(page);
  assert.match(await page.locator("#answer .lead").innerText(), /^12 people/);
  await control(page, "How many people").selectOption("4");
  await settled(page);
  clean("changes given up");
}

// What was asked before a change is ended, not waited for.
async function cut_off(page) {
  const ended = await page.evaluate(async () => {
    const lane = globalThis.bide.lane(), before = lane.worker, begun = performance.now();
    const old = lane.ask({ask: "draw", scenario: document.querySelector("textarea").value, begin: 0, end: 2000});
    const people = document.querySelector('[aria-label="How many people"]');
    people.value = "2";
    people.dispatchEvent(new Event("change"));
    const end = await old.then(() => "answered", (fault) => fault.message);
    return {end, took_ms: performance.now() - begun, new_worker: lane.worker !== before};
  });
  assert.equal(ended.end, "given up");
  assert.ok(ended.new_worker && ended.took_ms < 1000, `an old question held up a new one for ${ended.took_ms} ms`);
  await settled(page);
  await control(page, "How many people").selectOption("4");
  await settled(page);
  clean("a question cut off");
}

// Many changes leave nothing behind: memory after the browser has cleared up, and the number of workers.
async function steady(page) {
  const session = await page.context().newCDPSession(page);
  const heap_MB = async () => {
    await session.send("HeapProfiler.collectGarbage");
    return (await session.send("Runtime.getHeapUsage")).usedSize / 1e6;
  };
  const some = async (count) => {
    for (let i = 0; i < count; ++i) {
      await control(page, "How many people").selectOption(i % 2 ? "4" : "3");
      await settled(page);
    }
  };
  await some(10);
  const of_workers_MB = async () => (await Promise.all(page.workers().map((each) => each.evaluate(() => globalThis.memory_bytes?.() ?? 0)))).reduce((a, b) => a + b) / 1e6;
  const before = await heap_MB(), workers = page.workers().length, workers_before = await of_workers_MB();
  await some(30);
  const after = await heap_MB(), workers_after = await of_workers_MB();
  measured["memory of the engine in its workers, before and after, MB"] = workers_before;
  measured["  after that"] = workers_after;
  assert.ok(workers_before > 1, "the engine's memory is not seen");
  assert.ok(workers_after < workers_before + 4, `30 changes took ${workers_after - workers_before} MB of the workers`);
  measured["memory of the page before and after 30 changes, MB"] = before;
  measured["  after"] = after;
  assert.ok(after < before + 2, `30 changes took ${after - before} MB`);
  assert.equal(page.workers().length, workers, "workers are left behind");
}

// Each word of the sentence has its evidence one tap away, and comes back from it.
async function sources(page, screen) {
  await control(page, "Who they are").selectOption("unknown");
  await settled(page);
  const controls = await page.locator("#sentence :is(select, input)").count();
  assert.equal(await page.locator("#sentence .of-source").count(), controls, "a control without its source");
  assert.ok(controls > 9, `${controls} controls`);
  for (let i = 0; i < controls; ++i) {
    const button = page.locator("#sentence .of-source").nth(i);
    await button.focus();
    await page.keyboard.press("Enter");
    const at = await page.evaluate(() => ({id: document.activeElement.id, text: document.activeElement.innerText, shown: document.activeElement.checkVisibility()}));
    assert.ok(at.id.startsWith("source-") && at.shown && at.text.length > 40, `${await button.getAttribute("aria-label")} leads to ${JSON.stringify(at)}`);
    await page.keyboard.press("Escape");
    assert.equal(await page.evaluate(() => document.activeElement.className), "of-source", "Escape does not come back");
    if (screen) {
      const box = await button.boundingBox();
      assert.ok(Math.min(box.width, box.height) >= 24, `a target of ${box.width} by ${box.height} px`);
    }
  }
  const entry = (name) => page.locator(`#source-${name}`).innerText();
  assert.match(await entry("minutes-in-the-water"), /10 min \(3 to 30 min\): .*our own estimate, no source/);
  assert.match(await entry("minutes-in-the-water"), /1 min \(1 to 3 min\): 4\.2\.2.*read at second hand: .*Life-?[Ss]aving/);
  assert.match(await entry("who-they-are"), /Where nobody knows it: Judgement: three men to one woman/);
  assert.match(await entry("days-followed"), /the engine keeps no source/);
  await control(page, "Who they are").selectOption("usual");
  await settled(page);
  await page.locator("input[type=search]").fill("core temperature");
  const limit = await page.locator(".field", {has: page.locator("code", {hasText: "/limits/unconscious_core_degC"})}).innerText();
  assert.match(limit, /Unconscious below this core temperature\.[\s\S]*read in the source|Allowed: a number from 20 to 34 °C/);
  assert.match(limit, /Allowed: a number from 20 to 34 °C/);
  assert.match(limit, /; (read|worked out|from memory|our own)/, "a field without its source");
  await page.locator("input[type=search]").fill("");
  clean("sources");
}

// The worker breaks while a question waits: another takes its place, and the question. When that breaks too, the page
// says so and is no longer busy.
async function worker_dies(page) {
  const broken = (again) => page.evaluate((ever) => {
    const lane = globalThis.bide.lane();
    lane.whole ??= lane.script;
    lane.script = URL.createObjectURL(new Blob(["onmessage = ({data}) => { if (data.question) throw new Error('killed by the test'); }"], {type: "text/javascript"}));
    lane.worker.terminate();
    lane.start();
    if (!ever) lane.script = lane.whole;  // the next one is sound
  }, again);
  await broken(false);
  await control(page, "How many people").selectOption("3");
  await settled(page);
  assert.match(await page.locator("#answer .lead").innerText(), /^3 people/);
  await broken(true);
  await control(page, "How many people").selectOption("2");
  await page.waitForFunction(() => /broke off twice/.test(document.querySelector("#problems").innerText), null, {timeout: 20_000});
  await settled(page);  // it does not wait for ever
  assert.match(await page.locator("#state").innerText(), /of the situation before/);
  await page.evaluate(() => {
    const lane = globalThis.bide.lane();
    lane.script = lane.whole;
    lane.worker.terminate();
    lane.start();
  });
  await control(page, "How many people").selectOption("3");
  await settled(page);
  assert.match(await page.locator("#answer .lead").innerText(), /^3 people/);
  assert.equal(await page.locator("#problems .problem").count(), 0);
  wrong.splice(0, wrong.length, ...wrong.filter((each) => !each.includes("killed by the test")));
  clean("a worker that dies");
}

async function levers_and_beside(page) {
  await page.waitForFunction(() => globalThis.bide_timings.levers, null, {timeout: 240_000});
  assert.match(await page.locator("#bought").innerText(), /Each change is tried alone/);
  await page.getByRole("button", {name: "Keep this situation"}).click();
  await settled(page);
  await control(page, "How they came aboard").selectOption("dry");
  await settled(page);
  await page.waitForFunction(() => document.querySelector("#difference table"), null, {timeout: 240_000});
  const difference = await page.locator("#difference").innerText();
  assert.match(difference, /^Option 1, kept: swam 10 minutes\. Option 2, as above: stepped aboard dry\./);
  assert.match(difference, /Option 1: .*in Biscay in \w+: swam 10 minutes/);
  assert.match(difference, /What would buy more time, below, is tried on option 2/);
  const printed = async () => {
    await page.emulateMedia({media: "print"});
    const shown = await page.locator("#difference").isVisible();
    await page.emulateMedia({media: null});
    return shown;
  };
  assert.equal(await printed(), true, "a comparison is not printed");
  await page.pdf({path: "page_compared.pdf", preferCSSPageSize: true});
  await page.getByRole("button", {name: "Stop comparing"}).click();
  await settled(page);
  assert.equal(await printed(), false, "a comparison is printed that is no more");
  await settled(page);
  clean("levers and comparison");
}

async function futures(page, name) {
  await page.getByRole("button", {name: "Draw 500 futures"}).click();
  await page.waitForFunction(() => globalThis.bide_timings.futures && !document.querySelector("#draw").hidden, null, {timeout: 400_000});
  const took_ms = await page.evaluate(() => globalThis.bide_timings.futures);
  measured[`${name}: 500 futures on two workers, s`] = took_ms / 1000;
  assert.ok(took_ms < most_ms.futures, `500 futures took ${took_ms} ms`);
  await page.waitForFunction(() => document.querySelectorAll("#futures figure").length > 2, null, {timeout: 60_000});
  assert.match(await page.locator("#futures").innerText(), /8 in 10/);
  clean("odds");
}

// Help, ages, and an answer that is marked as old while the next is worked out.
async function told_at_once(page) {
  await control(page, "How many people").selectOption("4");
  await settled(page);
  const old = await page.evaluate(() => {
    const people = document.querySelector('[aria-label="Who they are"]');
    people.value = "family";
    people.dispatchEvent(new Event("change"));
    return ["#answer", "#stay", "#bought", "#sheets"].filter((id) => !document.querySelector(id).classList.contains("old"));
  });
  assert.deepEqual(old, [], "shown as if it were of the new situation");
  assert.match(await page.locator("#state").innerText(), /of the situation before/);
  await settled(page);
  assert.equal(await page.locator("#stay.old, #answer.old").count(), 0);
  assert.match(await page.locator("#sentence").innerText(), /\(man 40, woman 38, girl 12, boy 9\)/);
  await page.locator("input[type=search]").fill("age_years");
  assert.match(await page.locator(".fields").innerText(), /Now: Person A 40, Person B 38, Person C 12, Person D 9\. A change reaches every person\./);
  await page.locator("input[type=search]").fill("");
  assert.equal(await page.locator(".of-help").isVisible(), false);
  await control(page, "Help").selectOption("yes");
  await settled(page);
  assert.match(await page.locator(".of-help").innerText(), /^Help, as stated, comes after 72 h \(\d+ \w+ 12:00 UTC\): the dashed line\.$/);
  const mark = await page.locator(".bands i.help").boundingBox(), bar = await page.locator(".bands .bar").first().boundingBox();
  assert.ok(Math.abs((mark.x - bar.x) / bar.width - 72 / 120) < 0.02, "the mark of help is not at 72 of 120 h");
  await control(page, "Days until help").fill("9");
  await page.keyboard.press("Tab");
  await settled(page);
  assert.match(await page.locator("#sentence").innerText(), /later than the time followed/);
  assert.match(await page.locator(".of-help").innerText(), /216 h: later than the time followed/);
  assert.equal(await page.locator(".bands i.help").count(), 0);
  await control(page, "Help").selectOption("no");
  await control(page, "Who they are").selectOption("usual");
  await settled(page);
  clean("help and ages");
}

// Card and list: a sheet each, with the caution on it.
async function on_paper(page) {
  await page.evaluate(() => { window.print = () => { window.printed = document.body.className; }; });
  await control(page, "How many people").selectOption("3");
  await settled(page);
  const trying = page.locator("#answer dd", {hasText: "being tried"});
  assert.equal(await trying.isVisible(), true);
  await page.emulateMedia({media: "print"});  // by the browser's own command, before the changes are tried
  assert.equal(await trying.isVisible(), false, "what is being tried is printed");
  await page.emulateMedia({media: null});
  await control(page, "How many people").selectOption("4");
  await page.getByRole("button", {name: "Print card and list"}).click();
  await page.waitForFunction(() => window.printed !== undefined, null, {timeout: 240_000});
  assert.ok(!(await page.locator("#answer").innerText()).includes("being tried"), "printed before the changes were tried");
  assert.match(await page.evaluate(() => window.printed), /sheets-alone/);
  const sheets = async () => {
    await page.pdf({path: "page.pdf", preferCSSPageSize: true});
    return pages_in("page.pdf");
  };
  await page.evaluate(() => document.body.classList.add("sheets-alone"));
  assert.equal(await sheets(), 2);
  await page.emulateMedia({media: "print"});
  assert.equal(await page.locator(".for-paper:visible").count(), 2);
  await page.evaluate(() => document.body.classList.remove("sheets-alone"));
  assert.equal(await sheets(), 3);
  await page.emulateMedia({media: null});
}

async function refusals(page) {
  await page.locator("input[type=search]").fill("wind_speed");
  const field = page.locator(".field", {has: page.locator("code", {hasText: "/weather/wind_speed_m_s"})}).first().locator("input");
  await field.fill("99");
  await field.press("Enter");
  await page.waitForSelector("#problems .problem");
  assert.match(await page.locator("#problems").innerText(), /wind speed: found 99; allowed.* \/weather\/wind_speed_m_s/);
  assert.equal(await field.getAttribute("aria-invalid"), "true");
  await field.fill("12");
  await field.press("Enter");
  await settled(page);
  await page.locator("input[type=search]").fill("/failures/ at_h");
  assert.match(await page.locator(".fields").innerText(), /failures\/\*\/at_h\s+There is none in this situation\./);
  assert.equal(await page.locator(".field", {has: page.locator("code", {hasText: "/failures"})}).locator("input").count(), 0, "a field of a list that is not there can be set");
  await page.locator("input[type=search]").fill("");
  assert.equal(await page.locator("#problems .problem").count(), 0);
  clean("refusals");
}

// Files as they are dropped: measured weather, a misspelt key, what is neither.
async function dropped(page) {
  const drop = (name, buffer) => page.locator("input[type=file]").setInputFiles({name, mimeType: "application/octet-stream", buffer});
  const problems = page.locator("#problems");
  await drop("station.txt", readFileSync(join(scenarios, "weather/invented_station.txt")));
  await page.waitForFunction(() => document.querySelector("#sentence").textContent.includes("station.txt"));
  await settled(page);
  assert.equal(await problems.innerText(), "");
  assert.match(await page.locator("#answer .lead").innerText(), /from 3 Sep 00:50 UTC/);  // the file's first row
  await drop("gale.csv", Buffer.from("time_utc,air_temperature_degC,water_temperature_degC,relative_humidity_pct,wind_speed_m_s\n" +
    Array.from({length: 49}, (_, hour) => `2031-02-0${1 + Math.floor(hour / 24)}T${String(hour % 24).padStart(2, "0")}:00:00Z,4,7,85,17\n`).join("")));
  await page.waitForFunction(() => document.querySelector("#answer .lead")?.textContent.includes("1 Feb 00:00 UTC, followed for 2 d"), null, {timeout: 60_000});
  await settled(page);
  await drop("picture.png", Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2]));
  await page.waitForFunction(() => document.querySelector("#problems").textContent.includes("picture.png: is no text"));
  await drop("list.txt", Buffer.from("milk\nbread\n"));
  await page.waitForFunction(() => /list.txt: as weather of kind csv: .*list.txt: as weather of kind ndbc: /s.test(document.querySelector("#problems").innerText));
  await page.getByRole("button", {name: "A month's weather instead"}).click();
  await settled(page);
  assert.equal(await problems.innerText(), "");
  const misspelt = readFileSync(join(scenarios, "four_in_a_right_sized_raft.json"), "utf8").replace('"duration_h"', '"duraton_h"');
  await drop("misspelt.json", Buffer.from(misspelt));
  await page.waitForFunction(() => /duration_h.*\/duraton_h/.test(document.querySelector("#problems").innerText));
  await page.getByRole("button", {name: "Begin with a sentence instead"}).click();
  await settled(page);
  clean("dropped files");
}

// The same by the event that a browser sends when a file is let go over the page.
async function let_go(page) {
  const text = readFileSync(join(scenarios, "tropics_little_water.json"), "utf8");
  await page.evaluate((scenario) => {
    const data = new DataTransfer();
    data.items.add(new File([scenario], "tropics.json", {type: "application/json"}));
    for (const kind of ["dragover", "drop"]) {
      const event = new DragEvent(kind, {dataTransfer: data, bubbles: true, cancelable: true});
      if (document.querySelector("#answer").dispatchEvent(event)) throw new Error(`the browser would open what is let go (${kind})`);
    }
  }, text);
  await page.waitForFunction((name) => document.querySelector("#sentence").textContent.startsWith(`From a file: ${name}`), JSON.parse(text).name);
  await settled(page);
  await page.getByRole("button", {name: "Begin with a sentence instead"}).click();
  await settled(page);
  clean("a file let go");
}

// A file that means harm stays text.
async function hostile(page) {
  const evil = `"><img src=x onerror="window.injected=1"><script>window.injected=2</script>`;
  const scenario = JSON.parse(readFileSync(join(scenarios, "four_in_a_right_sized_raft.json"), "utf8"));
  scenario.name = scenario.setting = evil;
  await page.locator("input[type=file]").setInputFiles({name: `${evil}.json`, mimeType: "application/json", buffer: Buffer.from(JSON.stringify(scenario))});
  await page.waitForFunction(() => document.querySelector("#sentence").textContent.startsWith("From a file"));
  await settled(page);
  await page.locator("input[type=file]").setInputFiles({name: "broken.json", mimeType: "application/json", buffer: Buffer.from("{\"format\": \"<b>\"")});
  await page.waitForSelector("#problems .problem");
  assert.equal(await page.evaluate(() => window.injected), undefined);
  assert.equal(await page.locator("img, iframe, object").count(), 0);
  clean("hostile files");
  await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "window.injected = 3";
    document.body.append(script);
  });
  assert.equal(await page.evaluate(() => window.injected), undefined, "the policy lets a script run");
  assert.ok(wrong.splice(0).some((text) => text.includes("Content Security Policy")));
  const asked = await page.evaluate(() => fetch("https://example.org/").then(() => "answered", () => "refused"));
  assert.equal(asked, "refused");
  wrong.length = 0;
  const stored = await page.evaluate(async () => [document.cookie, localStorage.length, sessionStorage.length,
    (await indexedDB.databases?.())?.length ?? 0, (await globalThis.caches?.keys().catch(() => []))?.length ?? 0].join());
  assert.equal(stored, ",0,0,0,0", "something is stored");
  await hostile_link(page.context().browser(), evil);
}

// A link that somebody made: what it holds is text too, and what is none is passed over.
async function hostile_link(browser, evil) {
  const packed = (value) => Buffer.from(JSON.stringify(value)).toString("base64url");
  for (const link of [
    `#s=${packed({facts: {persons: evil, people: evil, crew: evil, sea: evil, raft: evil, month: 1e9}, set: {[evil]: evil, "/__proto__/x": 1}, weather: {name: evil, kind: evil, from_unix_s: 0, to_unix_s: 1}})}`,
    `#s=${packed({file: {name: evil, text: evil}})}&l=${packed({open: "wet_floor.md", begun: {"wet_floor.md": {at: evil, guesses: [[{value: 3, unit: evil, words: evil}], evil]}, [evil]: {}}})}`,
    "#s=%%%&l=!!!", `#s=${packed(null)}&l=${packed([1])}`]) {
    const other = await browser.newPage();
    const faults = [];
    other.on("pageerror", (error) => faults.push(String(error)));
    await other.goto(url + link);
    await other.waitForFunction(() => document.querySelector("#answer .plot svg") || document.querySelector("#problems .problem"), null, {timeout: 60_000});
    assert.equal(await other.evaluate(() => window.injected), undefined);
    assert.equal(await other.locator("img, iframe, object").count(), 0);
    assert.deepEqual(faults, [], link.slice(0, 60));
    await other.close();
  }
}

// What leaves the browser, as a proxy sees it that passes nothing on. A browser asks its own makers' hosts too: those
// that it asks for with an empty page do not count.
async function asks_nobody(launch, name) {
  const seen = [];
  const proxy = createServer((request, response) => {
    seen.push(request.url);
    response.writeHead(502).end();
  });
  proxy.on("connect", (request, socket) => {
    seen.push(request.url);
    socket.end("HTTP/1.1 502 no\r\n\r\n");
  });
  await new Promise((ready) => { proxy.listen(0, "127.0.0.1", ready); });
  const browser = await launch(proxy.address().port);
  try {
    const page = await browser.newPage();
    const asked_for = (what) => seen.filter((each) => each.includes(what)).length;
    await page.goto("about:blank");
    await page.evaluate(() => fetch("http://counted.invalid/").catch(() => {}));
    assert.ok(asked_for("counted.invalid") > 0, `${name}: the proxy counts nothing`);
    await page.waitForTimeout(3000);
    const host = (text) => text.replace(/^\w+:\/\//, "").split(/[/:]/)[0];
    const own = new Set(seen.map(host));
    await page.goto(url);
    await settled(page);
    await control(page, "How many people").selectOption("3");
    await settled(page);
    await page.evaluate(() => fetch("http://refused.invalid/").catch(() => {}));
    await page.waitForTimeout(1000);
    const others = seen.map(host).filter((each) => !own.has(each) && !/(^|\.)(google|googleapis|gstatic|gvt1|mozilla|firefox|mozgcp)\.(com|net|org)$/.test(each));
    assert.deepEqual(others, [], `${name}: asks for`);
    measured[`${name}: requests of the page that a proxy counted`] = others.length;
  } finally {
    await browser.close();
    proxy.close();
  }
}

async function files_out(page) {
  await page.getByRole("button", {name: "Begin with a sentence instead"}).click();
  await settled(page);
  const saved = async (button) => {
    const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
    return readFileSync(await download.path());
  };
  const by_name = (name) => saved(page.getByRole("button", {name}));
  assert.equal(JSON.parse(await by_name("Save the scenario")).format, "bide scenario 1");
  const rows = String(await by_name("Save the hours as CSV")).split("\n").filter((line) => line && !line.startsWith("#"));
  assert.match(String(await by_name("Save the report")), /^<!doctype html>[\s\S]*Ration card/i);
  writeFileSync("page.xlsx", await by_name("Save as a workbook"));
  const unpacked = spawnSync("cmake", ["-E", "tar", "xf", "page.xlsx"], {encoding: "utf8"});
  assert.equal(`${unpacked.status}${unpacked.stderr}`, "0", "the workbook is no sound archive");  // it warns of wrong sums
  const sheet_names = [...readFileSync("xl/workbook.xml", "utf8").matchAll(/<sheet name="([^"]*)"/g)].map((each) => each[1]);
  const timeline = readFileSync(`xl/worksheets/sheet${sheet_names.indexOf("timeline") + 1}.xml`, "utf8");
  assert.ok(timeline.includes("Never a reason to end, delay or narrow a search."), "a sheet without the notice");
  const in_sheet = [...timeline.matchAll(/<c r="A\d+" s="0"><v>([^<]*)<\/v>/g)].map((each) => Number(each[1]));
  const in_csv = rows.slice(1).map((row) => Number(row.split(",")[0]));
  assert.equal(in_sheet.length, in_csv.length, "rows of the timeline");
  in_sheet.forEach((hour, i) => assert.ok(Math.abs(hour - in_csv[i]) < 1e-3, `row ${i}: ${hour} h, in the table ${in_csv[i]} h`));
  writeFileSync("chart.png", await saved(page.getByRole("button", {name: "Save as PNG"}).first()));
  assert.equal(readFileSync("chart.png").readUInt32BE(0), 0x89504e47);
  await saved_drawing(page, page.locator("#answer"), "Four in Biscay in February");
  const raft = String(await saved(page.locator(".drawing-of-raft").getByRole("button", {name: "Save as SVG"})));
  const words = texts_of(raft).join(" ");
  for (const each of ["Four in Biscay in February", "In the raft after", "°C inside", "Never a reason to"])
    assert.ok(words.includes(each), `the saved raft does not say "${each}"`);
  assert.ok(!/var\(|currentColor|<style|class=/.test(raft), "the saved raft leans on the page");
  // The link opens the same situation.
  const link = new URL(page.url()).hash;
  const other = await open(page.context().browser(), link);
  assert.equal(await answer(other), await answer(page));
  await other.context().close();
}

async function lesson(page) {
  const next = page.getByRole("button", {name: /^Next: /}), asks = page.getByRole("button", {name: "Ask the engine"});
  const here = page.locator(".step[open]"), time = here.getByLabel("A guess", {exact: true}), name_of = here.getByLabel("Name or reason");
  const guesses = here.locator(".guess li");
  const guess = async (hours, words) => {
    if (hours) await time.fill(hours);
    await name_of.fill(words);
    await name_of.press("Enter");
  };
  const leave = () => page.getByRole("button", {name: "Leave the lesson"}).click();
  page.on("dialog", (dialog) => dialog.accept());
  const minutes = (text) => Number(/(\d+) min/.exec(text)[1]);
  const names = await page.locator(".lessons button").allInnerTexts();
  for (const each of await page.locator(".lessons li").allInnerTexts()) assert.ok(minutes(each) > 20 && minutes(each) <= 40, each);

  await page.getByRole("button", {name: "The wet floor"}).click();
  assert.equal(await page.locator("#sentence").isVisible(), false, "the lesson shares the page");
  assert.equal(await page.locator("#cautions .notice").isVisible(), true);
  const third = page.getByRole("button", {name: "3. Bailing"});
  for (const button of [next, third]) assert.equal(await button.isDisabled(), true, "the answer stands open before a guess");
  await guess("", "");
  assert.equal(await next.isDisabled(), true, "an empty guess opens the answer");
  await guess("-3", "Nil");
  assert.match(await page.locator(".wanting").innerText(), /0 or more/);
  assert.equal(await next.isDisabled(), true, "a negative time opens the answer");
  await time.fill("");
  for (const [hours, who] of [["20", "Ann"], ["0.1", "Bo"], ["100", "Cem"], ["7", "Dee"]]) await guess(hours, who);
  await page.getByRole("button", {name: "Change Dee, 7 h"}).click();
  assert.equal(await time.inputValue(), "7");
  await guess("60", "Dee");
  await guess("5", "Eve");
  await page.getByRole("button", {name: "Remove Eve, 5 h"}).click();
  assert.equal(await guesses.count(), 4);
  assert.match(await page.locator(".lesson .able").innerText(), /^Able until: .*can help themselves/);
  await page.keyboard.press("Tab");
  await page.locator(".lesson h3").focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowLeft");
  assert.equal(await page.locator(".step[open]").count(), 1, "one step is open at a time");
  await third.click();
  assert.match(await page.locator(".step[open]").innerText(), /^3 of 6. Bailing/);
  const comment = page.getByText("Option 1 is the crew that does neither job");
  assert.equal(await comment.count(), 0, "what the answer shows is said before it is asked");
  assert.equal(await asks.last().isDisabled(), true, "an answer without its question");
  assert.equal(await page.locator(".bar-below .next").innerText(), "Skip to: What else buys time");
  await guess("", "never, Flo");
  await asks.last().click();
  assert.equal(await page.locator(".bar-below .next").innerText(), "Next: What else buys time");
  await page.waitForSelector(".lesson .asking");  // it says that it works
  await page.waitForSelector(".lesson .output figure", {timeout: 120_000});
  await page.waitForSelector(".lesson .asking", {state: "detached"});
  // Never bailing: the range begins after some hours and is open at three days; its central case lies within.
  const guessed = page.locator(".step[open] .guessed").last();
  assert.match(await page.locator(".step[open] .guessed").first().innerText(), /Guessed: never, Flo/);
  const said = await guessed.locator("p.large").allInnerTexts();
  assert.equal(said.length, 3);
  assert.match(said[0], /^Option 1, never bails: the first person is able until: [\d.]+ (min|h) to after 3 d, central case [\d.]+ h\. 3 of 4 guesses lie in this range: Ann; Cem; Dee\. Not within the time followed \(3 d\): Cem\. Nearest to the central case: \w+\.$/);
  assert.match(said[1], /central case after 3 d\. 3 of 4 .* Not within the time followed \(3 d\), as the central case: Cem\.$/);
  assert.doesNotMatch(said[1], /Nearest/, "somebody is nearest to what was not reached");
  assert.deepEqual((await guessed.locator(".guess-name").allInnerTexts()).sort(), ["Ann, 20 h", "Bo, 0.1 h", "Cem, 100 h", "Dee, 60 h"]);
  const box = (place) => place.boundingBox();
  const bar = await box(guessed.locator(".bar").first()), zone = await box(guessed.locator(".later").first());
  const marks = await Promise.all((await guessed.locator(".bar").first().locator(".guess-mark").all()).map(box));
  assert.ok(Math.max(...marks.map((each) => each.x)) > zone.x && zone.x < bar.x + bar.width, "a late guess lies within the time followed");
  assert.equal(await guessed.locator(".onward").count(), 3, "an open range has no arrow");
  // A line leads from each name to its mark, past the other names; no name leaves the box, on a phone neither.
  const ways = () => guessed.evaluate((all) => {
    const at = (each) => each.getBoundingClientRect(), middle = (each) => (at(each).left + at(each).right) / 2;
    const names = [...all.querySelectorAll(".guess-name")], lines = [...all.querySelectorAll(".lane i")];
    const marks = [...all.querySelector(".bar").querySelectorAll(".guess-mark")].map(middle).sort((a, b) => a - b);
    return {off: lines.map(middle).sort((a, b) => a - b).map((x, i) => Math.abs(x - marks[i])),
            crossed: lines.filter((line) => names.some((name) => at(name).left < middle(line) - 1 && at(name).right > middle(line) + 1 && at(name).top > at(line).top && at(name).right < at(all).right - 40)).length,
            out: names.filter((name) => at(name).right > at(all).right || at(name).left < at(all).left).length};
  });
  for (const width of [390, 1200]) {
    await page.setViewportSize({width, height: 900});
    await page.waitForTimeout(300);
    const {off, crossed, out} = await ways();
    assert.equal(off.length, 4);
    assert.ok(Math.max(...off) < 2, `names lead ${off} px past their marks at ${width}`);
    assert.deepEqual({crossed, out}, {crossed: 0, out: 0}, `names of guesses at ${width}`);
  }
  assert.equal(await comment.isVisible(), true);
  for (const words of ["bide levers", "--futures", "every 0", "uncertain\" part"])
    assert.ok(!(await page.locator(".step[open] .output > :not(details)").allInnerTexts()).join().includes(words), `the class reads "${words}"`);
  // A projector: letters of 18 px at least, in words and charts; what the step asks for is in sight.
  const smallest = await page.evaluate(() => {
    const out = [];
    for (const each of document.querySelectorAll(".lesson *")) {
      if (!each.checkVisibility() || ![...each.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim()) || ["STYLE", "SCRIPT"].includes(each.tagName.toUpperCase())) continue;
      const svg = each.closest("svg"), scale = svg ? svg.getBoundingClientRect().width / svg.width.baseVal.value : 1;
      out.push([Number.parseFloat(getComputedStyle(each).fontSize) * scale, each.textContent.trim().slice(0, 40)]);
    }
    return out.sort((a, b) => a[0] - b[0])[0];
  });
  assert.ok(smallest[0] >= 17.9, `letters of ${smallest[0]} px: ${smallest[1]}`);
  await page.waitForFunction(() => Math.abs(document.querySelector(".step[open] .output").getBoundingClientRect().top) < 200);
  await page.screenshot({path: "page_lesson.png"});
  await saved_drawing(page, page.locator(".step[open] .output"), "Option 1: never bails");
  // What was begun goes on where it was after leaving; after opening the page again too, but for the guesses, whose names
  // are nobody's to keep: a link that is asked for brings them.
  const same = async (on, times, words, where) => {
    assert.equal(await on.locator(".step[open] h4").innerText().then((text) => text.slice(0, 15)), "3 of 6. Bailing", where);
    assert.equal(await on.locator(".step[open] .guess li").count(), words, where);
    await on.getByRole("button", {name: "1. Ask first"}).click();
    assert.equal(await on.locator(".step[open] .guess li").count(), times, where);
    if (times) await on.getByRole("button", {name: "3. Bailing"}).click();
  };
  await leave();
  assert.equal(await page.locator("#sentence").isVisible(), true);
  assert.equal(await page.locator(".lesson").count(), 0, "the lesson stays on the page");
  await page.getByRole("button", {name: "The wet floor"}).click();
  await same(page, 4, 1, "begun again");
  await leave();
  assert.ok(!Buffer.from(page.url().split("&l=")[1], "base64url").toString().includes("Ann"), "a name stands in the address");
  const copied = async () => {
    await page.getByRole("button", {name: "Copy a link"}).click();
    await page.waitForSelector("#panel p[role=status]:not(:empty)");
    return page.locator("#panel p[role=status]").innerText();
  };
  await page.evaluate(() => { navigator.clipboard.writeText = async (text) => { globalThis.copied = text; }; });
  assert.match(await copied(), /^The link is copied\. .*guesses and names\.$/);
  const link = new URL(await page.evaluate(() => globalThis.copied)).hash;
  await page.evaluate(() => { navigator.clipboard.writeText = async () => { throw new Error("no"); }; });
  assert.match(await copied(), /take the link from here/);
  assert.equal(new URL(await page.getByLabel("The link").inputValue()).hash, link);
  await page.getByRole("button", {name: "The wet floor"}).click();
  const other = await open(page.context().browser(), link);
  await other.getByRole("button", {name: "The wet floor"}).click();
  await same(other, 4, 1, "in a link");
  await other.context().close();
  await page.reload();
  await settled(page);
  await page.waitForSelector(".lesson");
  await same(page, 0, 0, "after opening the page again");
  await page.getByRole("button", {name: "Begin again"}).click();
  assert.equal(await guesses.count(), 0);
  await leave();
  // Odds in the lesson, counted from now, in words only.
  await page.getByRole("button", {name: "Ten at night"}).click();
  assert.equal(await time.count(), 0, "a question in words asks for hours");
  await guess("", "how they came aboard");
  await next.click();
  await asks.last().click();
  await page.waitForSelector(".lesson .output .guessed", {timeout: 240_000});
  const night = await page.locator(".step[open] .output").innerText();
  assert.match(night, /200 possible futures|200 futures/);
  assert.match(night, /From now on\s+Share of futures[\s\S]*now\s+\d+ %[^\n]*29 Nov 23:00 UTC \(22:00 local\)[\s\S]*24 h\s+\d+ %[^\n]*30 Nov 23:00 UTC/);
  await leave();
  // Every command of every lesson can be asked here.
  for (const name of names) {
    await page.getByRole("button", {name, exact: true}).click();
    await page.locator(".steps button").first().click();
    if (await guesses.count() === 0) await guess((await time.count()) ? "1" : "", "somebody");
    const steps = await page.locator(".steps button").all();
    let commands = 0;
    for (const step of steps) {
      await step.click();
      commands += await page.locator(".step[open] .asked").count();
    }
    assert.ok(commands > 1, `${name} asks nothing`);
    assert.equal(await page.getByText("With the program only").count(), 0, `${name}: a command that the page cannot ask`);
    await leave();
  }
  clean("lessons");
}

// A drawing that was saved names its series and says what it is of.
async function saved_drawing(page, place, of) {
  const figure = place.locator("figure.chart").first();
  const names = await figure.evaluate((each) => JSON.parse(each.querySelector('script[type="application/json"]').textContent).series.map((series) => series.name));
  const [download] = await Promise.all([page.waitForEvent("download"), figure.getByRole("button", {name: "Save as SVG"}).click()]);
  const texts = texts_of(readFileSync(await download.path(), "utf8"));
  for (const name of names) assert.ok(texts.includes(name), `the saved legend has no "${name}"`);
  assert.ok(texts.join(" ").includes(of), `the saved drawing does not say "${of}"`);
}
const texts_of = (svg) => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text);

// A phone's first screen: until when, one picture, what buys most; words and their punctuation together.
async function first_screen(page) {
  const high = 844;
  await page.setViewportSize({width: 390, height: high});
  await page.evaluate(() => window.scrollTo(0, 0));
  await page.waitForTimeout(300);
  const ends = await page.evaluate(() => {
    const bottom = (each) => each.getBoundingClientRect().bottom;
    const [facts, more] = document.querySelectorAll("#answer dl.facts");
    return {until: bottom(facts), picture: bottom(document.querySelector("#answer .plot svg")),
            buys: Math.min(...[...more.children].map((each) => each.getBoundingClientRect().top))};
  });
  measured["phone: end of until when, of the picture, start of what buys most, px of 844"] = ends.until;
  measured["  picture"] = ends.picture;
  measured["  what buys most"] = ends.buys;
  assert.ok(ends.until < ends.picture && ends.picture < ends.buys && ends.buys < high - 8, JSON.stringify(ends));
  const astray = await page.evaluate(() => [...document.querySelectorAll("#sentence .held")].flatMap((each) => {
    const mark = [...each.childNodes].find((node) => node.nodeType === 3);
    if (!mark) return [];
    const before = mark.previousElementSibling.getBoundingClientRect();
    const range = document.createRange();
    range.selectNode(mark);
    const at = range.getBoundingClientRect();
    // The way to a source is easier to hit than it looks: its box reaches under what follows.
    return at.left - before.right > 4 || at.left < before.left || at.top > before.bottom ? [`${each.textContent} ${at.left - before.right}`] : [];
  }));
  assert.deepEqual(astray, [], "punctuation away from its word");
  await page.screenshot({path: "page_phone.png"});
}

const no_sideways = async (page, widths) => {
  const unfold = (open) => page.evaluate((to) => document.querySelectorAll("details").forEach((each) => { each.open = to; }), open);
  for (const width of widths) {
    await page.setViewportSize({width, height: 900});
    await unfold(true);
    await page.waitForTimeout(300);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.equal(sideways, 0, `${sideways} px to scroll sideways at ${width}`);
    await unfold(false);
    await page.screenshot({path: `page_${width}.png`, fullPage: true, timeout: 120_000});
  }
};
const brightness_of = (page) => page.evaluate(() => getComputedStyle(document.body).backgroundColor.match(/\d+/g).map(Number).reduce((a, b) => a + b) / 3);

async function screens(page) {
  const brightness = () => brightness_of(page);
  await first_screen(page);
  await no_sideways(page, [1920, 1200, 1024, 768, 390]);
  await page.setViewportSize({width: 1200, height: 900});
  for (const name of ["screen", "scrolled"]) {
    await page.evaluate((by) => window.scrollTo(0, by), name === "screen" ? 0 : 700);
    await page.screenshot({path: `page_${name}.png`});
  }
  const light = await brightness();
  await page.emulateMedia({colorScheme: "dark"});
  const dark = await brightness();
  assert.ok(light > 200 && dark < 60, `background ${light} by day, ${dark} by night`);
  await page.evaluate(() => window.scrollTo(0, 0));
  await page.screenshot({path: "page_dark.png"});
  await page.emulateMedia({media: "print", colorScheme: "dark"});
  assert.ok(await brightness() > 200, "dark paper");
  assert.equal(await page.locator("#sheets").isVisible(), true);
  assert.equal(await page.locator("#cautions .notice").isVisible(), true);
  await page.emulateMedia({media: null, colorScheme: null});
}

async function screens_in_firefox(page) {
  await first_screen(page);
  await no_sideways(page, [390, 1200]);
}

// Firefox takes dark from a setting; its paper is white all the same.
async function dark_in_firefox() {
  const browser = await playwright._bidiFirefox.launch({executablePath: firefox, headless: true, firefoxUserPrefs: {"layout.css.prefers-color-scheme.content-override": 0}});
  try {
    const page = await open(browser);
    const dark = await brightness_of(page);
    assert.ok(dark < 60, `background ${dark} by night`);
    await page.screenshot({path: "page_dark_firefox.png"});
    await page.evaluate(() => document.body.classList.add("sheets-alone"));
    await page.pdf({path: "page_firefox.pdf"});
    assert.equal(pages_in("page_firefox.pdf"), 2, "card and list on paper");
    clean("dark and paper in Firefox");
  } finally {
    await browser.close();
  }
}

async function in_chromium() {
  const browser = await playwright.chromium.launch({executablePath: chromium, args: ["--no-sandbox"]});
  try {
    const page = await opens(browser, "Chromium");
    await controls(page);
    await by_keyboard(page);
    await sources(page, true);
    await changes(page, "Chromium");
    await given_up(page);
    await cut_off(page);
    await worker_dies(page);
    await levers_and_beside(page);
    await futures(page, "Chromium");
    await screens(page);
    await told_at_once(page);
    await on_paper(page);
    await refusals(page);
    await steady(page);
    await lesson(page);
    await dropped(page);
    await let_go(page);
    await hostile(page);
    await files_out(page);
    await same_results(page);
    await page.context().close();
  } finally {
    await browser.close();
  }
}

// Debian's Firefox speaks WebDriver BiDi.
async function in_firefox() {
  const browser = await playwright._bidiFirefox.launch({executablePath: firefox, headless: true});
  try {
    const page = await opens(browser, "Firefox");
    await controls(page);
    await sources(page, false);
    await changes(page, "Firefox");
    await given_up(page);
    await cut_off(page);
    await worker_dies(page);
    await refusals(page);
    await let_go(page);
    await screens_in_firefox(page);
    await same_results(page);
    await futures(page, "Firefox");
    clean("Firefox");
  } finally {
    await browser.close();
  }
}

await in_chromium();
await asks_nobody((port) => playwright.chromium.launch({executablePath: chromium, args: ["--no-sandbox"], proxy: {server: `http://127.0.0.1:${port}`}}), "Chromium");
if (firefox) {
  await in_firefox();
  await dark_in_firefox();
  await asks_nobody((port) => playwright._bidiFirefox.launch({executablePath: firefox, headless: true, firefoxUserPrefs: {
    "network.proxy.type": 1, "network.proxy.http": "127.0.0.1", "network.proxy.http_port": port, "network.proxy.ssl": "127.0.0.1", "network.proxy.ssl_port": port}}), "Firefox");
}
measured["size, MB"] = statSync(file).size / 1e6;
for (const [what, value] of Object.entries(measured)) console.log(`${what}: ${Number(value.toPrecision(3))}`);
