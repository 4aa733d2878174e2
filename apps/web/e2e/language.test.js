// Another language: chosen by the device or in the settings, said everywhere, also by the workers, without signal, on paper;
// and a language that is longer or runs from right to left does not break the page.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { after, before, describe, test } from "node:test";
import { banded } from "./ahead.js";
import { kept, open, openBrowser, PHONE, ready, sidewaysScroll, startProgram, startProxy, until, watch } from "./harness.js";
import { opened } from "./journal.js";
import { openAll } from "./keeper.js";

const GERMAN = { ...PHONE, locale: "de-DE" };
const PLACES = ["today", "balance", "heaps", "stores", "beds", "logbook", "settings"];
const DEMO = "#/today/demo";
// Words that are the same in both languages: names, units, sources.
const ALIKE = /^(Heapwright|Magnesium|Test|English|Deutsch|\u2068?[\w.-]+\.\w{2,3}(\/\S*)?)$/;

let program;
let browser;
before(async () => {
  program = await startProgram();
  browser = await openBrowser();
});
after(async () => {
  await browser?.close();
  await program?.kill();
});

const language = (page) => page.evaluate(() => [document.documentElement.lang, document.documentElement.dir]);

/** Opens the page with the invented garden in it. */
async function withDemo(options, address = program.address) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const troubles = watch(page, address);
  await open(page, address + DEMO);
  await page.locator(".needs > li").first().waitFor();
  return { page, context, troubles };
}

/** Goes to a place by its address, the same in every language. */
async function go(page, hash) {
  await page.evaluate((to) => { location.hash = to; }, hash);
  await page.locator("main h1").first().waitFor();
  await opened(page);
}

/** What can be read or is read out, line by line, with everything opened. */
async function lines(page) {
  await openAll(page);
  return page.evaluate(() => {
    const named = [...document.querySelectorAll("[aria-label], [placeholder], [alt], [title]")]
      .flatMap((one) => ["aria-label", "placeholder", "alt", "title"].map((name) => one.getAttribute(name)).filter(Boolean));
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const texts = [document.title];
    while (walker.nextNode()) texts.push(walker.currentNode.data);
    return [...texts, ...named].map((text) => text.replace(/\s+/g, " ").trim()).filter(Boolean);
  });
}

const file = (path) => readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8");
const files = (folder, ending) => readdirSync(new URL(`../../../${folder}`, import.meta.url))
  .filter((name) => name.endsWith(ending) && !name.endsWith("_of_commands.ftl"))
  .map((name) => file(`${folder}/${name}`))
  .join("\n");

/** What the sentences of a language say: without comments, names of messages and of arguments. */
const sentences = (language) => files(`crates/texts/locales/${language}`, ".ftl")
  .replace(/^#.*$/gm, "")
  .replace(/^-?[a-z][\w-]* =/gm, "")
  .replace(/^\s*\*?\[[^\]]*\]/gm, "")
  .replace(/\{ \$[\w-]+ ->/g, "")
  .replace(/\{[^{}]*\}/g, " ");

const words = (text) => text.toLowerCase().match(/\p{L}{3,}/gu) ?? [];

/** All that the keeper of the invented garden wrote. */
function written() {
  const found = new Set();
  const look = (value, name) => {
    if (typeof value === "string" && ["name", "text", "crop", "logger"].includes(name)) found.add(value);
    if (value && typeof value === "object") for (const [inner, one] of Object.entries(value)) look(one, Array.isArray(value) ? name : inner);
  };
  for (const line of file("dist/demo.jsonl").trim().split("\n")) look(JSON.parse(line).body);
  return [...found].sort((one, other) => other.length - one.length);
}

/**
 * Finds words of English in a German line: words that the English page or its sentences and tables have, and no sentence or table
 * of German. What is the same in both languages is taken out before: what the keeper wrote, and where figures come from.
 */
function englishIn(seenInEnglish) {
  const cells = [...file("crates/catalogue/tables/sources.csv").matchAll(/"((?:[^"]|"")*)"|([^",\n]+)/g)];
  const same = [...written(), ...cells.map(([, quoted, plain]) => (quoted ?? plain).replaceAll('""', '"').trim())]
    .filter((one) => one.length > 3)
    .sort((one, other) => other.length - one.length);
  // The first column of a table has ids.
  const tables = files("crates/catalogue/tables/de", ".csv").replace(/^[^,]*,/gm, "");
  const german = new Set(words(sentences("de") + tables));
  const english = new Set(words(sentences("en") + seenInEnglish.join("\n")).filter((word) => !german.has(word)));
  return (line) => words(same.reduce((rest, one) => rest.replaceAll(one, " "), line)).filter((word) => english.has(word));
}

