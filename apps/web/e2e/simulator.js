// The module of the worker without a browser: as it was bundled, run by Node.
import { readdirSync, readFileSync } from "node:fs";

const DIST = new URL("../../../dist/", import.meta.url);

/** Loads the module; `memory` is its own, as it grows. */
export async function simulator() {
  const named = (pattern) => {
    const name = readdirSync(DIST).find((file) => pattern.test(file));
    if (!name) throw new Error("dist holds no simulator; run `cargo xtask bundle`");
    return new URL(name, DIST);
  };
  const module = await import(named(/^heapwright_simulator-[0-9a-f]+\.js$/));
  const exports = await module.default({ module_or_path: readFileSync(named(/^heapwright_simulator_bg-[0-9a-f]+\.wasm$/)) });
  return { module, memory: exports.memory };
}
