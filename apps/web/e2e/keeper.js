// The keeper's hands and eyes on the page "Balance a feed": what is tapped, typed and read, by the names that are on it.
import { ready } from "./harness.js";

/** Under which name the page keeps what was tapped and typed. */
export const DRAFT = "heapwright.balance.1";

/** The sentence of the answer. */
export const sentence = (page) => page.locator(".answer-line");
/** The line under the sentence: the chance, or the nearest recipe. */
export const underSentence = (page) => page.locator(".answer-chance");
/** A tile by the name on it. */
export const tile = (page, name) => page.getByRole("button", { name, exact: true });
/** The line in hand of a material, by its short name. */
export const inHand = (page, name) => page.locator(".hand .line").filter({ has: page.locator(".line-name", { hasText: name }) });
/** The line in reach of a material, by its short name. */
export const inReach = (page, name) => page.locator(".reach .line").filter({ has: page.locator(".line-name", { hasText: name }) });
/** The field for how many, in a line. */
export const count = (line) => line.getByRole("textbox");
/** A summary to be opened, by the start of its text. */
export const folded = (page, text) => page.locator("summary", { hasText: text });

/** Text with plain spaces. */
export const plain = (text) => text.replace(/\s+/g, " ").trim();

/** Waits until what was tapped last is answered: the answer comes a moment after the tap. */
export async function answered(page) {
  // Other places than Balance do not say that they are busy: two frames later they are not.
  await page.evaluate(async () => {
    for (let frame = 0; frame < 2; frame += 1) await new Promise((done) => { requestAnimationFrame(() => setTimeout(done)); });
  });
  await page.waitForFunction(() => !document.querySelector("[data-busy]"));
}

/** The text of a place, with plain spaces. */
export async function textOf(place) {
  await answered(place.page());
  return plain(await place.innerText());
}

/** The value of a figure as the page shows it, such as "31" or "57 %". */
export function figure(page, name) {
  const row = page.locator(".figure").filter({ has: page.locator(".figure-name", { hasText: new RegExp(`^${name}$`) }) });
  return textOf(row.locator(".figure-value"));
}

/** Waits until all parts of a place have come: they come one by one. */
export const arrived = (page) => page.waitForFunction(() => document.querySelector("#title") && !document.querySelector(".coming"));

/** Goes to a place by the bar, if it is not the present one. */
export async function goTo(page, name) {
  const link = page.getByRole("navigation", { name: "Places" }).getByRole("link", { name, exact: true });
  if ((await link.getAttribute("aria-current")) === "page" && (await page.locator("#title").count()) === 1) return;
  await link.click();
  await page.waitForFunction((name) => document.querySelector(".places [aria-current]")?.textContent.trim() === name, name);
  await arrived(page);
}

/** All five figures and the sentence: two pages that answer the same have the same. */
export async function answer(page) {
  await goTo(page, "Balance");
  const names = ["C:N", "Moisture", "Air space", "Mass", "Volume"];
  const figures = {};
  for (const name of names) figures[name] = await figure(page, name);
  return { sentence: await textOf(sentence(page)), under: await textOf(underSentence(page)), figures };
}

/** The text that a control is described by, as assistive technology puts it together. */
export async function description(control) {
  await answered(control.page());
  return control.evaluate((element) => (element.getAttribute("aria-describedby") ?? "").split(/\s+/)
    .map((id) => (id && document.getElementById(id)?.textContent) || "").join(" ").trim());
}

/** What is kept on the device. */
export const draft = (page) => page.evaluate((key) => JSON.parse(localStorage.getItem(key)), DRAFT);

/** Changes what is kept on the device, then loads the page again. */
export async function withDraft(page, change) {
  const text = change(await draft(page));
  await page.evaluate(([key, value]) => localStorage.setItem(key, value), [DRAFT, typeof text === "string" ? text : JSON.stringify(text)]);
  await page.reload();
  await ready(page);
}

/** Opens everything that can be opened, also what lies inside. */
export async function openAll(page) {
  await arrived(page);
  // What is closed is not there yet: opening one may bring others.
  for (;;) {
    const opened = await page.evaluate(async () => {
      const closed = [...document.querySelectorAll("details:not([open])")];
      for (const details of closed) details.open = true;
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 30)));
      return closed.length;
    });
    if (opened === 0) return;
  }
}