/** The address of a heap of the invented garden that is at work. */
async function heapAddress(page) {
  await go(page, "#/heaps");
  return page.locator("main a[href^='#/heaps/']").first().getAttribute("href");
}

/** Every place, one after another. */
async function everywhere(page, each) {
  for (const place of PLACES) {
    await go(page, `#/${place}`);
    await each(place);
  }
  await go(page, await heapAddress(page));
  await banded(page);
  await each("heap");
}

describe("German", () => {
  test("a device that is set to German is spoken to in German at the first visit, before the page has started too", async () => {
    const context = await browser.newContext(GERMAN);
    const page = await context.newPage();
    let go;
    const held = new Promise((resolve) => { go = resolve; });
    await page.route(/heapwright_web_bg.*\.wasm$/, async (route) => { await held; await route.continue(); });
    await page.goto(program.address);
    await page.locator("nav").getByText("Heute").waitFor();
    assert.match(await page.locator("#starting").innerText(), /^Einen Moment/);
    assert.deepEqual(await language(page), ["de", "ltr"]);
    go();
    await ready(page);
    assert.match(await page.title(), /^Heapwright: \S/);
    await page.getByRole("link", { name: "Einstellungen" }).click();
    await page.getByRole("heading", { level: 1, name: "Einstellungen" }).waitFor();
    await context.close();
  });

  test("no place says in German what it says in English", { timeout: 400_000 }, async () => {
    const english = await withDemo(PHONE);
    const inEnglish = new Set();
    await everywhere(english.page, async () => { for (const line of await lines(english.page)) inEnglish.add(line); });
    await english.context.close();

    const { page, context, troubles } = await withDemo(GERMAN);
    const journal = file("dist/demo.jsonl");
    // What is the same in both: what the keeper wrote, where figures come from, and names.
    const sources = file("crates/catalogue/tables/sources.csv").replaceAll('""', '"');
    const isSource = (line) => line.split("; ").every((part) => part.replace(/^[\w.-]+: /, "").split(/(?<=\.) (?=\S+$)|(?<=\S) (?=\S+\.\S+$)/).every((piece) => sources.includes(piece)));
    const foreign = englishIn([...inEnglish]);
    assert.deepEqual(foreign("Angenommen ist: Salz, moisture, Kalium."), ["moisture"]);
    const leaks = new Set();
    const look = async (place) => {
      for (const line of await lines(page)) {
        if (ALIKE.test(line) || isSource(line)) continue;
        for (const word of foreign(line)) leaks.add(`${place}: ${word} in: ${line}`);
        if (!inEnglish.has(line) || !/\p{L}{4}/u.test(line)) continue;
        const bare = line.replace(/^([,:;]|Heapwright:) /, "");
        if (!journal.includes(JSON.stringify(bare).slice(1, -1))) leaks.add(`${place}: ${line}`);
      }
    };
    await everywhere(page, look);
    // What is said when something is typed that cannot be, and what a plan says.
    await go(page, "#/balance");
    await page.locator(".hand .line input").first().fill("3 Eimmer");
    await page.locator(".hand .fault").filter({ hasText: /\S/ }).first().waitFor();
    await look("balance, mistyped");
    await go(page, "#/beds");
    await page.locator("#plan-amount").fill("100 L");
    await page.locator(".plan-act").click();
    await page.locator(".plan-told").waitFor();
    await look("beds, planned");
    assert.deepEqual([...leaks], []);
    assert.deepEqual(troubles, []);
    await context.close();
  });

  test("a draft with a unit in words is still meant when the device speaks another language", async () => {
    const german = await browser.newContext(GERMAN);
    const page = await german.newPage();
    await open(page, program.address);
    await kept(page);
    await page.locator(".hand .line input").first().fill("3 Eimer");
    await until(() => page.evaluate(() => localStorage.getItem("heapwright.balance.1")?.includes("3 Eimer")), "the draft is kept");
    await page.reload();
    await ready(page);
    assert.equal(await page.locator(".hand .line input").first().inputValue(), "3 Eimer");
    const storageState = await german.storageState();
    await german.close();

    const english = await browser.newContext({ ...PHONE, storageState });
    const second = await english.newPage();
    await open(second, program.address);
    const line = second.locator(".hand .line").first();
    assert.equal(await line.locator("input").first().inputValue(), "3");
    assert.equal(await line.locator("select:not(.condition)").inputValue(), "bucket");
    assert.equal((await second.locator(".hand .fault").allInnerTexts()).join(""), "");
    await english.close();
  });

  test("it is chosen in the settings, and stays without signal, with what was typed", async () => {
    const context = await browser.newContext(PHONE);
    const page = await context.newPage();
    await open(page, program.address);
    await kept(page);
    await page.locator(".tile").first().click();
    const typed = await page.locator(".hand .line").count();
    await go(page, "#/settings");
    await page.getByLabel("Deutsch", { exact: true }).check();
    await Promise.all([page.waitForEvent("load"), page.getByRole("button", { name: "Use this language" }).click()]);
    await ready(page);
    assert.deepEqual(await language(page), ["de", "ltr"]);
    assert.equal(await page.getByLabel("Deutsch", { exact: true }).isChecked(), true);
    await context.setOffline(true);
    await page.reload();
    await ready(page);
    await page.getByRole("heading", { level: 1, name: "Einstellungen" }).waitFor();
    await go(page, "#/balance");
    assert.equal(await page.locator(".hand .line").count(), typed);
    await go(page, "#/settings");
    await page.getByLabel("English", { exact: true }).check();
    await Promise.all([page.waitForEvent("load"), page.getByRole("button", { name: "Diese Sprache verwenden" }).click()]);
    await ready(page);
    assert.deepEqual(await language(page), ["en", "ltr"]);
    await page.getByRole("heading", { level: 1, name: "Settings" }).waitFor();
    await context.close();
  });

  test("materials are found, and amounts read, as one says them in German", async () => {
    const context = await browser.newContext(GERMAN);
    const page = await context.newPage();
    await open(page, program.address);
    await page.getByRole("searchbox").first().fill("Kaffeesatz");
    await page.getByRole("button", { name: "Kaffeesatz" }).first().click();
    const line = page.locator(".hand .line").filter({ hasText: "Kaffeesatz" });
    await line.waitFor();
    await line.getByRole("textbox").fill("2,5 Eimer");
    await until(async () => !/\S/.test(await page.locator(".hand .fault").allInnerTexts().then((all) => all.join(""))), "2,5 Eimer is an amount");
    await context.close();
  });

  test("texts of another version leave the page English", async (run) => {
    const proxy = await startProxy(program, { change: (path, text) => (path.startsWith("/texts-") ? text.replace(/\\u001e/, "") : text) });
    run.after(() => proxy.stop());
    const context = await browser.newContext(GERMAN);
    const page = await context.newPage();
    await open(page, proxy.address);
    assert.deepEqual(await language(page), ["en", "ltr"]);
    await page.getByRole("link", { name: "Settings" }).waitFor();
    await context.close();
  });
});

