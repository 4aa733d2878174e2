// Reminders that the browser shows: asked for by a tap, shown once a day, never for the invented garden, ended by a tap.
import assert from "node:assert/strict";
import { describe } from "node:test";
import { kept, open, rig, until } from "./harness.js";
import { exported, form, looked, startHeap, takeIn, toHeap, told } from "./journal.js";
import { goTo } from "./keeper.js";

const our = rig();
const allowed = { prepare: (context) => context.grantPermissions(["notifications"]) };

/** What the browser shows at present. */
const shown = (page) => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  return (await registration.getNotifications()).map(({ title, body, tag }) => ({ title, body, tag }));
});

/** What the worker keeps. */
const listed = (page) => page.evaluate(async () => {
  const name = (await caches.keys()).find((one) => one.startsWith("reminders"));
  const found = name && await caches.match(new URL("reminders.json", location.href.replace(/#.*/, "")).href, { cacheName: name });
  return found ? found.json() : [];
});

/** Hands over a list as the page does. */
const hand = (page, list) => page.evaluate((all) => globalThis.heapwright_device.remind(JSON.stringify(all)), list);

/** Name and time of what waits to be shown. */
const days = async (page) => (await listed(page)).filter((one) => !one.shown).map((one) => `${one.name} ${one.at}`).sort();

/** The same with what each says, for a day alone may stay; nothing before all that is due by now is shown, which comes after. */
const sayings = async (page) => {
  const waiting = (await listed(page)).filter((one) => !one.shown);
  if (waiting.some((one) => Date.parse(one.at) <= Date.now())) return undefined;
  return waiting.map((one) => `${one.name} ${one.at} ${one.body}`).sort();
};

const due = (name, at) => ({ name, at, title: `Turn ${name}`, body: "It has cooled.", language: "en" });

describe("reminders of the browser", () => {
  our.visiting("a tap begins them with what has a day, and a tap ends them", async (page) => {
    await kept(page);
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await form(page, "Feed");
    await page.getByRole("button", { name: "Log this feed" }).click();
    await told(page, /^Fed Bin 1/);
    await goTo(page, "Today");
    await page.getByRole("button", { name: "Remind me on this device" }).click();
    await page.getByRole("button", { name: "Stop reminding" }).waitFor();
    await page.getByText(/This device shows you what is due/).waitFor();
    await until(async () => (await listed(page)).length > 0, "what has a day is handed over");
    for (const one of await listed(page)) {
      assert.match(one.at, /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d/);
      assert.ok(!Number.isNaN(Date.parse(one.at)));
      assert.match(one.title, /Bin 1/);
      assert.equal(one.language, "en");
    }
    await page.getByRole("button", { name: "Stop reminding" }).click();
    await page.getByRole("button", { name: "Remind me on this device" }).waitFor();
    await until(async () => (await listed(page)).every((one) => one.shown), "nothing waits to be shown");
  }, allowed);

  our.visiting("they are told anew wherever the journal is changed: a feed in Balance, a reading and its undoing on a heap", async (page) => {
    await kept(page);
    await page.evaluate(() => localStorage.setItem("heapwright.reminders", "open"));
    /** Waits until the list is another one; what it is. */
    const anew = async (before, what) => {
      let now;
      await until(async () => {
        now = await sayings(page);
        return now && String(now) !== String(before);
      }, what);
      return now;
    };
    await startHeap(page, "Bin 1");
    await goTo(page, "Balance");
    await page.locator(".log-feed").getByRole("button", { name: "Log this feed" }).click();
    await told(page, /^Fed Bin 1/);
    const fed = await anew([], "a heap that is fed has a day");
    await toHeap(page, "Bin 1");
    await form(page, "Read");
    await page.getByLabel("Temperature, °C").fill("20");
    await page.getByLabel("dusty", { exact: true }).check();
    await page.getByRole("button", { name: "Log the reading" }).click();
    await told(page, /feels dusty/);
    const read = await anew(fed, "a reading changes what it says");
    await page.locator(".done").getByRole("button", { name: "Undo" }).click();
    assert.deepEqual(await anew(read, "what is undone counts no more"), fed);
    // Nothing of it needed Today.
    assert.equal(await page.evaluate(() => location.hash.startsWith("#/heaps/")), true);
    // Ended at another place, they are handed over no more.
    await page.evaluate(() => globalThis.heapwright_device.stopReminding());
    await until(async () => (await days(page)).length === 0, "nothing waits to be shown");
    await form(page, "Turned");
    await told(page, /^Turned/);
    await page.waitForTimeout(5000);
    assert.deepEqual(await days(page), []);
  }, allowed);

  our.visiting("they are told of a journal that is imported, and of its end when that is undone in another tab", async (page, context) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await form(page, "Feed");
    await page.getByRole("button", { name: "Log this feed" }).click();
    await told(page, /^Fed Bin 1/);
    const file = await exported(page);
    const other = await our.browser.newContext({ permissions: ["notifications"] });
    const fresh = await other.newPage();
    await open(fresh, our.program.address);
    await kept(fresh);
    await fresh.evaluate(() => localStorage.setItem("heapwright.reminders", "open"));
    await looked(fresh, file.text);
    await takeIn(fresh);
    await until(async () => (await days(fresh)).length > 0, "what was taken in has a day");
    // Another tab takes the feed back; both tell, and the list is one.
    const tab = await other.newPage();
    await open(tab, `${our.program.address}#/logbook`);
    await tab.getByRole("button", { name: /^Take back: Fed/ }).click();
    await until(async () => (await days(fresh)).length === 0, "what was taken back has no day");
    await other.close();
  }, allowed);

  our.visiting("what is due is shown once on its day, whatever time of the day stands with it", async (page) => {
    await kept(page);
    const day = new Date(Date.now() - 3_600_000).toISOString();
    await hand(page, [due("bin", day), due("later", "2199-01-01T09:00:00")]);
    await until(async () => (await shown(page)).length === 1, "what is due is shown");
    assert.deepEqual(await shown(page), [{ title: "Turn bin", body: "It has cooled.", tag: "bin" }]);
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      for (const one of await registration.getNotifications()) one.close();
    });
    // The same day, told anew as a whole day, and after it was not due for a while.
    for (const list of [[due("bin", `${day.slice(0, 10)}T00:00:00`)], [], [due("bin", day)]]) {
      await hand(page, list);
      await until(async () => (await listed(page)).every((one) => one.shown), "the list is taken");
    }
    assert.deepEqual(await shown(page), []);
    // Another day is another reminder.
    await hand(page, [due("bin", "2020-01-01T09:00:00")]);
    await until(async () => (await shown(page)).length === 1, "a reminder of another day is shown");
  }, allowed);

  our.visiting("a list is not handed over once a newer one was begun, and what fails is told as failed", async (page) => {
    await kept(page);
    const { overtaken, failed } = await page.evaluate(async () => {
      localStorage.setItem("heapwright.reminders", "open");
      const device = globalThis.heapwright_device;
      const TrueWorker = globalThis.Worker;
      let worker;
      // Its message may be on its way when it is ended.
      globalThis.Worker = class {
        constructor() { worker = this; }
        postMessage() {}
        terminate() {}
      };
      const list = (name) => [{ name, at: "2199-01-01T09:00:00", title: name, body: name, language: "en" }];
      const answer = (...said) => worker.onmessage({ data: [1, ...said] });
      const older = device.remindAnew("{}");
      const newer = device.remind(JSON.stringify(list("newer")));
      answer("told", JSON.stringify({ reminders: list("older") }));
      const overtaken = await Promise.all([older, newer]);
      const failed = [];
      for (const fail of [() => answer("unfetched"), () => answer("failed", ""), () => answer("told", "?"), () => worker.onerror(new Event("error"))]) {
        const asked = device.remindAnew("{}");
        fail();
        failed.push(await asked);
      }
      globalThis.Worker = class { constructor() { throw new Error("no workers"); } };
      failed.push(await device.remindAnew("{}"));
      globalThis.Worker = TrueWorker;
      localStorage.removeItem("heapwright.reminders");
      return { overtaken, failed };
    });
    assert.deepEqual(overtaken, [false, true]);
    assert.deepEqual(failed, [false, false, false, false, false]);
    await until(async () => String(await days(page)) === "newer 2199-01-01T09:00:00", "the newer list is kept");
  }, allowed);

  our.visiting("the invented garden reminds nobody", async (page) => {
    await kept(page);
    await page.evaluate(() => localStorage.setItem("heapwright.reminders", "open"));
    // Another document: within this one the address would only change its place.
    await page.goto("about:blank");
    await open(page, `${our.program.address}#/today/demo`);
    await page.locator(".needs > li").first().waitFor();
    await page.getByRole("heading", { name: "Reminders" }).waitFor();
    assert.equal(await page.getByRole("button", { name: /Remind me|Stop reminding/ }).count(), 0);
    assert.deepEqual(await listed(page), []);
  }, allowed);

  our.visiting("a browser that refuses is told of, with what to do", async (page) => {
    await page.evaluate(() => Object.defineProperty(Notification, "permission", { get: () => "denied" }));
    await startHeap(page, "Bin 1");
    await goTo(page, "Today");
    await page.getByText(/allow notifications for it in the browser's settings/).waitFor();
    assert.equal(await page.getByRole("button", { name: "Remind me on this device" }).count(), 0);
  });
});
