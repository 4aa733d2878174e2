// The daily companion: the bar of places, what each heap needs today, the first minute, wet hands.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { newProfile, open, PATIENCE_MS, PHONE, ready, rig, sidewaysScroll, until } from "./harness.js";
import { done, form, onTheDevice, opened, startHeap, texts, toHeap, told } from "./journal.js";
import { count, description, goTo, inHand, plain, sentence, textOf, tile, withDraft } from "./keeper.js";

const our = rig();
const { visiting } = our;

/** Waits until the needs of the day are there, or that there are none. */
const worked = (page) => page.locator(".today :is(.needs, .need-rest)").waitFor({ timeout: PATIENCE_MS });

/** What each need says to do. */
const needs = (page) => page.locator(".needs .need-what").allInnerTexts();

/** Boxes of all that can be tapped within an element. */
const boxes = (page, within) => page.locator(within).first().evaluate((place) =>
  [...place.querySelectorAll("a[href], button, input, select, summary")]
    .filter((one) => one.checkVisibility() && !(one.closest("li")?.querySelector("h2 a.heap-link")))
    .map((one) => {
      const { left, top, right, bottom, width, height } = (one.closest("label.chip, label.tick") ?? one).getBoundingClientRect();
      return { what: (one.getAttribute("aria-label") ?? one.textContent).trim().slice(0, 40) || one.id, left, top, right, bottom, width, height };
    }));

function tooSmall(all) {
  return all.filter((one) => one.width < 47.9 || one.height < 47.9).map((one) => `${one.what}: ${one.width.toFixed(0)} x ${one.height.toFixed(0)}`);
}

function tooClose(all) {
  const close = [];
  all.forEach((one, index) => all.slice(index + 1).forEach((other) => {
    const apart = Math.max(other.left - one.right, one.left - other.right, other.top - one.bottom, one.top - other.bottom);
    if (apart < 7.9) close.push(`${one.what} and ${other.what}: ${apart.toFixed(1)} px`);
  }));
  return close;
}

describe("the bar of places", () => {
  for (const width of [320, 360, 768, 1280]) {
    visiting(`all seven are one tap away at ${width} px, whole, large enough and apart`, async (page) => {
      const nav = page.getByRole("navigation", { name: "Places" });
      const names = await nav.getByRole("link").allInnerTexts();
      assert.deepEqual(names.map(plain), ["Today", "Balance", "Heaps", "Stores", "Beds", "Logbook", "Settings"]);
      const all = await boxes(page, ".places");
      assert.deepEqual(tooSmall(all), []);
      assert.deepEqual(tooClose(all), []);
      for (const { what, left, top, right, bottom } of all) {
        assert.ok(left >= 0 && right <= width && top >= 0 && bottom <= 740, `${what} is outside the window`);
      }
      const cut = await page.locator(".places a").evaluateAll((links) => links.filter((link) => link.scrollWidth > link.clientWidth + 1).map((link) => link.textContent));
      assert.deepEqual(cut, [], "words that are cut off");
      for (const name of ["Today", "Stores", "Beds", "Logbook", "Settings", "Heaps", "Balance"]) {
        await goTo(page, name);
        assert.equal(await page.locator("#title").count(), 1, name);
        assert.equal(await sidewaysScroll(page), 0, name);
      }
    }, { viewport: { width, height: 740 } });
  }

  test("the first paint has the same bar as the page", async () => {
    const drawn = async (javaScriptEnabled) => {
      const context = await our.browser.newContext({ ...PHONE, javaScriptEnabled });
      const page = await context.newPage();
      await (javaScriptEnabled ? open(page, our.program.address) : page.goto(our.program.address));
      const bar = await page.locator(".places a").evaluateAll((links) => links.map((link) => {
        const { x, y, width, height } = link.getBoundingClientRect();
        return [link.textContent.trim(), link.getAttribute("href"), link.querySelector("svg").innerHTML.replace(/><\/(path|circle)>/g, "/>").replace("<!---->", ""), y > 300 ? [x, y, width, height].map(Math.round) : ""];
      }));
      await context.close();
      return bar;
    };
    assert.deepEqual(await drawn(false), await drawn(true));
  });

  visiting("bright sun is one tap, is kept, and is one tap back", async (page) => {
    const sun = page.getByRole("button", { name: "Bright sun", exact: true });
    await sun.tap();
    assert.equal(await sun.getAttribute("aria-pressed"), "true");
    assert.equal(await page.evaluate(() => getComputedStyle(document.body).backgroundColor), "rgb(255, 255, 255)");
    await page.reload();
    await ready(page);
    assert.equal(await sun.getAttribute("aria-pressed"), "true");
    // What was tapped in the balance is taken back without the light.
    await tile(page, "Fresh grass").tap();
    await page.locator(".hand").getByRole("button", { name: "Undo" }).tap();
    assert.equal(await sun.getAttribute("aria-pressed"), "true");
    await sun.tap();
    assert.equal(await page.evaluate(() => document.documentElement.dataset.light), "device");
  });
});

