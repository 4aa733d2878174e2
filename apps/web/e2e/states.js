// What the page can look like: every place, with and without something in it, each reached from a first visit.
import { whole } from "./ahead.js";
import { form, startHeap, toHeap } from "./journal.js";
import { answered, arrived, count, goTo, inHand, inReach, openAll } from "./keeper.js";

/** A heap whose handful was dusty, on Today. */
async function dustyOnToday(page) {
  await startHeap(page, "By the shed");
  await toHeap(page, "By the shed");
  await form(page, "Feed");
  await page.getByRole("button", { name: "Log this feed" }).click();
  await form(page, "Read");
  await page.getByLabel("dusty", { exact: true }).check();
  await page.getByRole("button", { name: "Log the reading" }).click();
  await page.getByText(/feels dusty/).first().waitFor();
  await goTo(page, "Today");
}

const REACHED = {
  "first visit": async () => {},
  "everything opened": openAll,
  "a fault shown": async (page) => {
    await count(inHand(page, "Fresh grass")).fill("-2");
    await count(inReach(page, "Straw")).fill("abc");
  },
  "a fault in the settings": async (page) => {
    await goTo(page, "Settings");
    await page.getByRole("button", { name: "Weigh a vessel" }).click();
    await page.getByRole("button", { name: "Next", exact: true }).click();
    await page.getByText("Enter a weight, such as 0.8.").waitFor();
    await page.getByLabel("Lowest C:N").fill("50");
    await page.getByLabel("Highest C:N").fill("20");
  },
  "aim not met": async (page) => {
    for (const box of await page.locator(".reach .line-head input[type=checkbox]").all()) await box.uncheck();
  },
  "empty hand": (page) => page.getByRole("button", { name: "Clear all" }).click(),
  settings: (page) => goTo(page, "Settings"),
  "today without a heap": async (page) => {
    await goTo(page, "Today");
    await page.getByText(/^No heap yet/).waitFor();
  },
  today: async (page) => {
    await page.getByRole("link", { name: "Look around in an invented garden" }).click();
    await page.locator(".today :is(.needs, .need-rest)").waitFor();
    await openAll(page);
  },
  "today with something done": async (page) => {
    await dustyOnToday(page);
    await page.getByRole("button", { name: /^Watered/ }).click();
    // Until what the day needs has been worked out anew.
    await page.getByText(/works by itself/).first().waitFor();
  },
  "today with something put aside": async (page) => {
    await dustyOnToday(page);
    await page.getByRole("button", { name: "Not today: Water By the shed", exact: true }).click();
    await page.getByRole("region", { name: "Put aside for today" }).waitFor();
  },
  "no heap yet": (page) => goTo(page, "Heaps"),
  "a heap being started": async (page) => {
    await goTo(page, "Heaps");
    await page.getByRole("button", { name: "Start a heap" }).click();
    await openAll(page);
  },
  "a heap": async (page) => {
    await startHeap(page, "By the shed");
    await toHeap(page, "By the shed");
    await form(page, "Feed");
    await page.getByRole("button", { name: "Log this feed" }).click();
    await page.locator(".in-figures").waitFor();
    // Pictures that are still drawn anew cannot be looked at.
    await whole(page);
  },
  "looking ahead": async (page) => {
    await STATES["a heap"](page);
    await openAll(page);
  },
  "a reading being logged": async (page) => {
    await STATES["a heap"](page);
    await form(page, "Read");
    await page.getByRole("button", { name: "Log the reading" }).click();
    await page.getByText("Enter or tick at least one thing that you saw.").waitFor();
  },
  "a note being logged": async (page) => {
    await STATES["a heap"](page);
    await form(page, "Note");
  },
  "more to be logged": async (page) => {
    await STATES["a heap"](page);
    await form(page, "More");
  },
  "the logbook": async (page) => {
    await STATES["a heap"](page);
    await goTo(page, "Logbook");
    await page.getByRole("button", { name: /^Take back: Fed/ }).click();
    await page.getByRole("button", { name: /^Bring back: Fed/ }).waitFor();
    await page.getByRole("button", { name: /^Correct the time: Started/ }).click();
  },
  "no bed yet": async (page) => {
    await goTo(page, "Beds");
    await form(page, "Describe a bed");
    await openAll(page);
  },
  "a plan of the beds": async (page) => {
    await goTo(page, "Beds");
    await form(page, "Describe a bed");
    await page.getByLabel("Name", { exact: true }).fill("By the shed");
    await page.getByLabel("Area, m²").fill("6");
    await page.getByRole("button", { name: "Keep this bed" }).click();
    await page.getByLabel("How many, compost to share").fill("100");
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await page.locator(".plan-told").waitFor();
    await form(page, "Spread compost");
    await openAll(page);
  },
  "something put by": async (page) => {
    await goTo(page, "Stores");
    await form(page, "Put by");
    await page.getByLabel("What", { exact: true }).fill("straw");
    await page.locator(".found .tile").first().click();
    await page.getByRole("button", { name: "Put it by" }).click();
    await page.locator(".shelf").getByRole("button", { name: /^Use / }).click();
  },
  "something searched": async (page) => {
    await page.getByLabel("Find another material").fill("leaves");
    await page.getByLabel("Add something to what is in reach").fill("xyzzy");
  },
};

/** Each way that the page can look, by its name: reached, with all that comes one by one and all that is answered there. */
export const STATES = Object.fromEntries(Object.entries(REACHED).map(([name, reach]) => [name, async (page) => {
  await reach(page);
  await arrived(page);
  await answered(page);
}]));
