// WCAG 2.2, what no other file here looks at. The sheet of all its criteria is docs/accessibility.md; names begin with the number.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { before, describe, test } from "node:test";
import { count, description, goTo, inHand, plain, sentence, textOf } from "./keeper.js";
import { open, ready, rig, until } from "./harness.js";
import { form, startHeap, toHeap, told } from "./journal.js";
import { STATES } from "./states.js";
import { called, read, treeOf } from "./tree.js";

const our = rig({ viewport: { width: 412, height: 800 } });
const { visiting } = our;
const PLACES = ["Today", "Balance", "Heaps", "Stores", "Beds", "Logbook", "Settings"];

/** In the page: what each criterion finds wrong with it, by its number. */
function faultsOfTheMoment() {
  const all = (selector) => [...document.querySelectorAll(selector)].filter((element) => element.checkVisibility());
  const words = (text) => text.replace(/\s+/g, " ").trim();
  const what = (element) => `${element.tagName.toLowerCase()}.${element.getAttribute("class") ?? ""} ${words(element.getAttribute("aria-label") ?? element.textContent).slice(0, 40)}`;
  const faults = {};
  const ask = (number, found) => { faults[number] = found; };

  ask("1.1.1", [
    ...all("svg").filter((svg) => !svg.closest("[aria-hidden=true]") && !(svg.getAttribute("role") === "img" && svg.getAttribute("aria-label"))),
    ...all("img").filter((image) => !image.hasAttribute("alt")),
    // A picture that shows numbers has them in words beside it.
    ...all("svg").filter((svg) => svg.querySelector("text") && !words(svg.closest("figure")?.querySelector("figcaption p")?.textContent ?? "")),
  ].map(what));
  ask("1.3.3", [...words(document.body.innerText).matchAll(/[^.]*\b(on the (left|right)( side)?|to the (left|right) of|(green|red|brown|blue|round|square) (button|box|bar|card))\b[^.]*/gi)].map(([said]) => said));
  ask("1.3.5", all("input:not([type=radio], [type=checkbox], [type=file], [type=range])")
    .filter((field) => /e-?mail|telephone|phone number|surname|first name|your name|street|post ?code|birth/i.test([...field.labels ?? []].map((label) => label.textContent).join(" "))).map(what));
  ask("1.4.1", [
    ...all(".state-good, .state-off, .stage, .trouble").filter((state) => !words(state.textContent) && getComputedStyle(state).display !== "none"),
    ...all("[aria-invalid=true]").filter((field) => getComputedStyle(field).borderBlockStartWidth === "1.5px"),
    ...all("p a[href]").filter((link) => getComputedStyle(link).textDecorationLine === "none" && getComputedStyle(link).fontWeight === getComputedStyle(link.closest("p")).fontWeight && words(link.textContent) !== words(link.closest("p").textContent)),
    // Lines of one picture that differ by more than colour.
    ...all("svg.time-picture").filter((svg) => {
      const strokes = new Map([...svg.querySelectorAll(".time-middle, .time-other-0, .time-other-1, .time-other-2")].map((line) => [line.getAttribute("class"), getComputedStyle(line).strokeDasharray]));
      return new Set(strokes.values()).size < strokes.size;
    }),
  ].map(what));
  ask("1.4.2", all("audio, video, iframe, object, embed").map(what));
  ask("1.4.13", all("[title], [aria-haspopup], [popovertarget]").map(what));
  ask("2.1.4", all("[accesskey], [onkeydown], [onkeypress], [onkeyup]").map(what));
  ask("2.2.2", document.getAnimations().filter((one) => one.playState === "running").map((one) => what(one.effect.target)));
  ask("2.4.4", (() => {
    const targets = new Map();
    return all("a[href]").filter((link) => {
      const name = words(link.getAttribute("aria-label") ?? link.textContent);
      const other = targets.get(name);
      targets.set(name, link.getAttribute("href"));
      return !name || (other !== undefined && other !== link.getAttribute("href"));
    }).map(what);
  })());
  ask("2.4.6", [
    ...all("h1, h2, h3, h4, label, legend").filter((title) => !words(title.textContent) && !title.querySelector("input, select")),
    ...all("h2").filter((title, index, titles) => titles.slice(0, index).some((one) => words(one.textContent) === words(title.textContent) && one.closest("li") === title.closest("li"))),
  ].map(what));
  ask("3.3.1", all("[aria-invalid=true]").filter((field) => {
    const told = (field.getAttribute("aria-describedby") ?? "").split(" ").map((id) => (id && document.getElementById(id)?.textContent) || "").join(" ");
    return !/\S/.test(told);
  }).map(what));
  ask("3.3.8", all("input[type=password]").map(what));
  return faults;
}

