// Looks at pages as a reader's browser does.   Usage: node look.mjs BROWSER PAGE...
// Screenshots and a print of each page stay beside it, for people to look at.
import {strict as assert} from "node:assert";
import {readFileSync} from "node:fs";
import {resolve} from "node:path";
import {pathToFileURL} from "node:url";
import {chromium} from "playwright-core";

import {pages_in} from "./paper.mjs";

const [executablePath, ...pages] = process.argv.slice(2);
assert.ok(pages.length > 0, "no page to look at");

// What each drawing shows, counted in the page: marks of every series beside the points it was given.
const drawings = () => [...document.querySelectorAll("figure.chart")].map((figure) => {
  const data = JSON.parse(figure.querySelector('script[type="application/json"]').textContent);
  const svg = figure.querySelector(".plot svg");
  const given = (series) => series.points.filter(([, y]) => y !== null).length;
  const spread = (series) => series.points.filter(([, , low, high]) => low != null && high != null).length;
  const children = (selector) => svg.querySelectorAll(`${selector} > *`).length;
  const corners = (selector) => [...svg.querySelectorAll(`${selector} path`)]
    .map((path) => path.getAttribute("d")).join("").split(/[ML]/).length - 1;
  return {
    role: svg.getAttribute("role"), sentence: svg.getAttribute("aria-label"), told: data.sentence,
    legend: figure.querySelectorAll(".legend li").length, all: data.series.length,
    rows: figure.querySelectorAll("details tbody tr").length,
    places: new Set(data.series.flatMap((series) => series.points.map(([x]) => x))).size,
    columns: figure.querySelectorAll("details thead th").length,
    series: data.series.map((series, i) => {
      const at = `.${series.kind}.series-${i}`;
      const drawn = {line: () => corners(at), band: () => corners(at) / 2, marks: () => children(at),
                     bars: () => children(at), points: () => children(at), spans: () => children(at)}[series.kind]();
      const wanted = {band: spread(series), spans: spread(series), marks: series.points.length}[series.kind] ?? given(series);
      const whiskers = ["points", "bars"].includes(series.kind)
        ? [svg.querySelectorAll(`.spread.series-${i} line`).length, spread(series)] : [0, 0];
      return {kind: series.kind, drawn, wanted, whiskers};
    })
  };
});

// Labels of axes that lie on one another, as the charts stand on the screen or on paper.
const crowded = () => [...document.querySelectorAll("figure.chart .plot svg")].flatMap((svg) => {
  const labels = [...svg.querySelectorAll("[aria-label$='axis tick label'] text")]
    .map((text) => ({text: text.textContent, box: text.getBoundingClientRect()})).filter(({box}) => box.width > 0);
  const letter = 8;  // px, the height of a digit
  return labels.flatMap((a, i) => labels.slice(i + 1)
    .filter((b) => a.box.left < b.box.right && b.box.left < a.box.right
                   && Math.abs(a.box.top + a.box.bottom - b.box.top - b.box.bottom) < 2 * letter)
    .map((b) => `${a.text} on ${b.text}`));
});

const brightness = () => {
  const [r, g, b] = getComputedStyle(document.body).backgroundColor.match(/\d+/g).map(Number);
  return (r + g + b) / 3;
};

