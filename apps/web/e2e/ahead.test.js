// Looking ahead: the simulated heap on its place, computed by a worker beside the page.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { describe, test } from "node:test";
import { AHEAD, all, banded, choose, compared, demoHeap, INSIDE, pictured, rows, RUNS_MS, whole } from "./ahead.js";
import { axe, kept, open, PHONE, PROGRAM, rig, sidewaysScroll, startProxy, THEMES, watch } from "./harness.js";
import { startHeap, toHeap } from "./journal.js";
import { plain, textOf } from "./keeper.js";
import { simulator } from "./simulator.js";

const EXAMPLES = new URL("../../../crates/wire/examples/", import.meta.url);

const our = rig(PHONE, 3 * RUNS_MS);
const { visiting } = our;

/** Numbers that lie apart by more than a share of their size, with where they stand. */
function apart(one, other, share, path = "") {
  if (typeof one === "number" && typeof other === "number") {
    return Math.abs(one - other) <= share * Math.max(Math.abs(one), Math.abs(other)) ? [] : [`${path}: ${one} and ${other}`];
  }
  if (one && other && typeof one === "object" && typeof other === "object") {
    const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
    return [...keys].flatMap((key) => apart(one[key], other[key], share, `${path}.${key}`));
  }
  return one === other ? [] : [`${path}: ${one} and ${other}`];
}

describe("the program and the page compute the same", () => {
  for (const file of readdirSync(EXAMPLES).filter((name) => name.startsWith("simulate-"))) {
    test(`${file}: to the last digit of the JSON, or to a part in 1e9`, async (run) => {
      const { module } = await simulator();
      const path = new URL(file, EXAMPLES).pathname;
      const here = JSON.parse(module.simulate(readFileSync(path, "utf8")));
      const there = JSON.parse(execFileSync(PROGRAM, ["simulate", "--json", "--file", path], { encoding: "utf8", maxBuffer: 1 << 28 }));
      assert.ok(here.core_temperature_c.length > 5);
      assert.deepEqual(apart(here, there, 1e-9), []);
      const other = apart(here, there, 0).length;
      run.diagnostic(other === 0 ? "all bits are equal" : `${other} numbers differ in their last digits`);
    });
  }

  test("a case that is none is told in a sentence", async () => {
    const { module } = await simulator();
    assert.throws(() => module.simulate("{}"), (told) => typeof told === "string" && told.length > 10);
  });
});