/** By the tree: controls without a name or a value, and those whose name lacks the words that are on them. */
async function faultsOfTheTree(page) {
  const { root } = await treeOf(page);
  const faults = { "4.1.2": [], "2.5.3": [], "2.5.3 4.1.2": [] };
  const look = (node) => {
    const isControl = ["button", "link", "textbox", "searchbox", "combobox", "checkbox", "radio", "slider", "DisclosureTriangle"].includes(node.role);
    if (node.isRead && node.canFocus && (!node.name && node.role !== "RootWebArea" || ["generic", "none"].includes(node.role))) faults["4.1.2"].push(`${called(node)} ${node.id}`);
    if (isControl && ["button", "link", "DisclosureTriangle"].includes(node.role)) {
      // What is on it, without signs such as a cross or a tick.
      const shown = letters([...read(node)].filter((inner) => inner.role === "StaticText" && inner.isSeen).map((inner) => inner.name).join(" "));
      if (!letters(node.name).includes(shown)) faults["2.5.3"].push(`${called(node)} shows ${shown}`);
    }
    if (node.isRead && !["StaticText", "ListMarker"].includes(node.role) && STRAY.test(node.said)) faults["2.5.3 4.1.2"].push(`${node.role} ${JSON.stringify(node.said)}`);
    node.within.forEach(look);
  };
  look(root);
  return faults;
}

// A space before a mark, two in a row, or one at an end: heard as a pause, or as the name of the mark. ("!" stands as a mark of
// its own before what is off.)
const STRAY = /\s[,.;:?)]|\s{2}|^\s|\s$/;
const letters = (text) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ").trim();

describe("in every place and state", () => {
  const found = {};
  before(async () => {
    for (const state of Object.keys(STATES)) {
      const context = await our.browser.newContext({ viewport: { width: 412, height: 800 } });
      const page = await context.newPage();
      await open(page, our.program.address);
      await STATES[state](page);
      for (const faults of [await page.evaluate(faultsOfTheMoment), await faultsOfTheTree(page)]) {
        for (const [number, list] of Object.entries(faults)) (found[number] ??= []).push(...list.map((fault) => `${state}: ${fault}`));
      }
      await context.close();
    }
  });

  const MEANT = {
    "1.1.1": "every picture is an ornament, or has its numbers in words beside it",
    "1.3.3": "nothing is told by where it stands, its colour or its shape alone",
    "1.3.5": "no field asks for anything about the person",
    "1.4.1": "what a colour tells, a word, a mark, a dash or a weight tells too",
    "1.4.2": "nothing makes a sound or plays a film",
    "1.4.13": "nothing comes up by pointing at it or by focus",
    "2.1.4": "no single key does anything by itself",
    "2.2.2": "nothing moves by itself",
    "2.4.4": "links of one name lead to one place",
    "2.4.6": "headings and labels say something, and no two headings of a place say the same",
    "2.5.3": "the name of a control has the words that are on it",
    "2.5.3 4.1.2": "no name has a stray space in it",
    "3.3.1": "each field with a fault is marked and has the fault told with it",
    "3.3.8": "nothing asks for a password",
    "4.1.2": "all that takes the focus has a role and a name",
  };
  for (const [number, meant] of Object.entries(MEANT)) {
    test(`${number} ${meant}`, () => assert.deepEqual(found[number], []));
  }
});