describe("the first minute", () => {
  test("a first visit answers within 60 s, with no account and nothing to read first", async (run) => {
    const context = await our.browser.newContext(PHONE);
    const page = await context.newPage();
    const start = Date.now();
    await open(page, our.program.address);
    await page.getByRole("heading", { level: 1, name: "Balance a feed" }).waitFor();
    await tile(page, "Coffee grounds").tap();
    const line = await textOf(sentence(page));
    const took = Date.now() - start;
    run.diagnostic(`${took} ms: ${line}`);
    assert.match(line, /^Put .+ with it\./);
    assert.ok(took < 60_000);
    await context.close();
  });

  visiting("the invented garden is one tap away and clearly apart, and Today is what it opens with", async (page) => {
    await page.getByRole("link", { name: "Look around in an invented garden" }).tap();
    await page.getByRole("heading", { level: 1, name: "Today", exact: true }).waitFor();
    await page.getByText("Demo garden, invented").waitFor();
    await page.getByText(/^This garden is invented\./).waitFor();
    await worked(page);
    assert.deepEqual((await onTheDevice(page)).lines, []);
    await page.getByRole("button", { name: "Leave the demo garden" }).tap();
    await page.getByText("Demo garden, invented").waitFor({ state: "detached" });
    await page.getByText(/^No heap yet\./).waitFor();
  });

  visiting("with no heap Today says what to do next", async (page) => {
    await goTo(page, "Today");
    await opened(page);
    await page.getByText(/^No heap yet\./).waitFor();
    await page.getByRole("link", { name: "Start a heap" }).tap();
    await page.getByRole("heading", { level: 1, name: "Heaps" }).waitFor();
  });
});

/** A heap of the keeper's own with a feed, as Balance has it at first. */
async function fedHeap(page, name) {
  await startHeap(page, name);
  await toHeap(page, name);
  await form(page, "Feed");
  await page.getByRole("button", { name: "Log this feed" }).tap();
  await told(page, /^Fed /);
}

/** A heap of wet grass and nothing else, with straw put by for it, on Today. */
async function wetHeap(page, name) {
  await startHeap(page, name);
  await goTo(page, "Stores");
  await form(page, "Put by");
  await page.getByLabel("What", { exact: true }).fill("straw");
  await page.locator(".found .tile").first().click();
  await page.getByLabel("How many, put by").fill("60");
  await page.getByRole("button", { name: "Put it by" }).click();
  await told(page, /^Put by 60 buckets/);
  await goTo(page, "Balance");
  await page.getByRole("button", { name: "Clear all" }).tap();
  await tile(page, "Fresh grass").tap();
  await count(inHand(page, "Fresh grass")).fill("4");
  await toHeap(page, name);
  await form(page, "Feed");
  await page.getByLabel("With what the answer adds").uncheck();
  await page.getByRole("button", { name: "Log this feed" }).tap();
  await told(page, /^Fed .+: 4 buckets of /);
  await goTo(page, "Today");
  await worked(page);
}

/** Lets all that is told as soon be told as urgent while the device says so. */
const urging = (context) => context.addInitScript(() => {
  window.Worker = class extends Worker {
    set onmessage(hear) {
      const urged = (told) => (typeof told === "string" ? told.replaceAll('"urgency":"soon"', '"urgency":"now"') : told);
      super.onmessage = (event) => hear(localStorage.getItem("urgent") ? { data: event.data.map(urged) } : event);
    }
  };
});