/** The texts of a module with every word made a fifth longer, which is half again as long as English; control characters stay. */
function longer(module) {
  const word = (text) => text.replace(/\p{L}{4,}/gu, (one) => one + one.slice(0, Math.ceil(one.length / 5)));
  const texts = JSON.parse(module.replace(/^export default /, "").replace(/;\s*$/, ""));
  texts.pack = texts.pack.replace(/\x01.|\x06...|\x02..|\x03[^\x04]*\x04|[\x05\x1d\x1e]|([^\x01-\x06\x1d\x1e]+)/gsu, (all, plain) => (plain ? word(plain) : all));
  texts.words = texts.words.split("\n").map((line) => line.replace(/\t.*/, word)).join("\n");
  return texts;
}

const module = (texts) => `export default ${JSON.stringify(texts)};\n`;

for (const [what, change, direction] of [
  ["a language half again as long as English", longer, "ltr"],
  ["a language that runs from right to left", (text) => ({ ...longer(text), tag: "ar", direction: "rtl" }), "rtl"],
]) {
  test(`${what} does not break the page`, { timeout: 400_000 }, async (run) => {
    const proxy = await startProxy(program, { change: (path, text) => (path.startsWith("/texts-") ? module(change(text)) : text) });
    run.after(() => proxy.stop());
    const { page, context, troubles } = await withDemo(GERMAN, proxy.address);
    assert.equal((await language(page))[1], direction);
    await everywhere(page, async (place) => {
      await openAll(page);
      for (const width of [320, 768, 1280]) {
        await page.setViewportSize({ width, height: 740 });
        assert.ok((await sidewaysScroll(page)) <= 0, `${place} scrolls sideways at ${width} px`);
        const cut = await page.evaluate(() => [...document.querySelectorAll("button, summary, .places a, label, h1, h2, h3, legend")]
          .filter((one) => one.checkVisibility() && !one.closest(".unseen") && (one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== "inline" || one.scrollHeight > one.clientHeight + 4 && getComputedStyle(one).overflow !== "visible"))
          .map((one) => `${one.textContent.trim()} (${one.scrollWidth}/${one.clientWidth}, ${one.scrollHeight}/${one.clientHeight})`));
        assert.deepEqual(cut, [], `${place} cuts words off at ${width} px`);
      }
      await page.setViewportSize(PHONE.viewport);
    });
    assert.deepEqual(troubles, []);
    await context.close();
  });
}
