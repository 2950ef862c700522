/**
 * The document of the 3D view: loads the Go program that draws and reports to the page that holds
 * this frame. The program puts its functions on this window as rowlightView.
 */

import { instantiate } from "./download.ts";
import type { ViewMessage } from "./view-messages.ts";

const tell = (message: ViewMessage) => window.parent.postMessage(message, window.location.origin);

/** Tried before the program is fetched: without WebGL it would be for nothing. */
function canDraw(): boolean {
  const canvas = document.createElement("canvas");
  const context = canvas.getContext("webgl2") as WebGL2RenderingContext | null;
  context?.getExtension("WEBGL_lose_context")?.loseContext();
  return context !== null;
}

/** The program sets its functions once it runs. */
async function functionsSet(): Promise<void> {
  while (!window.rowlightView) await new Promise(requestAnimationFrame);
  await window.rowlightView.ready;
}

async function start(): Promise<void> {
  if (!canDraw()) {
    tell({ from: "view", kind: "no-webgl" });
    return;
  }
  const go = new Go();
  let instance: WebAssembly.Instance;
  try {
    instance = await instantiate("view.wasm", go.importObject, (state) => tell({ from: "view", kind: "loading", ...state }));
  } catch (error) {
    tell({ from: "view", kind: "crashed", reason: String(error) });
    return;
  }
  const ended = go.run(instance);
  await Promise.race([functionsSet(), ended]);
  tell({ from: "view", kind: "ready" });
  await ended;
  tell({ from: "view", kind: "crashed", reason: "ended" });
}

void start();
