// The worker beside the page that computes the days ahead of a heap. It hears [number, question] and tells
// [number, "progress", done, all], [number, "shown", text], [number, "whole"] or [number, "failed", sentence].
// Of what needs no simulation it hears [number, question, true], and tells [number, "told", text].
// A message { texts } before the first question says which language to speak.
import init, { Outlook, speak, told } from "./heapwright_simulator.js";

const fetched = init({ module_or_path: new URL("./heapwright_simulator_bg.wasm", import.meta.url) });
fetched.catch(() => {});

// How far it is is told no oftener than it is seen [ms].
const TOLD_EVERY_MS = 200;

let newest = 0;
let texts;

// Lets what was posted meanwhile come in: a newer question ends the older.
const channel = new MessageChannel();
const breath = () => new Promise((go) => { channel.port1.onmessage = go; channel.port2.postMessage(0); });

onmessage = async ({ data }) => {
  if (data.texts) return void (texts = data.texts);
  const [number, question, atOnce] = data;
  newest = number;
  let outlook;
  try {
    await fetched;
  } catch {
    return postMessage([number, "unfetched"]);
  }
  try {
    if (texts) speak(texts.tag, texts.pack, texts.words);
    texts = undefined;
    if (atOnce) return postMessage([number, "told", told(question)]);
    outlook = new Outlook(question);
    let toldAt = 0;
    while (newest === number && outlook.done < outlook.all) {
      const shown = outlook.step();
      if (performance.now() - toldAt >= TOLD_EVERY_MS) {
        toldAt = performance.now();
        postMessage([number, "progress", outlook.done, outlook.all]);
      }
      if (shown) postMessage([number, "shown", shown]);
      await breath();
    }
    if (newest === number) postMessage([number, "whole"]);
    outlook.free();
  } catch (error) {
    // A sentence is thrown as text; anything else is a fault of ours, after which the module is not to be trusted.
    postMessage([number, "failed", typeof error === "string" ? error : ""]);
    if (typeof error !== "string") console.error(error);
  }
};
