// Measures the page in Chromium against the quality targets U7 to U10 and writes one JSON value to standard output.
// With --write the value is also kept in docs/measurements. A missed gate ends with code 1.
import { mkdir, writeFile } from "node:fs/promises";
import os from "node:os";
import { kept, newProfile, open, openBrowser, PHONE, ready, slow, startProgram } from "./harness.js";

const REPEATS = 5;
const INTERACTIONS = 100;
// Entries shorter than this are not reported by the browser, which rounds to 8 ms [ms].
const SHORTEST_EVENT_MS = 16;
// How long to go on watching after the page is ready, for paints and shifts that come late [ms].
const AFTERMATH_MS = 1500;

const sorted = (values) => [...values].sort((one, other) => one - other);
const median = (values) => sorted(values)[Math.floor(values.length / 2)];
const percentile = (values, share) => sorted(values)[Math.max(0, Math.ceil(values.length * share) - 1)];
const rounded = (value) => Math.round(value * 1000) / 1000;

/** Collects paints, long tasks, shifts and interactions from the first moment of the page. */
function collect(shortestEventMs) {
  const seen = { largestPaintMs: 0, firstPaintMs: 0, longTasks: [], shift: 0, interactions: {} };
  window.measured = seen;
  const on = (type, each, options = {}) =>
    new PerformanceObserver((list) => list.getEntries().forEach(each)).observe({ type, buffered: true, ...options });
  on("largest-contentful-paint", (entry) => { seen.largestPaintMs = entry.startTime; });
  on("paint", (entry) => { if (entry.name === "first-contentful-paint") seen.firstPaintMs = entry.startTime; });
  on("longtask", (entry) => seen.longTasks.push({ start: entry.startTime, ms: entry.duration }));
  on("layout-shift", (entry) => { if (!entry.hadRecentInput) seen.shift += entry.value; });
  on("event", (entry) => {
    if (!entry.interactionId) return;
    seen.interactions[entry.interactionId] = Math.max(seen.interactions[entry.interactionId] ?? 0, entry.duration);
  }, { durationThreshold: shortestEventMs });
}

async function newPage(context, conditions) {
  const page = await context.newPage();
  await page.addInitScript(collect, SHORTEST_EVENT_MS);
  await slow(page, conditions);
  return page;
}

const readyMs = (page) => page.evaluate(() => performance.getEntriesByName("heapwright-ready")[0].startTime);
const measured = (page) => page.evaluate(() => window.measured);

/** First visits on slow 4G with a slowed processor. */
async function firstVisits(browser, address, cpu) {
  const visits = [];
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    const context = await browser.newContext(PHONE);
    const page = await newPage(context, { cpu, network: true });
    await open(page, address);
    await page.waitForTimeout(AFTERMATH_MS);
    const seen = await measured(page);
    const blocking = seen.longTasks.filter((task) => task.start >= seen.firstPaintMs).map((task) => task.ms - 50);
    visits.push({ largestPaintMs: seen.largestPaintMs, blockingMs: blocking.reduce((sum, ms) => sum + ms, 0), shift: seen.shift, readyMs: await readyMs(page) });
    await context.close();
  }
  return visits;
}

/** Taps every control in turn, and types into fields, until there were enough interactions. */
async function interactions(browser, address, cpu) {
  const context = await browser.newContext(PHONE);
  const page = await newPage(context, { cpu });
  await open(page, address);
  const before = (await measured(page)).longTasks.length;
  const controls = page.locator("button:enabled, a[href^='#'], a[href^='./'], input:enabled, select:enabled, summary");
  for (let done = 0; done < INTERACTIONS; done += 1) {
    const count = await controls.count();
    if (count === 0) throw new Error("the page has no control to interact with");
    const control = controls.nth(done % count);
    if (!(await control.isVisible())) continue;
    await control.tap();
    if (await control.evaluate((element) => element.matches("input[type=text]")).catch(() => false)) await page.keyboard.press("5");
  }
  await page.waitForTimeout(AFTERMATH_MS);
  const seen = await measured(page);
  const latencies = Object.values(seen.interactions);
  // What the browser did not report was shorter than the shortest that it reports.
  while (latencies.length < INTERACTIONS) latencies.push(SHORTEST_EVENT_MS);
  const longest = Math.max(0, ...seen.longTasks.slice(before).map((task) => task.ms));
  await context.close();
  return { latencyMs: percentile(latencies, 0.98), longestTaskMs: longest };
}