describe("looking ahead", () => {
  visiting("appears for a heap of the demo garden: sentences, picture, bands, weather", async (page) => {
    await demoHeap(page);
    await pictured(page);
    assert.match(await textOf(page.locator(`${AHEAD} .option-name`)), /^Leave it alone$/);
    await banded(page);
    const told = await all(page.locator(`${AHEAD} .ahead-told li`));
    assert.match(told[0], /^The core is warmest with \d+ °C/);
    assert.match(await textOf(page.locator(`${AHEAD} .over-time figcaption p`).first()), /^Core temperature: about .+ now.+ Nine of ten runs lie between .+ °C and .+ °C\.$/);
    assert.match(await textOf(page.locator(AHEAD)), /Weather: the usual for this garden's place \(.+ north, .+\) on each day of the year/);
    const key = await all(page.locator(`${AHEAD} .map-key li`));
    assert.ok(key.includes("nine of ten runs") && key.includes("half of the runs"), key.join("; "));
    await whole(page);
    assert.equal(await page.locator(`${AHEAD} [role=status]:not(.unseen)`).innerText(), "");
  });

  visiting("the keeper's readings are on the picture and in the table", async (page) => {
    await demoHeap(page);
    await banded(page);
    const read = await rows(page, "Your readings as a table");
    const circles = await page.locator(".time-reading").count();
    const days = (text) => (text === "now" ? 0 : (Date.now() - Date.parse(`${text} 12:00`)) / 86_400_000);
    const recent = read.filter(([day, place]) => ["core", "not told"].includes(place) && days(day) < 29).length;
    assert.ok(circles >= recent && circles <= read.length, `${circles} circles, ${recent} recent of ${read.length} readings`);
    assert.ok(read.every(([, , degrees]) => /^\S+\s°C$/.test(degrees)));
  });

  visiting("the table says what the picture shows", async (page) => {
    await demoHeap(page);
    await banded(page);
    const table = await rows(page, "This picture as a table");
    const drawn = await page.evaluate(() => {
      const picture = document.querySelector(".time-picture");
      // The scale of the axis from its ticks: those left of the plot are values.
      const ground = picture.querySelector(".time-ground");
      const left = Number(ground.getAttribute("x"));
      const ticks = [...picture.querySelectorAll(".time-tick")].filter((tick) => Number(tick.getAttribute("x")) < left)
        .map((tick) => [Number(tick.textContent.replace("\u2212", "-")), Number(tick.getAttribute("y")) - 4]);
      const [[low, lowY], [high, highY]] = [ticks[0], ticks.at(-1)];
      const degrees = (y) => low + (high - low) * (y - lowY) / (highY - lowY);
      const points = picture.querySelector(".time-middle").getAttribute("points").split(" ").map((point) => degrees(Number(point.split(",")[1])));
      return { first: points[0], last: points.at(-1), most: Math.max(...points), tenth: Math.abs((high - low) / (highY - lowY)) / 10 };
    });
    const middle = table.map((row) => Number(row[1].replace("\u2212", "-")));
    // A tenth of a pixel, and the rounding to whole degrees.
    const near = (one, other) => Math.abs(one - other) <= drawn.tenth * 2 + 0.5;
    assert.ok(near(middle[0], drawn.first), `${middle[0]} and ${drawn.first}`);
    assert.ok(near(middle.at(-1), drawn.last) || Math.abs(middle.at(-1) - drawn.last) < 2, `${middle.at(-1)} and ${drawn.last}`);
    assert.ok(Math.max(...middle) <= drawn.most + drawn.tenth * 2 + 0.5);
    assert.equal(table[0].length, (await all(page.locator(".over-time + details thead th"))).length);
  });

  visiting("other values can be chosen, each with its unit", async (page) => {
    await demoHeap(page);
    await pictured(page);
    for (const [name, unit] of [["Moisture", "%"], ["Lowest oxygen", "%"], ["Volume", "L"]]) {
      await choose(page, "Over time", name.replace("Lowest oxygen", "Oxygen"));
      await page.waitForFunction((name) => document.querySelector(".over-time figcaption p").textContent.startsWith(name), name);
      assert.ok((await page.locator(".time-axis").allTextContents()).includes(unit), name);
    }
  });

  visiting("what if: turning and watering change the answer, and lie side by side", async (page) => {
    await demoHeap(page);
    await compared(page);
    const options = () => all(page.locator(`${AHEAD} > .scroll thead th, ${AHEAD} .differences ~ .scroll thead th`));
    assert.deepEqual(await options(), ["From now on", "Leave it alone", "Turn it now", "Turn it in 3 days"]);
    const before = await all(page.locator(`${AHEAD} .ahead-told li`));
    await choose(page, "What if you turn it", "Now");
    await page.waitForFunction(() => document.querySelector(".option-name").textContent === "Turn it now");
    assert.notDeepEqual(await all(page.locator(`${AHEAD} .ahead-told li`)), before);
    await page.locator(".time-picture .time-plan").first().waitFor({ state: "attached" });
    assert.equal(await page.locator(".time-picture .time-plan").count(), 1, "the turn is marked as planned");
    const water = page.getByRole("group", { name: "And if you water it" }).locator("label").nth(1);
    assert.match(await textOf(water), /^\d+ L now$/);
    await water.click();
    await page.waitForFunction(() => /^Water it now with .+ and turn it now$/.test(document.querySelector(".option-name").textContent), null, { timeout: RUNS_MS });
    await whole(page);
    await page.waitForFunction((selector) => document.querySelectorAll(selector).length === 5, `${AHEAD} .differences ~ .scroll thead th`);
    assert.equal((await options()).length, 5);
    const table = await page.locator(`${AHEAD} .differences ~ .scroll tbody tr`).evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
    assert.ok(table.some((row) => row[1] !== row[3]), "nothing differs");
    const told = await all(page.locator(".differences li"));
    assert.equal(told.length, 3);
    assert.ok(told.every((line) => /: .+\.$/.test(line)), told.join("; "));
  });

  visiting("it can be stopped and taken up again", async (page) => {
    await demoHeap(page);
    await pictured(page);
    await page.getByRole("button", { name: "Stop", exact: true }).click();
    await page.getByText("Stopped. What was computed until then stands below.").waitFor();
    assert.equal(await page.locator(`${AHEAD} progress`).count(), 0);
    assert.ok(await page.locator(".time-picture").isVisible());
    await page.getByRole("button", { name: "Compute again" }).click();
    await banded(page);
  });

  visiting("an empty heap says what to enter, and asks nothing", async (page) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    assert.match(await textOf(page.locator(AHEAD)), /Nothing lies in this heap yet, so there is nothing to look ahead to\. Log what goes in with Feed/);
    assert.equal(page.workers().length, 0);
  });

  visiting("what is logged changes what lies ahead", async (page) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await page.getByRole("button", { name: "Feed", exact: true }).click();
    await page.getByRole("button", { name: "Log this feed" }).click();
    await compared(page);
    const before = await all(page.locator(`${AHEAD} .ahead-told li`));
    assert.match(await textOf(page.locator(AHEAD)), /the journal does not say where the garden lies/);
    await page.getByRole("button", { name: "Watered", exact: true }).click();
    await page.getByRole("button", { name: "Log the water" }).click();
    await page.waitForFunction((before) => {
      const now = [...document.querySelectorAll(".ahead-told li")].map((line) => line.innerText.replace(/\s+/g, " ").trim());
      return now.length > 0 && JSON.stringify(now) !== before;
    }, JSON.stringify(before), { timeout: RUNS_MS });
  });
});

