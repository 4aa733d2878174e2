// The worker that makes a page to print. It hears [question, document, letter], one of the first two empty: a question is
// first made a document by the module of the simulated heap. It tells ["pressed", bytes], ["unfetched"], ["failed", sentence],
// or ["unpressed", detail] when setting the type failed.
// A message { texts } before the first says which language to speak.
import initPress, { press } from "./heapwright_press.js";
import initAnswers, { paper, speak } from "./heapwright_simulator.js";

const fetched = (init, name) => init({ module_or_path: name });

let texts;

onmessage = async ({ data }) => {
  if (data.texts) return void (texts = data.texts);
  const [question, document, letter] = data;
  try {
    await Promise.all([
      fetched(initPress, new URL("./heapwright_press_bg.wasm", import.meta.url)),
      question && fetched(initAnswers, new URL("./heapwright_simulator_bg.wasm", import.meta.url)),
    ]);
  } catch {
    return postMessage(["unfetched"]);
  }
  try {
    if (question && texts) speak(texts.tag, texts.pack, texts.words);
    const set = question ? paper(question) : document;
    let bytes;
    try {
      bytes = press(set, letter);
    } catch (detail) {
      return postMessage(["unpressed", String(detail)]);
    }
    postMessage(["pressed", bytes], [bytes.buffer]);
  } catch (error) {
    postMessage(["failed", typeof error === "string" ? error : ""]);
    if (typeof error !== "string") console.error(error);
  }
};
