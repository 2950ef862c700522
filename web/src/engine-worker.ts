/**
 * The worker of the engine: loads the Go program and lets it take over the messages. If the program
 * ends, whatever the reason, the page is told, since an ended program answers nothing.
 */

import { instantiate } from "./download.ts";
import type { EngineMessage } from "./messages.ts";

declare function importScripts(...files: string[]): void;

const tell = (message: EngineMessage) => postMessage(message);

/** Text that a failed program leaves on the error console says why it ended. */
function keepLastError(): () => string {
  let last = "";
  const error = console.error.bind(console);
  console.error = (...words: unknown[]) => {
    last = words.map(String).join(" ");
    error(...words);
  };
  return () => last;
}

async function start(): Promise<void> {
  importScripts("wasm_exec.js");
  const lastError = keepLastError();
  const go = new Go();
  let instance: WebAssembly.Instance;
  try {
    instance = await instantiate("engine.wasm", go.importObject, (state) => tell({ kind: "loading", ...state }));
  } catch (error) {
    tell({ kind: "unavailable", reason: String(error) });
    return;
  }
  await go.run(instance);
  tell({ kind: "crashed", generation: -1, reason: lastError() });
}

void start();
