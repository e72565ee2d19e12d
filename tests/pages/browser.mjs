// The pages in a real browser. Usage: browser.mjs SUITE PROGRAM SOURCE MODULES CHROMIUM
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";

const [suite, program, source, modules, chromiumPath] = process.argv.slice(2);
const require = createRequire(join(modules, "package.json"));
const { chromium } = require("playwright-core");
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const top = mkdtempSync(join(tmpdir(), "pages-"));

const DEMO = "demo/alderbrook", BOOKS = "tests/commands/field/all-books";

// A job run with changes, and the folder of its results. A change is [old text, new text].
function results(name, changes = {}, job = DEMO) {
  const folder = join(top, name);
  cpSync(join(source, job), folder, { recursive: true, filter: (path) => !path.endsWith("/out") });
  for (const [file, edits] of Object.entries(changes)) {
    let text = readFileSync(join(folder, file), "utf8");
    for (const [from, to] of edits) {
      assert.ok(from instanceof RegExp ? text.search(from) >= 0 : text.split(from).length === 2, `${file}: ${from}`);
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
  const few = { exclude: [["tbody tr:nth-child(n+6)"], ["#view .figures g:nth-child(n+2)"]] };
  const { violations } = await page.evaluate((context) => window.axe.run(context, { resultTypes: ["violations"],
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"] }), few);
  return violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 120)).join(" | ")}`);
}

const pages = (pdf) => Number(/Pages: +(\d+)/.exec(spawnSync("pdfinfo", [pdf], { encoding: "utf8" }).stdout)[1]);

// Millimetres of the bar on a print's last page: the dark run nearest to 100 mm.
function barLength(pdf) {
  const file = join(top, "print.pdf");
  writeFileSync(file, pdf);
  const { stdout } = spawnSync("pdftoppm", ["-gray", "-r", "254", "-f", String(pages(file)), file], { maxBuffer: 1 << 30 });
  const head = /^P5\n(\d+) (\d+)\n255\n/.exec(stdout.subarray(0, 40).toString("latin1"));
  const width = Number(head[1]), size = head[0].length + width * Number(head[2]);
  const dots = stdout.subarray(stdout.length - size + head[0].length);
  let best = 0;
  for (let i = 0, run = 0; i < dots.length; ++i) {
    run = i % width && dots[i] < 128 ? run + 1 : 0;
    if (Math.abs(run - 1000) < Math.abs(best - 1000)) best = run;
  }
  return best / 10;
}

const text = (page, id) => page.locator("#" + id).innerText();

// The place of a cell in the window, and what is written there; `show` brings it into view first.
const place = (page, name, show) => page.evaluate(({ wanted, show }) => {
  const { cells, plan } = JSON.parse(document.getElementById("data").textContent);
  const [, column, row] = cells.find((c) => c[0] === wanted);
  const view = document.getElementById("view"), ground = view.querySelector(".ground");
  const scale = ground.clientWidth / ground.querySelector("svg").viewBox.baseVal.width;
  const x = scale * (plan.x + (column - plan.column + 0.5) * plan.cell);
  const y = scale * (plan.y + (row - plan.row + 0.5) * plan.cell);
  if (show) {
    view.scrollIntoView({ block: "center" });
    view.scrollTo(x - view.clientWidth / 2, y - view.clientHeight / 2);
  }
  const box = ground.getBoundingClientRect();
  return { x: box.left + x, y: box.top + y };
}, { wanted: name, show });
const shifts = (page) => page.evaluate(() => {
  window.shift = 0;
  new PerformanceObserver((list) => { for (const entry of list.getEntries()) window.shift += entry.value; })
    .observe({ type: "layout-shift", buffered: true });
});

const suites = {
  // every page opens without a complaint or a request, fits a phone, reads well and prints
  async every() {
    const folders = [results("every"), results("books", {}, BOOKS)];
    const pages = folders.flatMap((out) => readdirSync(out).filter((name) => name.endsWith(".html")).map((name) => join(out, name)));
    const names = pages.map((path) => path.split("/").at(-1));
    for (const wanted of ["base", "dig", "field", "fill", "ground", "pegs"])
      assert.ok(names.includes(wanted + ".html"), `${wanted}.html among ${names}`);
    for (const path of pages)
      for (const width of [360, 1280]) {
        const name = path.split("/").at(-1);
        const { page, told, close } = await open(path, { width });
        await shifts(page);
        assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width, `${name} fits ${width} px`);
        await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done))));
        assert.equal(await page.evaluate(() => window.shift), 0, `${name} stays in its place while it loads at ${width} px`);
        await page.evaluate(() => { for (const part of document.querySelectorAll("details")) part.open = true; });
        assert.deepEqual(await accessibility(page), [], `${name} at ${width} px`);
        await page.click("#contrast");
        await page.click("#large");
        assert.deepEqual(await accessibility(page), [], `${name} at ${width} px, high contrast, large text`);
        assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), width, `${name} fits in large text`);
        await page.click("#large");
        const pdf = await page.pdf({ preferCSSPageSize: true });
        if (width > 1000) assert.ok(Math.abs(barLength(pdf) - 100) < 0.5, `${name}: the bar is ${barLength(pdf)} mm in print`);
        assert.deepEqual(told, [], name);
        await close();
      }
    console.log(`${pages.length} pages: ${names.join(" ")}`);
  },

  // tap, keys, staff, marks
  async dig() {
    const out = results("dig");
    const result = readFileSync(join(out, "cells.csv"), "utf8").split(/\r?\n/).map((line) => line.split(","));
    const column = (name) => result[0].indexOf(name);
    const row = result.find((line) => line[0] === "c3r2");
    const { page, told, close } = await open(join(out, "dig.html"));
    await shifts(page);
    const at = await place(page, "c3r2", true);
    const written = await page.evaluate(({ x, y }) => document.elementFromPoint(x, y).textContent, at);
    await page.touchscreen.tap(at.x, at.y);
    assert.equal(await text(page, "o-cell"), "c3r2");
    for (const [id, name, decimals] of [["o-cut", "cut_at_centre", 2], ["o-dig", "dig_level", 3], ["o-ground", "ground", 3],
      ["o-staff", "staff_reading", 3], ["o-along", "along_ab", 2], ["o-across", "across_ab", 2]])
      assert.ok(Math.abs(Number(await text(page, id)) - Number(row[column(name)])) <= 0.50001 * 10 ** -decimals, name);
    assert.equal(await text(page, "o-cut"), written, "the figure under the finger");
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

  // whatever a label says, it is a label: on every page and, as plain text, on every sheet
  async labels() {
    const hostile = `</script><script>window.caught=1</script><img src=x onerror=window.caught=2>"'&amp; \u202Eאבג`;
    const shown = hostile.replace("\u202E", "\uFFFD");  // it would turn the figures after it
    const short = "<b onmouseover=window.caught=3>", toml = JSON.stringify(hostile).replace("\u202E", "\\u202E");
    const csv = `"${hostile.replaceAll('"', '""')}"`;
    const outs = [results("labels", {
      "job.toml": [[`name = "Alderbrook school, car park tank"   # invented`, `name = ${toml}\nrevision = ${toml}`],
        [`name = "inlet"`, `name = "${short}in"`], [`name = "access"`, `name = "${short}shaft"`],
        [`stations = ["CP1"]`, `stations = ['${short}']`], [/batter_given_by = ".*"/, `batter_given_by = ${toml}`]],
      "control.csv": [["CP1,", short + ","]],
      "boundary.csv": [[/^boundary,/gm, csv + ","]],
      "services.csv": [[/^water main,/gm, csv + ","]],
      "kerb.csv": [[/^kerb top,/gm, csv + ","]],
      "as-dug.csv": [["B43,", csv + ","]],
    }), results("labels-books", { "job.toml": [[/^name *=.*$/m, `name = ${toml}`]] }, BOOKS)];
    for (const out of outs) {
      for (const name of readdirSync(out).filter((file) => file.endsWith(".html"))) {
        const { page, told, close } = await open(join(out, name), { width: 1280 });
        assert.equal(await page.locator(".job").textContent(), shown, name);
        await page.evaluate(() => { for (const part of document.querySelectorAll("details")) part.open = true; });
        assert.equal(await page.evaluate(() => window.caught), undefined, name);
        assert.equal(await page.locator("img, b[onmouseover], [onmouseover], [onerror], main script, svg script").count(), 0, name);
        assert.deepEqual(told, [], name);
        await close();
      }
      for (const name of readdirSync(out).filter((file) => file.endsWith(".pdf"))) {
        const bytes = readFileSync(join(out, name), "latin1");
        for (const word of ["/JavaScript", "/JS", "/Launch", "/OpenAction", "/URI", "/EmbeddedFile"])
          assert.ok(!bytes.includes(word), `${name}: ${word}`);
        const read = spawnSync("pdftotext", [join(out, name), "-"], { encoding: "utf8" }).stdout;
        assert.ok(read.replace(/\s/g, "").includes("<script>window.caught=1</script>"), `${name}: the label stands there as text`);
      }
    }
    const said = async (file, words) => {
      const { page, close } = await open(join(outs[0], file));
      const all = await page.evaluate(() => document.body.textContent);
      for (const word of words) assert.ok(all.includes(word), `${file}: ${word}`);
      await close();
    };
    await said("dig.html", [shown]);
    await said("pegs.html", [short, short + "in", short + "shaft"]);
    await said("ground.html", [shown]);
    await said("base.html", [shown]);
  },

  // 10,000 cells answer like few. How fast is printed, not judged, as others may be at work on the machine: of each kind
  // of work the median of several times, from the event to the end of the frame that shows it.
  async large() {
    const out = results("large", { "job.toml": [[/^cell +=.*$/m, "cell = 0.2"]] });
    const { page, told, close } = await open(join(out, "dig.html"));
    const names = await page.evaluate(() => JSON.parse(document.getElementById("data").textContent).cells.map((c) => c[0]));
    assert.ok(names.length > 10000, `${names.length} cells`);
    await page.focus("#view");
    const times = {};
    const timed = async (what, work) => {
      const ms = await page.evaluate(async (code) => {
        const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
        const work = new Function(code);  // the page's own policy forbids this once it runs by itself
        await frame();
        const start = performance.now();
        work();
        await frame();
        return performance.now() - start;
      }, work);
      (times[what] ??= []).push(ms);
    };
    const press = (key) => `document.getElementById("view").dispatchEvent(new KeyboardEvent("keydown", {key: "${key}", bubbles: true}))`;
    for (let turn = 1; turn <= 7; ++turn) {
      await timed("nothing", "");
      const name = names[Math.floor(names.length * turn / 9)], at = await place(page, name, false);
      await timed("tap", `document.querySelector(".ground").dispatchEvent(new MouseEvent("click", {bubbles: true, clientX: ${at.x}, clientY: ${at.y}}))`);
      assert.equal(await text(page, "o-cell"), name);
      await timed("first arrow", press("ArrowRight"));  // brings a far cell into view
      for (const key of ["ArrowDown", "ArrowUp", "ArrowLeft"]) await timed("arrow", press(key));
      assert.equal(await text(page, "o-cell"), name, "there and back again");
      await timed("mark", press(" "));
      assert.match(await text(page, "count"), new RegExp(`^${turn} of `));
      await timed("staff", `const read = document.getElementById("read"); read.value = "1.0"; read.dispatchEvent(new Event("input"))`);
      await timed("zoom in", `document.getElementById("nearer").click()`);
      await timed("zoom out", `document.getElementById("farther").click()`);
      await timed("whole pit", `document.getElementById("whole").click()`);
      for (let n = 0; n < 9; ++n) await page.evaluate(() => document.getElementById("nearer").click());
    }
    const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
    const crowd = Math.max(1, loadavg()[0] / cpus().length);  // others at work on the same processors
    console.log(`${names.length} cells, ${crowd.toFixed(1)} to a processor: ` + Object.entries(times).map(([what, list]) => `${what} ${median(list).toFixed(0)} ms`).join(", "));
    assert.deepEqual(told, []);
    await close();
  },
};

try {
  await suites[suite]();
} finally {
  await browser.close();
  rmSync(top, { recursive: true, force: true });
}