describe("Today", () => {
  visiting("a need is done and logged by one tap, is gone, comes back when that is undone, and stays so after a reload", async (page) => {
    await fedHeap(page, "Bin 1");
    await form(page, "Read");
    await page.getByLabel("dusty", { exact: true }).check();
    await page.getByRole("button", { name: "Log the reading" }).tap();
    await told(page, /feels dusty/);
    await goTo(page, "Today");
    await worked(page);
    assert.ok((await needs(page)).includes("Water Bin 1"), (await needs(page)).join("; "));
    await page.getByRole("button", { name: /^Watered/ }).tap();
    await told(page, /^Watered Bin 1: /);
    await until(async () => !(await needs(page)).includes("Water Bin 1"), "the need is still there");
    // The bar lies at the foot, above the places.
    const bar = await page.locator(".done").boundingBox();
    assert.ok(bar.y > 740 / 2 && bar.y + bar.height < 740 - 64, JSON.stringify(bar));
    await page.locator(".done").getByRole("button", { name: "Undo" }).tap();
    await until(async () => (await needs(page)).includes("Water Bin 1"), "the need is not back");
    await page.reload();
    await ready(page);
    await worked(page);
    assert.ok((await needs(page)).includes("Water Bin 1"));
  });

  visiting("every need has a reason and something to tap, and no heap is silent", async (page) => {
    await page.getByRole("link", { name: "Look around in an invented garden" }).tap();
    await worked(page);
    for (const need of await page.locator(".needs > li").all()) {
      assert.match(await textOf(need.locator(".need-why")), /\S.*\.$/);
      assert.equal(await need.locator(".main-act, .need-act").count(), 1);
    }
    const heard = [...await needs(page), ...await page.locator(".quiet-heap").allInnerTexts()].join("\n");
    await goTo(page, "Heaps");
    const living = page.locator(".heap-card").filter({ hasNot: page.locator(".stage", { hasText: "finished" }) });
    for (const name of await living.locator(".heap-link").allInnerTexts()) assert.ok(heard.includes(name), `${name} is silent`);
  });

  visiting("above the button of a recipe stands what one tap writes down, and that is what it writes", async (page) => {
    await wetHeap(page, "Bin 1");
    const card = page.locator(".needs > li", { hasText: "Mix browns into Bin 1" });
    const button = card.getByRole("button", { name: "Mixed in, Bin 1", exact: true });
    const line = await textOf(card.locator(".need-writes"));
    assert.match(line, /^One tap writes down: Fed Bin 1: \d+ buckets? of .*straw/);
    assert.equal(plain(await description(button)), line);
    await button.tap();
    // Until then the bar tells of the grass.
    await told(page, /^Fed Bin 1: .*straw/);
    assert.equal(`One tap writes down: ${plain(await done(page).innerText())}`, line);
  });

  visiting("what can wait is put aside until tomorrow, stays in one line, and comes back by a tap, with the next day, or when it is urgent", async (page) => {
    await wetHeap(page, "Bin 1");
    await page.clock.install();
    const what = "Mix browns into Bin 1";
    const before = (await onTheDevice(page)).lines;
    const aside = page.getByRole("region", { name: "Put aside for today" });
    assert.equal(await aside.count(), 0);
    const put = page.getByRole("button", { name: `Not today: ${what}`, exact: true });
    await put.tap();
    await aside.getByText(what).waitFor();
    assert.ok(!(await needs(page)).includes(what));
    assert.equal(await page.getByText("Nothing needs doing").count(), 0, "what waits is not nothing");
    assert.deepEqual((await onTheDevice(page)).lines, before, "nothing was done");
    const box = await aside.getByRole("button").boundingBox();
    assert.ok(box.width >= 48 && box.height >= 48, JSON.stringify(box));
    // Kept through a reload; a tap brings it back.
    await page.reload();
    await ready(page);
    await aside.getByText(what).waitFor();
    // Told as urgent it is there, aside or not.
    for (const urgent of ["1", ""]) {
      await page.evaluate((urgent) => localStorage.setItem("urgent", urgent), urgent);
      await page.reload();
      await ready(page);
      await page.locator(".today :is(.needs, .aside-need)").first().waitFor();
      assert.equal((await needs(page)).includes(what), urgent !== "");
      assert.equal(await aside.count(), urgent ? 0 : 1);
      assert.equal(await put.count(), 0);
    }
    await aside.getByRole("button", { name: `Bring back: ${what}`, exact: true }).tap();
    await put.waitFor();
    assert.equal(await aside.count(), 0);
    // At once again, and what is in sight stays where it is: the heading takes the focus without a jump to it.
    await page.evaluate(() => {
      const { focus } = HTMLElement.prototype;
      HTMLElement.prototype.focus = function noted(how) {
        window.focused = [this.id, how?.preventScroll === true];
        focus.call(this, how);
      };
    });
    await put.tap();
    await aside.waitFor();
    assert.deepEqual(await page.evaluate(() => window.focused), ["title", true]);
    // Tomorrow it is there again.
    await later(page, 1);
    await put.waitFor();
    assert.equal(await aside.count(), 0);
  }, { prepare: urging });

  visiting("what another tab put aside stays so when this one puts aside and brings back; what another day left goes", async (page) => {
    await wetHeap(page, "Bin 1");
    const what = "Mix browns into Bin 1";
    /** The heaps of what is kept as put aside. */
    const heaps = () => page.evaluate(async () => JSON.parse(await globalThis.heapwright_device.get("facts", "put_aside")).map((put) => put.heap));
    const put = page.getByRole("button", { name: `Not today: ${what}`, exact: true });
    await put.waitFor();
    await page.evaluate(() => {
      const now = new Date();
      const day = new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
      const another = [{ day, heap: "another", kind: "turn" }, { day: "2020-01-01", heap: "old", kind: "turn" }];
      return globalThis.heapwright_device.put("facts", "put_aside", JSON.stringify(another));
    });
    await put.tap();
    await until(async () => (await heaps()).length === 2 && !(await heaps()).includes("old"), "both are kept, and not the old one");
    assert.equal((await heaps())[0], "another");
    await page.getByRole("button", { name: `Bring back: ${what}`, exact: true }).tap();
    await until(async () => (await heaps()).length === 1, "one is brought back");
    assert.deepEqual(await heaps(), ["another"]);
    await put.waitFor();
  });

  visiting("vessels that only the page knows are told of, and put into the journal by a tap", async (page) => {
    await fedHeap(page, "Bin 1");
    await withDraft(page, (draft) => ({ ...draft, measures: { bucket: "9 L" } }));
    await goTo(page, "Today");
    await worked(page);
    const card = page.getByRole("region", { name: "Your vessels" });
    assert.match(await textOf(card), /Today counts them as the usual ones\..+bucket: 9 L/);
    await card.getByRole("button", { name: "Put them into the journal" }).tap();
    await told(page, /9 L/);
    await card.waitFor({ state: "detached" });
  });

  for (const width of [320, 360, 768, 1280]) {
    visiting(`U3 every control is 48 px or more and 8 px apart, the main action 60 px, at ${width} px`, async (page) => {
      await page.getByRole("link", { name: "Look around in an invented garden" }).click();
      await worked(page);
      const all = await boxes(page, ".today");
      assert.deepEqual(tooSmall(all), []);
      assert.deepEqual(tooClose(all), []);
      assert.equal(await page.locator(".today .main-act").count(), 1, "one main action");
      const main = await page.locator(".today .main-act").boundingBox();
      assert.ok(main.height >= 60, `${main.height} px`);
      if (width < 700) {
        assert.ok(main.y > 740 / 2 && main.y + main.height <= 740 - 64, `its main action lies at ${main.y} px`);
      }
      assert.equal(await sidewaysScroll(page), 0);
    }, { viewport: { width, height: 740 } });
  }

  test("U18 from a cold start a temperature is logged with three taps and its digits", async () => {
    const profile = await newProfile();
    try {
      let context = await profile.open(PHONE);
      let page = context.pages()[0];
      await open(page, our.program.address);
      await fedHeap(page, "Bin 1");
      await context.close();

      context = await profile.open(PHONE);
      page = context.pages()[0];
      let taps = 0;
      page.on("console", () => {});
      await page.addInitScript(() => {
        window.taps = 0;
        addEventListener("click", () => { window.taps += 1; }, true);
      });
      await open(page, our.program.address);
      await page.getByRole("heading", { level: 1, name: "Today", exact: true }).waitFor();
      await worked(page);
      const now = page.getByRole("button", { name: /^Write the temperature down/ });
      if (await now.count() > 0) {
        await now.first().tap();
      } else {
        await page.getByRole("link", { name: /Bin 1/ }).first().tap();
        await page.getByRole("button", { name: "Read", exact: true }).tap();
        taps = -1;
        await page.getByLabel("Temperature, °C").focus();
      }
      if (taps === 0) await page.waitForFunction(() => document.activeElement.id === "read-temperature");
      await page.keyboard.type("58");
      await page.getByRole("button", { name: "Log the reading" }).tap();
      await told(page, /58 °C/);
      const counted = await page.evaluate(() => window.taps);
      assert.ok(counted <= 3, `${counted} taps`);
      await context.close();
    } finally {
      await profile.remove();
    }
  });

  test("the page opens with Today when there is a heap, and with Balance when there is none", async () => {
    const profile = await newProfile();
    try {
      let context = await profile.open(PHONE);
      let page = context.pages()[0];
      await open(page, our.program.address);
      await page.getByRole("heading", { level: 1, name: "Balance a feed" }).waitFor();
      await startHeap(page, "Bin 1");
      await page.goto(our.program.address);
      await ready(page);
      await page.getByRole("heading", { level: 1, name: "Today", exact: true }).waitFor();
      await worked(page);
      await context.close();
      context = await profile.open(PHONE);
      page = context.pages()[0];
      await open(page, our.program.address);
      await page.getByRole("heading", { level: 1, name: "Today", exact: true }).waitFor();
      await context.close();
    } finally {
      await profile.remove();
    }
  });
});