// The texts of a saved drawing, read as bytes.
const saved_texts = (bytes) => [...Buffer.from(bytes, "latin1").toString("utf8").matchAll(/<text[^>]*>([^<]*)<\/text>/g)]
  .map(([, text]) => text.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&amp;", "&"));

async function look(browser, path) {
  const url = pathToFileURL(resolve(path)).href;
  const stem = path.replace(/\.html$/, "");
  const wrong = [];
  const context = await browser.newContext({viewport: {width: 1200, height: 900}});
  const page = await context.newPage();
  page.on("console", (message) => { if (["error", "warning"].includes(message.type())) wrong.push(message.text()); });
  page.on("pageerror", (error) => wrong.push(String(error)));
  const of_its_own = /^(blob|data):/;  // a chart that is being saved
  page.on("request", (request) => { if (request.url() !== url && !of_its_own.test(request.url())) wrong.push(`asks for ${request.url()}`); });
  await page.goto(url);
  // A folded chart is drawn when it is opened.
  await page.evaluate(() => document.querySelectorAll("details.folded").forEach((each) => { each.open = true; }));
  const scripts = await page.evaluate(() => document.scripts.length);

  let charts = 0, points = 0, of_chart = [];
  for (const [name, width] of [["desktop", 1200], ["phone", 390]]) {
    await page.setViewportSize({width, height: 900});
    await page.waitForTimeout(200);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.equal(sideways, 0, `${path}: ${sideways} px to scroll sideways at ${width}`);
    const seen = await page.evaluate(drawings);
    charts = seen.length;
    of_chart = seen.map((chart) => chart.series.reduce((sum, series) => sum + series.wanted, 0));
    assert.ok(charts > 0, `${path}: no chart`);
    assert.equal(scripts, charts + 1, `${path}: scripts`);
    for (const [i, chart] of seen.entries()) {
      const where = `${path}, chart ${i + 1} at ${width}`;
      assert.equal(chart.role, "img", where);
      assert.ok(chart.told.length > 0 && chart.sentence === chart.told, `${where}: sentence`);
      assert.equal(chart.legend, chart.all, `${where}: legend`);
      assert.ok(chart.rows === chart.places && chart.rows > 0, `${where}: ${chart.rows} rows for ${chart.places} places`);
      assert.equal(chart.columns, chart.all + 1, `${where}: columns`);
      for (const series of chart.series) {
        assert.equal(series.drawn, series.wanted, `${where}: ${series.kind}`);
        assert.equal(series.whiskers[0], series.whiskers[1], `${where}: whiskers of ${series.kind}`);
        points += series.drawn;
      }
    }
    assert.deepEqual(await page.evaluate(crowded), [], `${path} at ${width}: labels`);
    await page.screenshot({path: `${stem}_${name}.png`, fullPage: true});
  }

  // Values by keyboard and by pointer.
  await page.setViewportSize({width: 1200, height: 900});
  for (const [i, figure] of (await page.locator("figure.chart").all()).entries()) {
    const plot = figure.locator(".plot"), reading = figure.locator(".reading");
    await plot.focus();
    const first = await reading.textContent();
    await page.keyboard.press("ArrowRight");
    const second = await reading.textContent();
    assert.ok(first.length > 0 && second.length > 0, `${path}: focus reads nothing out`);
    await page.keyboard.press("End");
    const last = await reading.textContent();
    await page.keyboard.press("ArrowDown");  // from the last it may come round to the first
    const others = [second, last, await reading.textContent()].filter((text) => text !== first);
    if (of_chart[i] > 1) assert.ok(others.length > 0, `${path}: keys read out nothing else`);
    const cursor = await plot.locator(".cursor").boundingBox();
    await plot.blur();
    assert.equal(await reading.textContent(), "", `${path}: the reading stays`);
    await plot.scrollIntoViewIfNeeded();
    const box = await plot.boundingBox();
    assert.ok(cursor && box, path);
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, {steps: 4});
    await page.mouse.move(0, 0);
  }

  // A chart is saved with one click, as a drawing that needs nothing else.
  for (const [kind, begins] of [["SVG", "<svg"], ["PNG", "\x89PNG"]]) {
    const waiting = page.waitForEvent("download");
    await page.getByRole("button", {name: `Save as ${kind}`}).first().click();
    const saved = readFileSync(await (await waiting).path(), "latin1");
    assert.ok(saved.startsWith(begins), `${path}: saved as ${kind}: ${saved.slice(0, 20)}`);
    if (kind === "PNG") continue;
    assert.ok(saved.includes("Planning and training aid") && saved.includes("Never a reason to"), `${path}: no notice`);
    assert.ok(!/var\(|currentColor|<style|<script/.test(saved), `${path}: the drawing leans on the page`);
    const texts = saved_texts(saved), names = await page.evaluate(() =>
      JSON.parse(document.querySelector('figure.chart script[type="application/json"]').textContent).series.map((series) => series.name));
    for (const name of names) assert.ok(texts.includes(name), `${path}: the saved legend has no "${name}" among ${texts.slice(0, 6).join(" | ").slice(0, 200)}`);
    assert.ok(texts.join(" ").includes(await page.title()), `${path}: the saved drawing does not say what it is of`);
  }

  // No text became a part of the page, and a script slipped into it would not run.
  assert.equal(await page.evaluate(() => window.injected), undefined, `${path}: injected`);
  assert.equal(await page.locator("img, iframe, object, link").count(), 0, `${path}: foreign elements`);
  assert.deepEqual(wrong, [], `${path}: errors or requests`);
  await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "window.injected = 4";
    document.body.append(script);
    script.remove();
  });
  assert.equal(await page.evaluate(() => window.injected), undefined, `${path}: the policy lets a script run`);
  assert.ok(wrong.splice(0).some((text) => text.includes("Content Security Policy")), `${path}: no policy spoke up`);

  const light = await page.evaluate(brightness);
  await page.emulateMedia({colorScheme: "dark"});
  const dark = await page.evaluate(brightness);
  assert.ok(light > 200 && dark < 60, `${path}: background ${light} by day, ${dark} by night`);
  await page.screenshot({path: `${stem}_dark.png`, fullPage: true});

  // On paper: light, and nothing folded takes up room.
  await page.emulateMedia({media: "print", colorScheme: "dark"});
  assert.ok(await page.evaluate(brightness) > 200, `${path}: dark paper`);
  assert.equal(await page.locator("details:visible").count(), 0, `${path}: folded tables on paper`);
  await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
  assert.deepEqual(await page.evaluate(crowded), [], `${path} on paper: labels`);
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({media: null, colorScheme: null});
  await page.pdf({path: `${stem}.pdf`, preferCSSPageSize: true});
  // A run is two sheets and two cards; a third sheet where hands, feet or fingers get too cold and are drawn.
  const sheets = pages_in(`${stem}.pdf`);
  const hands = await page.locator("section", {has: page.getByRole("heading", {name: "Hands and feet"})}).locator("> figure.chart").count();
  if (await page.getByRole("heading", {name: "Ration card"}).count() > 0)
    assert.ok(hands > 0 ? sheets === 4 || sheets === 5 : sheets === 4, `${path}: ${sheets} sheets, ${hands} charts of hands`);
  assert.deepEqual(wrong, [], `${path}: errors or requests`);
  await context.close();
  console.log(`${path}: ${charts} charts, ${points} marks`);
}

const browser = await chromium.launch({executablePath, args: ["--no-sandbox"]});
try {
  for (const page of pages) await look(browser, page);
} finally {
  await browser.close();
}
