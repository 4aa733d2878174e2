// The keeper's hands and eyes on the days ahead of a heap.
import { goTo, plain } from "./keeper.js";

export const AHEAD = ".ahead";
export const INSIDE = ".inside";
/** Until all runs of a demo heap are there, on a slow machine [ms]. */
export const RUNS_MS = 180_000;

/** Opens the invented garden and one of its heaps, counted from the top of the list. */
export async function demoHeap(page, index = 0) {
  await goTo(page, "Heaps");
  await page.getByRole("button", { name: "Look around in an invented garden" }).click();
  await page.getByText("Demo garden, invented").waitFor();
  await page.locator(".heap-link").nth(index).click();
  await page.locator(".in-figures").waitFor();
}

/** Waits until the first picture is there. */
export const pictured = (page) => page.locator(".time-picture").waitFor({ timeout: RUNS_MS });
/** Waits until all ways to go on lie side by side. */
export const compared = (page) => page.waitForFunction(() => document.querySelectorAll(".differences li").length >= 2, null, { timeout: RUNS_MS });
/** Waits until the runs of the way that is looked at are bands. */
export const banded = (page) => page.locator(".over-time .key-time-wide").waitFor({ timeout: RUNS_MS });
/** Waits until nothing more is to come. */
export const whole = (page) => page.waitForFunction(
  () => document.querySelector(".time-picture") && !document.querySelector(".running"), null, { timeout: RUNS_MS });
/** The texts of places, with plain spaces. */
export const all = async (place) => (await place.allInnerTexts()).map(plain);
/** Ticks one of several under a legend. */
export const choose = (page, legend, name) => page.getByRole("group", { name: legend }).getByText(name, { exact: true }).click();
/** The rows of the table behind a summary, which is opened. */
export async function rows(page, summary) {
  const fold = page.locator("details").filter({ has: page.locator("summary", { hasText: summary }) });
  if (!(await fold.evaluate((details) => details.open))) await fold.locator("summary").click();
  await fold.locator("tbody tr").first().waitFor();
  return fold.locator("tbody tr").evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
}