/** Lets what workers tell wait while `window.held` is true, and keeps the workers within reach. */
const holding = (context) => context.addInitScript(() => {
  window.workers = [];
  window.asked = 0;
  window.Worker = class extends Worker {
    constructor(...how) {
      super(...how);
      window.workers.push(this);
    }
    postMessage(question) {
      window.asked += 1;
      super.postMessage(question);
    }
    set onmessage(hear) {
      super.onmessage = async (event) => {
        while (window.held) await new Promise((resolve) => { setTimeout(resolve, 20); });
        hear(event);
      };
    }
  };
});
const hold = (page, held) => page.evaluate((held) => { window.held = held; }, held);

/** The device's clock goes on by some days, and the page comes back from sleep. */
async function later(page, days) {
  await page.clock.setSystemTime(new Date(Date.now() + days * 24 * 3600 * 1000));
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange", { bubbles: true })));
}

/** A heap whose handful was dusty, on Today. */
async function dustyHeap(page, name) {
  await fedHeap(page, name);
  await form(page, "Read");
  await page.getByLabel("dusty", { exact: true }).check();
  await page.getByRole("button", { name: "Log the reading" }).tap();
  await told(page, /feels dusty/);
  await goTo(page, "Today");
  await worked(page);
}

describe("Today, while its worker is slow, broken or asked anew", () => {
  const count = async (page) => (await onTheDevice(page)).lines.length;

  visiting("a need that was logged is not logged again before the worker has answered", async (page, context) => {
    await holding(context);
    await page.reload();
    await ready(page);
    await dustyHeap(page, "Bin 1");
    const before = await count(page);
    await hold(page, true);
    await page.getByRole("button", { name: /^Watered/ }).tap();
    await told(page, /^Watered Bin 1: /);
    const logged = page.getByRole("button", { name: /^Logged/ });
    await logged.waitFor();
    assert.ok(await logged.isDisabled());
    await logged.evaluate((button) => button.click());
    await page.waitForTimeout(500);
    assert.equal(await count(page), before + 1);
    await hold(page, false);
    await until(async () => !(await needs(page)).includes("Water Bin 1"), "the need is still there");
    assert.equal(await logged.count(), 0);
  });

  visiting("what is logged and taken back before it was asked about can be logged again", async (page) => {
    await dustyHeap(page, "Bin 1");
    await page.evaluate(async () => {
      // Frames that do not come hold up what is written for the worker; the driver of the browser waits for them too.
      const frame = window.requestAnimationFrame;
      window.requestAnimationFrame = () => 0;
      const seen = async (find) => {
        while (!find()) await new Promise((resolve) => { setTimeout(resolve, 5); });
        return find();
      };
      const button = (word) => [...document.querySelectorAll("button")].find((one) => one.textContent.trim().startsWith(word));
      (await seen(() => button("Watered"))).click();
      await seen(() => button("Logged"));
      (await seen(() => button("Undo"))).click();
      await seen(() => /^Taken back/.test(document.querySelector(".done-line")?.textContent ?? ""));
      window.requestAnimationFrame = frame;
    });
    const again = page.getByRole("button", { name: /^Watered/ });
    await again.waitFor();
    // A list that has just changed under a finger takes no tap.
    await page.waitForTimeout(1500);
    await again.tap();
    await told(page, /^Watered Bin 1: /);
  });

  visiting("when the worker breaks nothing can be logged by what it told, and the next question gets another", async (page, context) => {
    await holding(context);
    await page.reload();
    await ready(page);
    await dustyHeap(page, "Bin 1");
    await hold(page, true);
    const asked = await page.evaluate(() => window.asked);
    await page.getByRole("button", { name: /^Watered/ }).tap();
    await told(page, /^Watered Bin 1: /);
    await page.waitForFunction((asked) => window.asked > asked, asked);
    await page.evaluate(() => window.workers.at(-1).onerror(new Event("error")));
    await page.locator(".today .needs").waitFor({ state: "detached" });
    assert.match(await textOf(page.locator(".today .note-plain")), /\S.*\.$/);
    assert.equal(await page.locator(".today .need").count(), 0);
    await hold(page, false);
    await page.locator(".done").getByRole("button", { name: "Undo" }).tap();
    await worked(page);
    await until(async () => (await needs(page)).includes("Water Bin 1"), "the need is not back");
  });

  visiting("in a tab that nobody looks at nothing is worked out until it is seen again", async (page, context) => {
    await dustyHeap(page, "Bin 1");
    const see = (hidden) => page.evaluate((isHidden) => {
      Object.defineProperty(document, "hidden", { configurable: true, get: () => isHidden });
      document.dispatchEvent(new Event("visibilitychange", { bubbles: true }));
    }, hidden);
    await see(true);
    const tab = await context.newPage();
    await open(tab, `${our.program.address}#/today`);
    await worked(tab);
    await tab.getByRole("button", { name: /^Watered/ }).tap();
    await told(tab, /^Watered Bin 1: /);
    await until(async () => !(await needs(tab)).includes("Water Bin 1"), "the need is still there");
    await page.waitForTimeout(1000);
    assert.ok((await needs(page)).includes("Water Bin 1"), "it was told anew out of sight");
    await see(false);
    await until(async () => !(await needs(page)).includes("Water Bin 1"), "it is not told anew");
  });

  visiting("what one garden needs is not shown as another's", async (page, context) => {
    await holding(context);
    await page.reload();
    await ready(page);
    await dustyHeap(page, "Bin 1");
    await page.evaluate(() => { location.hash = "#/today/demo"; });
    await page.reload();
    await ready(page);
    await page.getByText("Demo garden, invented").waitFor();
    await worked(page);
    assert.ok(!(await needs(page)).includes("Water Bin 1"));
    await hold(page, true);
    await page.getByRole("button", { name: "Leave the demo garden" }).tap();
    await page.getByText("Demo garden, invented").waitFor({ state: "detached" });
    await opened(page);
    await page.locator(".need-waiting").waitFor();
    assert.equal(await page.locator(".needs, .quiet-heaps").count(), 0);
    await hold(page, false);
    await worked(page);
    assert.ok((await needs(page)).includes("Water Bin 1"));
  });

  visiting("the day goes on while the page is open: its date and its needs, and what is typed stays", async (page, context) => {
    await holding(context);
    await page.reload();
    await ready(page);
    await dustyHeap(page, "Bin 1");
    const date = page.locator(".today-date");
    const first = await textOf(date);
    const look = page.getByRole("button", { name: /^Write down what you find/ });
    assert.equal(await look.count(), 0);
    await later(page, 20);
    await look.waitFor({ timeout: PATIENCE_MS });
    assert.notEqual(await textOf(date), first);
    await look.tap();
    await page.waitForFunction(() => document.activeElement.id === "read-squeeze-0");
    const moist = page.locator("#read-squeeze-2");
    await moist.check();
    await hold(page, true);
    await later(page, 22);
    const asking = page.getByText("Adding up what is written down.");
    await asking.waitFor();
    await hold(page, false);
    await asking.waitFor({ state: "detached" });
    assert.ok(await moist.isChecked());
  });

  visiting("a journal that cannot be opened is not called empty", async (page, context) => {
    await context.addInitScript(() => Object.defineProperty(window, "indexedDB", { value: undefined }));
    await page.goto(`${our.program.address}#/today`);
    await page.reload();
    await ready(page);
    await page.waitForFunction(() => document.querySelector(".trouble")?.textContent !== "");
    assert.equal(await page.getByText(/^No heap yet/).count(), 0);
    assert.equal(await page.locator(".today .need").count(), 0);
  });

  visiting("the last feed is not logged twice by two quick taps", async (page) => {
    await fedHeap(page, "Bin 1");
    const before = await count(page);
    await page.locator(".again").evaluate(async (button) => {
      const entries = () => document.querySelectorAll(".entry").length;
      const first = entries();
      button.click();
      while (entries() === first) await new Promise((resolve) => { setTimeout(resolve, 10); });
      document.querySelector(".again").click();
    });
    await page.waitForTimeout(500);
    assert.equal(await count(page), before + 1);
    await page.locator(".again:not([aria-disabled])").tap();
    await until(async () => (await count(page)) === before + 2, "the button rests for good");
  });

  visiting("a need that is done elsewhere leads to its form", async (page) => {
    await fedHeap(page, "Bin 1");
    await form(page, "More");
    await page.getByLabel("Stage", { exact: true }).selectOption("curing");
    await page.getByRole("button", { name: "Log the stage" }).tap();
    await goTo(page, "Today");
    await worked(page);
    await later(page, 30);
    await page.getByRole("link", { name: /^Test the compost/ }).tap();
    await page.getByRole("button", { name: "Log the test" }).waitFor();
    await page.waitForFunction(() => document.activeElement.id === "ripeness-title");
  });

  visiting("the shortcut of the installed page asks for a temperature, of the one heap at once and of several by choice", async (page) => {
    await startHeap(page, "Bin 1");
    await page.goto(`${our.program.address}#/today/temperature`);
    await page.reload();
    await ready(page);
    await page.waitForFunction(() => document.activeElement.id === "read-temperature");
    await page.keyboard.type("41");
    await page.getByRole("button", { name: "Log the reading" }).tap();
    await told(page, /41 °C/);
    await worked(page);
    assert.equal(new URL(page.url()).hash, "#/today");
    await startHeap(page, "Bin 2");
    await goTo(page, "Today");
    await page.evaluate(() => { location.hash = "#/today/temperature"; });
    await page.getByRole("button", { name: "Bin 2", exact: true }).tap();
    await page.waitForFunction(() => document.activeElement.id === "read-temperature");
    assert.deepEqual(tooSmall(await boxes(page, ".today")), []);
    assert.deepEqual(tooClose(await boxes(page, ".today")), []);
    await page.keyboard.type("17");
    await page.getByRole("button", { name: "Log the reading" }).tap();
    await told(page, /Bin 2.*17 °C/);
  });
});