describe("in every place", () => {
  visiting("1.3.4 upright and across it is the same page, and the installed one is not held either way", async (page) => {
    const all = () => page.evaluate(() => [...document.querySelectorAll("h1, h2, button, input, select, a[href]")].filter((element) => element.checkVisibility()).map((element) => element.getAttribute("aria-label") ?? element.textContent.trim()));
    for (const place of PLACES) {
      await page.setViewportSize({ width: 360, height: 740 });
      await goTo(page, place);
      await page.locator("#title").waitFor();
      await until(async () => (await page.locator("h1").count()) === 1, place);
      await page.waitForTimeout(300);
      const upright = await all();
      await page.setViewportSize({ width: 740, height: 360 });
      assert.deepEqual(await all(), upright, place);
    }
    const manifest = await (await page.request.get(`${our.program.address}manifest.webmanifest`)).json();
    assert.ok([undefined, "any", "natural"].includes(manifest.orientation), manifest.orientation);
  });

  visiting("2.4.2 each place has a title of its own that names it", async (page) => {
    const titles = [];
    for (const place of PLACES) {
      await goTo(page, place);
      await until(async () => (await page.title()).includes(place), `the title of ${place}`);
      titles.push(await page.title());
    }
    assert.equal(new Set(titles).size, PLACES.length);
    // One heap has its own name, also after a reload and by its address alone.
    await startHeap(page, "By the shed");
    await toHeap(page, "By the shed");
    await until(async () => (await page.title()) === "Heapwright: By the shed", "the title of a heap");
    await page.reload();
    await until(async () => (await page.title()) === "Heapwright: By the shed", "the title of a heap after a reload");
    await page.goBack();
    await until(async () => (await page.title()) === "Heapwright: Heaps", "the title of all heaps");
    await page.evaluate(() => { location.hash = "#/heaps/0193f2a1-b3c4-7000-8000-000000000001"; });
    await page.getByText("This heap is not in the journal of this device.").waitFor();
    await until(async () => (await page.title()) === "Heapwright: Heaps", "the title where there is no such heap");
  });

  for (const [locale, words] of [["en-GB", "To the content"], ["de-DE", "Zum Inhalt"]]) {
    visiting(`2.4.1 the first Tab is at a link past the bar, which leads to the heading of the place: ${locale}`, async (page) => {
      for (const place of await page.locator(".places a").evaluateAll((links) => links.map((link) => link.getAttribute("href")))) {
        await page.evaluate((to) => { location.hash = to; }, place);
        await page.reload();
        await ready(page);
        await page.locator(`.places [aria-current][href="${place}"]`).waitFor();
        await page.locator("#title").waitFor();
        // Before the journal is open some places have nothing to stop at.
        await page.waitForFunction(() => performance.getEntriesByName("heapwright-journal-open").length > 0);
        assert.equal(await page.locator(".skip").evaluate((link) => getComputedStyle(link).clipPath), "inset(50%)", "it is seen while it has the focus only");
        await page.keyboard.press("Tab");
        const link = page.locator(":focus");
        assert.equal(await link.innerText(), words);
        const box = await link.boundingBox();
        assert.ok(box.x >= 0 && box.y >= 0 && box.width >= 48 && box.height >= 48, JSON.stringify(box));
        assert.equal(await link.evaluate((one) => {
          const { left, top, width, height } = one.getBoundingClientRect();
          return document.elementFromPoint(left + width / 2, top + height / 2) === one && getComputedStyle(one).clipPath;
        }), "none", "nothing lies over it");
        await page.keyboard.press("Enter");
        assert.equal(await page.evaluate(() => document.activeElement.id), "title");
        assert.equal(await page.evaluate(() => location.hash), place, "it leads to no other place");
        await page.keyboard.press("Tab");
        assert.ok(await page.locator(":focus").evaluate((one) => Boolean(one.closest("main, footer"))), "the next Tab is behind the bar");
      }
    }, { locale });
  }

  visiting("3.2.3 3.2.6 the bar of places and the foot are the same in each, in the same order", async (page) => {
    const frame = () => page.evaluate(() => ({
      bar: [...document.querySelectorAll("header a, header button")].map((one) => `${one.textContent.trim()} ${one.getAttribute("href") ?? ""}`),
      foot: document.querySelector("footer").textContent.trim(),
    }));
    await page.getByRole("button", { name: "Bright sun" }).waitFor();
    const first = await frame();
    assert.ok(first.bar.length >= PLACES.length + 1 && first.foot.length > 0);
    for (const place of PLACES) {
      await goTo(page, place);
      assert.deepEqual(await frame(), first, place);
    }
  });

  visiting("3.2.1 3.2.2 going through by Tab, choosing and typing never lead elsewhere or move the focus", async (page, context) => {
    let others = 0;
    context.on("page", () => { others += 1; });
    await startHeap(page, "By the shed");
    for (const place of [...PLACES, "a heap"]) {
      if (place === "a heap") {
        await toHeap(page, "By the shed");
        await form(page, "Read");
      } else await goTo(page, place);
      const where = () => page.evaluate(() => `${location.hash} ${document.querySelector("h1").textContent}`);
      const before = await where();
      for (let step = 0; step < 60; step += 1) {
        await page.keyboard.press("Tab");
        const kind = await page.evaluate(() => `${document.activeElement.tagName} ${document.activeElement.type}`);
        if (/^SELECT|radio/.test(kind)) await page.keyboard.press("ArrowDown");
        if (/INPUT (text|search)|TEXTAREA/.test(kind)) await page.keyboard.type("1");
        if (/checkbox/.test(kind)) await page.keyboard.press("Space");
        const after = await page.evaluate(() => `${document.activeElement.tagName} ${document.activeElement.type}`);
        assert.equal(after, kind, `${place}: the focus went from ${kind}`);
        assert.equal(await where(), before, place);
      }
    }
    assert.equal(others, 0, "windows that opened");
  });
});

