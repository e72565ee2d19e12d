// The pages in a real browser. Usage: browser.mjs SUITE PROGRAM SOURCE MODULES CHROMIUM
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";

const [suite, program, source, modules, chromiumPath] = process.argv.slice(2);
const require = createRequire(join(modules, "package.json"));
const { chromium } = require("playwright-core");
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const top = mkdtempSync(join(tmpdir(), "pages-"));

// The demo job run with changes, and the folder of its results.
function results(name, changes = {}) {
  const folder = join(top, name);
  cpSync(join(source, "demo/alderbrook"), folder, { recursive: true,
    filter: (path) => !path.endsWith("/alderbrook/out") });
  for (const [file, edits] of Object.entries(changes)) {
    let text = readFileSync(join(folder, file), "utf8");
    for (const [from, to] of edits) {
      assert.equal(text.split(from).length, 2, `${file}: "${from}" stands there once`);
      text = text.replace(from, () => to);
    }
    writeFileSync(join(folder, file), text);
  }
  const run = spawnSync(program, ["run", folder, "--quiet"], { encoding: "utf8" });
  assert.ok(run.status === 0 || run.status === 1, `${name}: exit ${run.status}: ${run.stderr}`);
  return join(folder, "out");
}

const browser = await chromium.launch({ executablePath: chromiumPath, args: ["--no-sandbox"] });

// Opens a page and keeps what it complains of and asks for.
async function open(file, { width = 360, height = 740 } = {}) {
  const context = await browser.newContext({ viewport: { width, height }, hasTouch: true, acceptDownloads: true });
  const page = await context.newPage();
  const told = [];
  page.on("console", (message) => { if (message.type() !== "log") told.push(message.text()); });
  page.on("pageerror", (error) => told.push(error.message));
  page.on("dialog", (dialog) => dialog.accept());
  page.on("request", (request) => {
    if (request.url() !== "file://" + file && !/^(data|blob):/.test(request.url())) told.push("asks for " + request.url());
  });
  await page.goto("file://" + file);
  return { page, told, close: () => context.close() };
}