describe("wet hands", () => {
  visiting("the last feed is logged once more by one tap, and taken back by one", async (page) => {
    await fedHeap(page, "Bin 1");
    const again = page.getByRole("button", { name: /^The same feed again: / });
    const parts = (await textOf(again)).replace("The same feed again: ", "");
    await again.tap();
    await until(async () => (await texts(page)).filter((text) => text === `Fed Bin 1: ${parts}`).length === 2, "not logged twice");
    await page.locator(".done").getByRole("button", { name: "Undo" }).tap();
    await told(page, /^Taken back: Fed Bin 1/);
  });

  visiting("a temperature below zero is entered without the keypad's minus, and a degree more or less is a tap", async (page) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await form(page, "Read");
    const field = page.getByLabel("Temperature, °C");
    await page.getByRole("button", { name: "One degree more" }).tap();
    assert.equal(await field.inputValue(), "20");
    await page.getByRole("button", { name: "One degree less" }).tap();
    assert.equal(await field.inputValue(), "19");
    await page.getByRole("button", { name: "Below zero", exact: true }).tap();
    assert.equal(await field.inputValue(), "-19");
    await page.getByRole("button", { name: "Log the reading" }).tap();
    await told(page, /[-−]19 °C/);
  });

  visiting("what was fed lately stands first on the tiles at the next visit", async (page) => {
    await page.getByRole("button", { name: "Clear all" }).tap();
    await tile(page, "Bread").tap();
    await fedHeap(page, "Bin 1");
    await page.goto(`${our.program.address}#/balance`);
    await page.reload();
    await ready(page);
    assert.equal(await page.locator(".tiles .tile").first().innerText(), "Bread");
    assert.equal(await page.locator(".tiles .tile").count(), 12);
  });

  visiting("a harvest has its amount, a step at a time", async (page) => {
    await fedHeap(page, "Bin 1");
    await form(page, "Harvest");
    await page.getByLabel("How many, compost harvested").fill("2");
    await page.getByRole("button", { name: "One more, compost harvested" }).tap();
    await page.getByRole("button", { name: "Log the harvest" }).tap();
    await told(page, /3 barrows/);
  });

  visiting("the forms of a heap have targets of 48 px, 8 px apart, and one main action of 60 px in the lower half", async (page) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    for (const name of ["Feed", "Watered", "Read", "Note", "Harvest", "More"]) {
      await form(page, name);
      const all = await boxes(page, ".log-form");
      assert.deepEqual(tooSmall(all), [], name);
      assert.ok(await page.locator(".log-form .main-act").count() <= 1, name);
      if (name === "More") continue;
      await page.locator(".log-form").evaluate((form) => form.scrollIntoView({ block: "start" }));
      const main = await page.locator(".log-form .main-act").boundingBox();
      assert.ok(main.height >= 60, name);
      await form(page, name);
    }
  });

  visiting("a bed is corrected, the journal keeps both, and nothing changed is said", async (page) => {
    await goTo(page, "Beds");
    await opened(page);
    await form(page, "Describe a bed");
    await page.getByLabel("Name", { exact: true }).fill("North bed");
    await page.getByLabel("Area, m²").fill("6");
    await page.getByRole("button", { name: "Keep this bed" }).tap();
    await told(page, /North bed/);
    await page.getByRole("button", { name: "Change North bed" }).tap();
    await page.waitForFunction(() => document.getElementById("bed-area")?.value === "6");
    await page.getByRole("button", { name: "Keep the change" }).tap();
    await page.getByText(/^Nothing is changed yet/).waitFor();
    await page.getByLabel("Area, m²").fill("8.5");
    await page.getByRole("button", { name: "Keep the change" }).tap();
    await page.locator(".bed-card", { hasText: /8\.5\s*m²/ }).waitFor();
    assert.equal((await onTheDevice(page)).lines.length, 2);
    await page.locator(".done").getByRole("button", { name: "Undo" }).tap();
    await page.locator(".bed-card", { hasText: /(^|\D)6\s*m²/ }).waitFor();
  });

  for (const width of [320, 360]) {
    visiting(`the months and the account of nutrients need no scrolling sideways at ${width} px`, async (page) => {
      await page.getByRole("link", { name: "Look around in an invented garden" }).click();
      await worked(page);
      const wide = (within) => page.locator(`${within} .scroll`).evaluateAll((all) => all.map((one) => one.scrollWidth - one.clientWidth));
      await goTo(page, "Heaps");
      await page.locator(".kept-out summary").click();
      await page.locator(".kept-out table").first().waitFor({ timeout: PATIENCE_MS });
      assert.deepEqual((await wide(".kept-out")).filter((beyond) => beyond > 0), [], "months");
      const row = page.locator(".kept-out tbody tr").first();
      assert.ok(await row.getByRole("rowheader").count() === 1 && await row.getByRole("cell").count() > 1, "it is still a table");
      await page.locator(".heap-link").first().click();
      await page.locator(".nutrients summary").first().click({ timeout: PATIENCE_MS });
      await page.locator(".nutrients details table").first().waitFor();
      assert.deepEqual((await wide(".nutrients")).filter((beyond) => beyond > 0), [], "nutrients");
      assert.equal(await sidewaysScroll(page), 0);
    }, { viewport: { width, height: 740 } });
  }
});