describe("by hand", () => {
  visiting("2.5.2 a press that is let go elsewhere does nothing", async (page) => {
    const before = await textOf(sentence(page));
    const box = await page.getByRole("button", { name: "Clear all" }).boundingBox();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    assert.equal(await textOf(sentence(page)), before, "on the press");
    await page.mouse.move(box.x, box.y + 300);
    await page.mouse.up();
    assert.equal(await textOf(sentence(page)), before, "let go elsewhere");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.up();
    assert.notEqual(await textOf(sentence(page)), before, "let go on it");
  });

  test("2.5.4 nothing listens to how the device is moved or where it is", async () => {
    const context = await our.browser.newContext();
    await context.addInitScript(() => {
      window.listened = [];
      const add = EventTarget.prototype.addEventListener;
      EventTarget.prototype.addEventListener = function (type, ...rest) {
        window.listened.push(type);
        return add.call(this, type, ...rest);
      };
    });
    const page = await context.newPage();
    await open(page, our.program.address);
    for (const place of PLACES) await goTo(page, place);
    const listened = await page.evaluate(() => window.listened);
    assert.ok(listened.includes("click"));
    assert.deepEqual(listened.filter((type) => /^device|shake|orientationchange/.test(type)), []);
    await context.close();
  });

  visiting("2.2.1 a day later all that was typed and told is still there", async (page) => {
    await startHeap(page, "By the shed");
    await toHeap(page, "By the shed");
    await form(page, "Note");
    await page.getByLabel("Note", { exact: true }).fill("half a thought");
    await page.clock.fastForward(24 * 3600 * 1000);
    assert.equal(await page.getByLabel("Note", { exact: true }).inputValue(), "half a thought");
    assert.match(plain(await page.locator(".done-line").innerText()), /^Started By the shed/);
    await page.getByRole("button", { name: "Log the note" }).click();
    await told(page, /half a thought/);
  }, { prepare: (context) => context.clock.install() });

  visiting("3.3.3 a fault says what to enter, with an example or with the limits", async (page) => {
    const faults = [];
    for (const wrong of ["-2", "abc", "1e9999"]) {
      const field = count(inHand(page, "Fresh grass"));
      await field.fill(wrong);
      await until(async () => (await field.getAttribute("aria-invalid")) === "true", `${wrong} is marked`);
      faults.push(await description(field));
    }
    await startHeap(page, "By the shed");
    await toHeap(page, "By the shed");
    await form(page, "Read");
    await page.getByLabel("Temperature, °C").fill("warm");
    await page.getByRole("button", { name: "Log the reading" }).click();
    faults.push(await textOf(page.locator(".log-form .fault").last()));
    await goTo(page, "Beds");
    await form(page, "Describe a bed");
    await page.getByLabel("Name", { exact: true }).fill("North bed");
    await page.getByLabel("Area, m²").fill("much");
    await page.getByRole("button", { name: "Keep this bed" }).click();
    await page.getByText(/^Enter the area, such as/).waitFor();
    for (const fault of faults) assert.match(fault, /such as|between|Enter|or more|or less|above|below|smaller|larger/i);
  });

  visiting("3.3.7 what was put in hand and what a heap was told are not asked again", async (page) => {
    await startHeap(page, "By the shed");
    await goTo(page, "Balance");
    await count(inHand(page, "Fresh grass")).fill("3");
    await toHeap(page, "By the shed");
    await form(page, "Feed");
    await page.getByRole("button", { name: "Log this feed" }).click();
    await told(page, /^Fed By the shed: .*3 buckets of fresh grass/);
  });

  visiting("4.1.3 what was saved, found and wrong is told in a live region that keeps its place", async (page) => {
    const live = await page.locator(".done-place").elementHandle();
    assert.equal(await live.getAttribute("role"), "status");
    await startHeap(page, "By the shed");
    assert.match(plain(await live.innerText()), /^Started By the shed/);
    assert.equal(await live.evaluate((element) => element.isConnected), true, "the same element as before");
    await goTo(page, "Balance");
    const search = page.locator(".hand [role=status]").filter({ hasText: /found/ });
    await page.getByLabel("Find another material").fill("leaves");
    await search.waitFor();
    await toHeap(page, "By the shed");
    await form(page, "Read");
    await page.getByRole("button", { name: "Log the reading" }).click();
    const fault = page.getByText("Enter or tick at least one thing that you saw.");
    await fault.waitFor();
    assert.ok(await fault.evaluate((element) => element.closest("[role=alert], [role=status]") !== null), "a fault is said");
  });
});

