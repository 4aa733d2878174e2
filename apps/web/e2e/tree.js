// What assistive technology is given: Chromium's whole accessibility tree, with the place of each node on the page.

import { PATIENCE_MS } from "./harness.js";
import { plain } from "./keeper.js";

/** Height of a line of text [px]: by so much two things side by side may stand apart. */
export const LINE_PX = 24;

const STYLES = ["position", "visibility", "opacity", "clip-path", "direction"];
const LANDMARKS = ["banner", "main", "contentinfo", "navigation", "region", "form", "search", "complementary"];
const CONTROLS = ["button", "link", "textbox", "searchbox", "combobox", "checkbox", "radio", "slider", "spinbutton", "DisclosureTriangle", "Date", "DateTime", "InputTime"];
const FIELDS = ["textbox", "searchbox", "combobox", "spinbutton", "Date", "DateTime", "InputTime"];
const NAMED = [...LANDMARKS, ...CONTROLS, "heading", "figure", "image", "table", "group", "radiogroup", "list", "status", "progressbar"];

/**
 * Reads the page: `root` is the first node of the tree, `texts` are the texts that the page shows, `marks` those that the style
 * sheet adds.
 * Each node has role, name, level, box (left, top, right, bottom [px], of what is seen of it and all within it, or nothing),
 * `isFixed` when it lies over the page instead of in it, and `within`.
 */
export async function treeOf(page) {
  const devtools = await page.context().newCDPSession(page);
  // Tree and picture are asked for one after the other: of a page that changes in between, both are asked for again.
  let nodes;
  let shown;
  let strings;
  for (const end = Date.now() + PATIENCE_MS; ;) {
    ({ nodes } = await devtools.send("Accessibility.getFullAXTree"));
    ({ documents: [shown], strings } = await devtools.send("DOMSnapshot.captureSnapshot", { computedStyles: STYLES }));
    const after = await devtools.send("Accessibility.getFullAXTree");
    const said = (all) => all.map((node) => `${node.backendDOMNodeId} ${node.name?.value ?? ""}`).join("\n");
    if (said(nodes) === said(after.nodes)) break;
    if (Date.now() > end) throw new Error("the page never comes to rest");
  }
  await devtools.detach();
  const drawn = drawings(shown, strings);

  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const build = (node) => {
    const own = drawn.get(node.backendDOMNodeId);
    const within = (node.childIds ?? []).map((id) => byId.get(id)).filter((child) => child && child.role?.value !== "InlineTextBox").map(build);
    const property = (name) => node.properties?.find((one) => one.name === name)?.value.value;
    return {
      id: node.backendDOMNodeId,
      role: node.role?.value ?? "none",
      name: plain(node.name?.value ?? ""),
      // As it is given, with whatever white space is in it.
      said: node.name?.value ?? "",
      level: property("level"),
      canFocus: property("focusable") === true,
      isRead: !node.ignored,
      isDrawn: own !== undefined,
      isSeen: own?.isSeen ?? false,
      isFixed: own?.isFixed ?? false,
      runs: own?.runs,
      box: union([own?.isSeen ? own.box : undefined, ...within.filter((child) => !child.isFixed).map((child) => child.box)]),
      within,
    };
  };
  const root = build(nodes.find((node) => node.parentId === undefined));
  const texts = [...drawn.values()].filter((one) => one.text && one.isSeen);
  const marks = new Set(texts.filter(({ path }) => path[0].name.startsWith("::")).map(({ text }) => bag(text)));
  return { root, texts, marks };
}

/** What each node of the page draws, by its number: box, text, whether it is seen, and where it stands. */
function drawings(shown, strings) {
  const { backendNodeId, parentIndex, nodeName, attributes } = shown.nodes;
  const drawn = new Map();
  const byIndex = new Map();
  shown.layout.nodeIndex.forEach((node, index) => {
    const [position, visibility, opacity, clip, runs] = shown.layout.styles[index].map((at) => strings[at]);
    const above = nearest(byIndex, parentIndex, node);
    const [left, top, width, height] = shown.layout.bounds[index];
    const isClipped = (above?.isClipped ?? false) || (clip ?? "none") !== "none";
    const one = {
      id: backendNodeId[node],
      box: { left, top, right: left + width, bottom: top + height },
      runs,
      isClipped,
      isClear: (above?.isClear ?? false) || opacity === "0",
      isFixed: (above?.isFixed ?? false) || position === "fixed",
    };
    one.isSeen = !isClipped && !one.isClear && (visibility ?? above?.visibility) !== "hidden" && width > 1 && height > 1;
    const text = shown.layout.text[index] >= 0 ? strings[shown.layout.text[index]].trim() : "";
    if (text) Object.assign(one, { text, path: path(node) });
    byIndex.set(node, one);
    drawn.set(one.id, one);
  });
  return drawn;

  /** Names, with classes and what is hidden on purpose, from the text upwards. */
  function path(node) {
    const names = [];
    for (let at = node; at >= 0; at = parentIndex[at]) {
      const pairs = attributes[at] ?? [];
      const of = (name) => { const found = pairs.findIndex((key, index) => index % 2 === 0 && strings[key] === name); return found < 0 ? undefined : strings[pairs[found + 1]]; };
      names.push({ name: strings[nodeName[at]].toLowerCase(), class: of("class") ?? "", isHidden: of("aria-hidden") === "true" });
    }
    return names;
  }
}

/** The words of a text, whatever their order: of a text that runs against the page the tree has them as they lie. */
const bag = (text) => plain(text).split(" ").sort().join(" ");

function nearest(byIndex, parentIndex, node) {
  for (let at = parentIndex[node]; at >= 0; at = parentIndex[at]) if (byIndex.has(at)) return byIndex.get(at);
  return undefined;
}