describe("inside the heap", () => {
  visiting("the cut goes through time by keys and taps, and tells its day", async (page) => {
    await demoHeap(page);
    await pictured(page);
    const slider = page.getByRole("slider", { name: "Day" });
    const day = () => page.locator(".frame-when").textContent();
    assert.equal(await day(), "now");
    const cut = () => page.locator(".cut-picture").evaluate((picture) => picture.innerHTML);
    const first = await cut();
    await slider.focus();
    await page.keyboard.press("ArrowRight");
    assert.notEqual(await day(), "now");
    const spoken = await slider.getAttribute("aria-valuetext");
    assert.match(plain(spoken), new RegExp(`^${await day()}: Core .+ °C, edge .+ °C, air outside .+; lowest oxygen .+ %; moisture .+ %; volume `));
    await page.keyboard.press("End");
    assert.notEqual(await cut(), first);
    await page.keyboard.press("Home");
    const start = await day();
    await page.getByRole("button", { name: "Later", exact: true }).click();
    assert.notEqual(await day(), start);
    await page.getByRole("button", { name: "Earlier", exact: true }).click();
    assert.equal(await day(), start);
    await page.getByRole("button", { name: "Play" }).click();
    await page.waitForFunction((start) => document.querySelector(".frame-when").textContent !== start, start);
    await page.getByRole("button", { name: "Pause" }).click();
    const paused = await day();
    await page.waitForTimeout(700);
    assert.equal(await day(), paused);
  });

  visiting("temperature, moisture and oxygen, each with its key, its numbers and its table", async (page) => {
    await demoHeap(page);
    await pictured(page);
    for (const [name, role, unit] of [["Temperature", "warm", "°C"], ["Moisture", "wet", "%"], ["Oxygen", "air", "%"]]) {
      await choose(page, "Shown in the cut", name);
      await page.locator(`.cut-picture [class^=${role}-]`).first().waitFor({ state: "attached" });
      assert.ok((await page.locator(".cut-picture .cut-label").allTextContents()).includes(unit));
      const numbers = (await page.locator(".cut-picture .cut-value").allTextContents()).map(Number);
      const table = await rows(page, "This cut as a table");
      const cells = table.flatMap((row) => row.slice(1)).map(Number);
      assert.ok(numbers.length > 1 && numbers.every((number) => cells.includes(number)), `${numbers} of ${cells}`);
    }
  });
});