// The sheet.
const NUMBERS = `1.1.1 1.2.1 1.2.2 1.2.3 1.2.4 1.2.5 1.3.1 1.3.2 1.3.3 1.3.4 1.3.5 1.4.1 1.4.2 1.4.3 1.4.4 1.4.5 1.4.10 1.4.11 1.4.12
1.4.13 2.1.1 2.1.2 2.1.4 2.2.1 2.2.2 2.3.1 2.4.1 2.4.2 2.4.3 2.4.4 2.4.5 2.4.6 2.4.7 2.4.11 2.5.1 2.5.2 2.5.3 2.5.4 2.5.7 2.5.8
3.1.1 3.1.2 3.2.1 3.2.2 3.2.3 3.2.4 3.2.6 3.3.1 3.3.2 3.3.3 3.3.4 3.3.7 3.3.8 4.1.2 4.1.3`.split(/\s+/);
const VERDICTS = ["meets", "not applicable", "falls short"];

describe("the sheet of criteria", () => {
  const text = readFileSync(new URL("../../../docs/accessibility.md", import.meta.url), "utf8");
  // | number | name | level | verdict | how |
  const rows = text.split("\n").map((row) => row.match(/^\| (\d\.\d\.\d+) \| ([^|]+) \| (A|AA) \| ([^|]+) \| (.+) \|$/)).filter(Boolean);

  test("the sheet has each of the 55 criteria once, with a verdict and how it was found", () => {
    assert.equal(NUMBERS.length, 55);
    assert.deepEqual(rows.map(([, number]) => number), NUMBERS);
    for (const [, number, , , verdict, how] of rows) {
      assert.ok(VERDICTS.includes(verdict), `${number}: ${verdict}`);
      assert.ok(how.length > 20, `${number}: how it was found`);
    }
  });

  test("every test that the sheet names exists, and every test here that has a number stands in its row", () => {
    const names = new Map(readdirSync(new URL(".", import.meta.url)).filter((file) => file.endsWith(".test.js")).map((file) => {
      const source = readFileSync(new URL(file, import.meta.url), "utf8");
      // A name with something put in counts up to there.
      const literal = [...source.matchAll(/\b(?:test|visiting)\(\s*(["`])(.*?)\1/g)].map(([, , name]) => name.split("${")[0]);
      const tabled = file === "standards.test.js" ? [...source.matchAll(/^ {4}"((?:\d\.\d\.\d+ ?)+)": "(.*)",$/gm)].map(([, number, meant]) => `${number} ${meant}`) : [];
      return [file, [...literal, ...tabled].filter(Boolean)];
    }));
    let named = 0;
    for (const [, number, , , , how] of rows) {
      for (const [, file, name] of how.matchAll(/`([a-z-]+\.test\.js)`: "([^"]+)"/g)) {
        named += 1;
        assert.ok(names.get(file)?.includes(name), `${number} names a test that is not there: ${file}: ${name}`);
      }
    }
    assert.ok(named >= 40, `${named} tests are named`);
    for (const name of names.get("standards.test.js")) {
      for (const [number] of name.split(" ").map((word) => word.match(/^\d\.\d\.\d+$/)).filter(Boolean)) {
        assert.ok(rows.find((row) => row[1] === number)?.[5].includes(`"${name}"`), `${number} does not name ${name}`);
      }
    }
  });
});