function union(boxes) {
  const there = boxes.filter(Boolean);
  if (there.length === 0) return undefined;
  return {
    left: Math.min(...there.map((box) => box.left)), top: Math.min(...there.map((box) => box.top)),
    right: Math.max(...there.map((box) => box.right)), bottom: Math.max(...there.map((box) => box.bottom)),
  };
}

/** All that is read, in its order. */
export function* read(node) {
  if (node.isRead) yield node;
  for (const child of node.within) yield* read(child);
}

/** A node in words, for messages and records. */
export function called(node) {
  const role = node.role === "DisclosureTriangle" ? "fold" : node.role === "heading" ? `heading ${node.level}` : node.role;
  return node.name ? `${role} ${node.name}` : role;
}

/** The first words of a node that has none of its own, for messages. */
function told(node) {
  if (node.name) return called(node);
  for (const inner of read(node)) if (inner.name) return `${node.role} with ${called(inner)}`;
  return node.role;
}

/**
 * What is read in another order than it stands on the page. Of two things of one block, the later one may not stand higher in
 * the same column, nor before it in the same row; so one column is read wholly before the next.
 */
export function outOfOrder(root, direction = "ltr") {
  const faults = [];
  const look = (node) => {
    const there = node.within.filter((child) => !child.isFixed && child.box);
    there.forEach((later, index) => {
      for (const earlier of there.slice(0, index)) {
        // What stands beside a picture whose days go from left to right goes with it in every language.
        const goesRight = direction === "ltr" || node.runs === "ltr";
        const [one, other] = goesRight ? [earlier.box, later.box] : [mirrored(earlier.box), mirrored(later.box)];
        const isBeside = other.left >= one.right - 1 || other.right <= one.left + 1;
        const isWrong = isBeside
          ? other.right <= one.left + 1 && other.top < one.bottom - LINE_PX
          : other.top < one.top - LINE_PX;
        if (isWrong) faults.push(`${told(later).slice(0, 60)} (at ${place(later)}) is read after ${told(earlier).slice(0, 60)} (at ${place(earlier)})`);
      }
    });
    node.within.forEach(look);
  };
  look(root);
  return faults;
}

const mirrored = (box) => ({ ...box, left: -box.right, right: -box.left });
const place = ({ box }) => `${Math.round(box.left)}, ${Math.round(box.top)}`;

/** Headings that skip a rank, and pages that do not begin with one of the first. */
export function skippedRanks(root) {
  let before = 0;
  const faults = [];
  for (const node of read(root)) {
    if (node.role !== "heading") continue;
    if (node.level > before + 1) faults.push(`${called(node)} follows rank ${before}`);
    before = node.level;
  }
  return faults;
}

/** Landmarks and figures without a name of their own, where several of a kind need one, or with another's. */
export function unnamedLandmarks(root) {
  const faults = [];
  const names = new Set();
  for (const { role, name } of read(root)) {
    if (!LANDMARKS.includes(role) && role !== "figure") continue;
    if (!name && !["banner", "main", "contentinfo"].includes(role)) faults.push(`${role} without a name`);
    if (names.has(`${role} ${name}`)) faults.push(`two of ${role} ${name}`);
    names.add(`${role} ${name}`);
  }
  return faults;
}

/** Texts that are seen and not read. A text that is hidden on purpose is given to `standsIn`, which says whether something is read in its place. */
export function notRead({ root, texts }, standsIn) {
  const all = new Set([...read(root)].map((node) => node.id));
  // A mark that the style sheet puts before a word is read under a number of its own.
  const marks = new Set([...read(root)].filter((node) => node.role === "StaticText" && !node.isDrawn).map((node) => node.name));
  return texts
    .filter(({ id }) => !all.has(id))
    .filter(({ path, text }) => !(["::before", "::after"].includes(path[0].name) && marks.has(plain(text))))
    // The first letter of a text that is read.
    .filter(({ path }) => path[0].name !== "::first-letter")
    // What is written in a field or chosen in a list is its value.
    .filter(({ path }) => !path.some(({ name }) => ["select", "input", "textarea"].includes(name)))
    .filter((text) => !(text.path.some(({ isHidden }) => isHidden) && standsIn(text)))
    .map(({ text, path }) => `${text.slice(0, 60)} (${path.slice(0, 4).map((one) => `${one.name}.${one.class}`).join(" < ")})`);
}

/** What is read, and could be used or names itself, but is not there for the eye; less what is for assistive technology alone. */
export function notSeen({ root, marks }) {
  const faults = [];
  const look = (node) => {
    // What is in a field or a list to choose from is drawn by the browser; so are numbers of lists.
    if (FIELDS.includes(node.role) || node.role === "ListMarker") return;
    const isTold = CONTROLS.includes(node.role) || ["heading", "StaticText", "DisclosureTriangle"].includes(node.role);
    if (isTold && node.isRead && node.name && !node.isDrawn && !marks.has(bag(node.name))) faults.push(called(node));
    node.within.forEach(look);
  };
  look(root);
  return faults;
}

/** The record of what is read: landmarks, headings, controls and all else that has a name, a line each, deeper ones further in. */
export function record(root) {
  const lines = [];
  const look = (node, depth) => {
    const isLine = node.isRead && NAMED.includes(node.role) && (node.name || LANDMARKS.includes(node.role) || CONTROLS.includes(node.role));
    if (isLine) lines.push(`${"  ".repeat(depth)}${called(node)}`);
    for (const child of node.within) look(child, depth + (isLine && ["heading", ...CONTROLS].every((role) => role !== node.role) ? 1 : 0));
  };
  look(root, 0);
  return `${lines.join("\n")}\n`;
}