describe("the page while the worker runs", () => {
  visiting("the page never stands still: no task of 200 ms, and what is longer than 50 ms is told", async (page, _context, run) => {
    await demoHeap(page);
    await page.evaluate(() => {
      window.longTasks = [];
      new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map((entry) => Math.round(entry.duration)))).observe({ type: "longtask" });
    });
    await choose(page, "What if you turn it", "Now").catch(() => {});
    await pictured(page);
    const slider = page.getByRole("slider", { name: "Day" });
    await slider.focus();
    for (let press = 0; press < 20; press += 1) await page.keyboard.press("ArrowLeft");
    await whole(page);
    const tasks = await page.evaluate(() => window.longTasks);
    run.diagnostic(`long tasks: ${JSON.stringify(tasks)}`);
    // A machine that does other things makes everything longer: what is gated is that the page never stands still.
    assert.ok(Math.max(0, ...tasks) < 200, `a task of ${Math.max(...tasks)} ms`);
  });

  visiting("works without signal", async (page, context) => {
    await kept(page);
    // The demo garden is kept when it was used.
    await demoHeap(page);
    await pictured(page);
    await context.setOffline(true);
    await page.goto(our.program.address);
    await demoHeap(page);
    await banded(page);
  });

  test("a worker that cannot be fetched is told in a sentence", { timeout: RUNS_MS }, async () => {
    const page = await (await our.browser.newContext({ ...PHONE, serviceWorkers: "block" })).newPage();
    await page.route(/heapwright_simulator_bg/, (route) => route.abort());
    await open(page, our.program.address);
    await demoHeap(page);
    await page.getByRole("region", { name: "Looking ahead" }).getByText(/^What computes the days ahead could not be fetched\./).waitFor();
    await page.context().close();
  });

  test("a browser without workers is told so", { timeout: RUNS_MS }, async () => {
    const page = await (await our.browser.newContext(PHONE)).newPage();
    await page.addInitScript(() => { delete globalThis.Worker; });
    await open(page, our.program.address);
    await demoHeap(page);
    await page.getByRole("region", { name: "Looking ahead" }).getByText(/^This browser cannot compute the days ahead\./).waitFor();
    await page.context().close();
  });

  test("it works under any path", { timeout: RUNS_MS }, async (run) => {
    const proxy = await startProxy(our.program, { prefix: "/garden/heaps/" });
    run.after(() => proxy.stop());
    const page = await (await our.browser.newContext(PHONE)).newPage();
    const troubles = watch(page, proxy.address);
    await open(page, proxy.address);
    await demoHeap(page);
    await pictured(page);
    assert.deepEqual(troubles, []);
    await page.context().close();
  });

  visiting("axe finds nothing in light, dark and forced colours, and nothing scrolls sideways at 320 px", async (page) => {
    await demoHeap(page);
    await banded(page);
    for (const summary of ["This picture as a table", "Your readings as a table", "This cut as a table", "What was assumed"]) {
      await page.locator("summary", { hasText: summary }).click();
    }
    for (const { name, media } of THEMES) {
      await page.emulateMedia(media);
      for (const width of [320, 1280]) {
        await page.setViewportSize({ width, height: 740 });
        assert.deepEqual((await axe(page)).violations, [], `${name}, ${width} px`);
        assert.equal(await sidewaysScroll(page), 0, `${name}, ${width} px`);
      }
    }
    assert.ok(await page.locator(INSIDE).isVisible());
  });
});