/** Starts again with the page kept on the device and nobody answering. */
async function repeatStarts(cpuFactors) {
  const profile = await newProfile();
  const program = await startProgram();
  const starts = {};
  try {
    const context = await profile.open(PHONE);
    const first = context.pages()[0];
    await open(first, program.address);
    await kept(first);
    await first.reload();
    await ready(first);
    await program.kill();
    for (const cpu of cpuFactors) {
      const times = [];
      for (let repeat = 0; repeat < REPEATS; repeat += 1) {
        const page = await newPage(context, { cpu });
        await open(page, program.address);
        times.push(await readyMs(page));
        await page.close();
      }
      starts[cpu] = median(times);
    }
    await context.close();
  } finally {
    await program.kill();
    await profile.remove();
  }
  return starts;
}

/** Time of a fixed piece of arithmetic at full speed, so that figures from other machines can be compared [ms]. */
async function calibration(browser) {
  const page = await browser.newPage();
  const times = [];
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    times.push(await page.evaluate(() => {
      const start = performance.now();
      let sum = 0;
      for (let step = 1; step < 20_000_000; step += 1) sum += Math.sqrt(step) % 3;
      return sum > 0 ? performance.now() - start : 0;
    }));
  }
  await page.close();
  return median(times);
}

const program = await startProgram();
const browser = await openBrowser();
const calibrationMs = await calibration(browser);
const visits = await firstVisits(browser, program.address, 4);
const taps4 = await interactions(browser, program.address, 4);
const taps16 = await interactions(browser, program.address, 16);
const version = browser.version();
await browser.close();
await program.kill();
const starts = await repeatStarts([4, 16]);

const figure = (id, what, value, unit, gate, aim) =>
  ({ id, what, value: rounded(value), unit, gate, aim, passes: gate === null || value <= gate });
const middle = (key) => median(visits.map((visit) => visit[key]));
const report = {
  browser: `Chromium ${version}`,
  cores: os.cpus().length,
  calibration_ms: rounded(calibrationMs),
  figures: [
    figure("U7", "largest paint, first visit, slow 4G, 4x, median of 5", middle("largestPaintMs"), "ms", 2500, 1800),
    figure("U7", "page ready, first visit, slow 4G, 4x, median of 5", middle("readyMs"), "ms", null, null),
    figure("U8", "blocking time, first visit, slow 4G, 4x, median of 5", middle("blockingMs"), "ms", 200, 100),
    figure("U8", "layout shift, first visit, median of 5", middle("shift"), "score", 0.1, 0.02),
    figure("U9", "98th percentile of 100 interactions, 4x", taps4.latencyMs, "ms", 200, 100),
    figure("U9", "98th percentile of 100 interactions, 16x", taps16.latencyMs, "ms", null, 200),
    figure("-", "longest task in use, 4x", taps4.longestTaskMs, "ms", 50, 50),
    figure("U10", "ready after a repeat start, nobody answering, 4x, median of 5", starts[4], "ms", 1000, 1000),
    figure("U10", "ready after a repeat start, nobody answering, 16x, median of 5", starts[16], "ms", null, 1000),
  ],
};
const text = `${JSON.stringify(report, null, 2)}\n`;
process.stdout.write(text);
if (process.argv.includes("--write")) {
  const folder = new URL("../../../docs/measurements/", import.meta.url);
  await mkdir(folder, { recursive: true });
  await writeFile(new URL("page.json", folder), text);
}
const missed = report.figures.filter((each) => !each.passes);
for (const each of missed) process.stderr.write(`${each.id} missed: ${each.what}: ${each.value} ${each.unit}, at most ${each.gate}\n`);
process.exitCode = missed.length === 0 ? 0 : 1;