// What the accessibility checker has to say, in lines.
async function accessibility(page) {
  await page.evaluate(axe);
  // of long lists and of the figures in the cells a few stand for all: the rest differ in digits alone
  const few = { exclude: [["tbody tr:nth-child(n+6)"], ["#view .figures g:nth-child(n+2)"], ["#view .cell:nth-child(n+9)"]] };
  const { violations } = await page.evaluate((context) => window.axe.run(context, { resultTypes: ["violations"],
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"] }), few);
  return violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 120)).join(" | ")}`);
}

const text = (page, id) => page.locator("#" + id).innerText();
const cell = (page, name) => page.evaluate((wanted) =>
  JSON.parse(document.getElementById("data").textContent).cells.findIndex((c) => c[0] === wanted), name);

const suites = {
  // every page opens without a complaint or a request, fits a phone, reads well and prints
  async every() {
    const out = results("every");
    const pages = readdirSync(out).filter((name) => name.endsWith(".html"));
    assert.ok(pages.length >= 3, `pages: ${pages}`);
    for (const name of pages)
      for (const width of [360, 1280]) {
        const { page, told, close } = await open(join(out, name), { width });
        assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width, `${name} fits ${width} px`);
        await page.evaluate(() => { for (const part of document.querySelectorAll("details")) part.open = true; });
        assert.deepEqual(await accessibility(page), [], `${name} at ${width} px`);
        await page.click("#contrast");
        await page.click("#large");
        assert.deepEqual(await accessibility(page), [], `${name} at ${width} px, high contrast, large text`);
        assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width, `${name} fits in large text`);
        const pdf = await page.pdf({ preferCSSPageSize: true });
        assert.equal(pdf.subarray(0, 5).toString(), "%PDF-", name);
        assert.deepEqual(told, [], name);
        await close();
      }
    console.log(`${pages.length} pages: ${pages.join(" ")}`);
  },

  // tap, keys, staff, marks
  async dig() {
    const out = results("dig");
    const result = readFileSync(join(out, "cells.csv"), "utf8").split(/\r?\n/).map((line) => line.split(","));
    const column = (name) => result[0].indexOf(name);
    const row = result.find((line) => line[0] === "c3r2");
    const { page, told, close } = await open(join(out, "dig.html"));
    await page.evaluate(() => {
      window.shift = 0;
      new PerformanceObserver((list) => { for (const entry of list.getEntries()) window.shift += entry.value; })
        .observe({ type: "layout-shift", buffered: true });
    });
    const i = await cell(page, "c3r2");
    await page.locator(`[data-i="${i}"]`).scrollIntoViewIfNeeded();
    await page.locator(`[data-i="${i}"] path`).first().tap();
    assert.equal(await text(page, "o-cell"), "c3r2");
    for (const [id, name, decimals] of [["o-cut", "cut_at_centre", 2], ["o-dig", "dig_level", 3], ["o-ground", "ground", 3],
      ["o-staff", "staff_reading", 3], ["o-along", "along_ab", 2], ["o-across", "across_ab", 2]])
      assert.ok(Math.abs(Number(await text(page, id)) - Number(row[column(name)])) <= 0.50001 * 10 ** -decimals, name);
    const wanted = Number(row[column("staff_reading")]), level = Number(row[column("dig_level")]);
    await page.fill("#read", (wanted - 0.34).toFixed(3));
    assert.match(await text(page, "answer"), /^dig 0\.34 more/);
    await page.fill("#read", (wanted + 0.05).toFixed(3).replace(".", ","));
    assert.match(await text(page, "answer"), /^0\.05 below dig level/);
    await page.fill("#instrument", (level + 1.5).toFixed(3));
    assert.equal(await text(page, "o-staff"), "1.500");
    await page.fill("#read", "1.2");
    assert.match(await text(page, "answer"), /^dig 0\.30 more/);
    await page.fill("#read", "1.2x");
    assert.equal(await text(page, "answer"), "That is not a number in metres.");
    await page.fill("#instrument", "");
    await page.focus("#view");
    for (const [key, name] of [["ArrowRight", "c4r2"], ["ArrowDown", "c4r3"], ["ArrowLeft", "c3r3"], ["ArrowUp", "c3r2"]]) {
      await page.keyboard.press(key);
      assert.equal(await text(page, "o-cell"), name);
      assert.match(await page.locator("#said").textContent(), new RegExp(`^cell ${name}, `));
    }
    await page.keyboard.press("Space");
    assert.equal(await page.getAttribute("#done", "aria-pressed"), "true");
    assert.match(await text(page, "count"), /^1 of /);
    await page.click("#nearer");
    assert.equal(await page.evaluate(() => window.shift), 0, "nothing moves on the phone");
    await page.reload();
    assert.match(await text(page, "count"), /^1 of /, "the mark is kept");
    assert.equal(await page.locator(".tick").count(), 1);
    const [download] = await Promise.all([page.waitForEvent("download"), page.click("#export")]);
    assert.match(readFileSync(await download.path(), "utf8"), /^cell,done\r\nc3r2,\d{4}-\d\d-\d\dT[\d:.]+Z\r\n$/);
    await page.click("#clear");
    assert.match(await text(page, "count"), /^0 of /);
    assert.deepEqual(told, []);
    await close();
  },

  // whatever a label says, it is a label
  async labels() {
    const hostile = `</script><script>window.caught=1</script><img src=x onerror=window.caught=2>"'&amp; \u202Eאבג`;
    const out = results("labels", {
      "job.toml": [[`name = "Alderbrook school, car park tank"   # invented`, `name = '''x'''`.replace("'''x'''",
        JSON.stringify(hostile).replace("\u202E", "\\u202E"))],
        [`name = "inlet"`, `name = "<b onmouseover=window.caught=3>in"`]] });
    for (const name of readdirSync(out).filter((file) => file.endsWith(".html"))) {
      const { page, told, close } = await open(join(out, name), { width: 1280 });
      assert.equal(await page.locator(".job").textContent(), hostile, name);
      assert.equal(await page.evaluate(() => window.caught), undefined, name);
      assert.equal(await page.locator("img, [onmouseover], [onerror]").count(), 0, name);
      assert.deepEqual(told, [], name);
      await close();
    }
  },

  // 10,000 cells: the work is asserted, the time is told
  async large() {
    const out = results("large", { "job.toml": [["cell    = 1.0", "cell    = 0.2"]] });
    const { page, told, close } = await open(join(out, "dig.html"));
    const cells = await page.locator("[data-i]").count();
    assert.ok(cells > 10000, `${cells} cells`);
    await page.focus("#view");
    const times = [];
    const timed = async (what, work) => {
      // from the event to the end of the frame that shows it
      const ms = await page.evaluate(async (code) => {
        const start = performance.now();
        new Function(code)();
        await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
        return performance.now() - start;
      }, work);
      times.push(`${what} ${ms.toFixed(0)} ms`);
    };
    const press = (key) => `document.getElementById("view").dispatchEvent(new KeyboardEvent("keydown", {key: "${key}", bubbles: true}))`;
    await timed("tap", `document.querySelector('[data-i="5000"] path').dispatchEvent(new MouseEvent("click", {bubbles: true}))`);
    const first = await text(page, "o-cell");
    for (const key of ["ArrowRight", "ArrowDown", "ArrowLeft", "ArrowUp", " "]) await timed(key, press(key));
    assert.equal(await text(page, "o-cell"), first, "there and back again");
    assert.match(await text(page, "count"), /^1 of /);
    await timed("staff", `const read = document.getElementById("read"); read.value = "1.0"; read.dispatchEvent(new Event("input"))`);
    await timed("zoom", `document.getElementById("nearer").click()`);
    assert.deepEqual(told, []);
    console.log(`${cells} cells: ${times.join(", ")}`);
    await close();
  },
};

try {
  await suites[suite]();
} finally {
  await browser.close();
  rmSync(top, { recursive: true, force: true });
}
