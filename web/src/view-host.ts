/**
 * The document of the 3D view: loads the Go program that draws and reports to the page that holds
 * this frame. The program puts its functions on this window as rowlightView.
 */

import { instantiate } from "./download.ts";
import type { ViewMessage } from "./view-messages.ts";

const tell = (message: ViewMessage) => window.parent.postMessage(message, window.location.origin);

/** Tried before the program is fetched: without any canvas it would be for nothing. */
function canDraw(): boolean {
  return document.createElement("canvas").getContext("2d") !== null;
}

/** The program sets its functions once it runs. */
async function functionsSet(): Promise<void> {
  while (!window.rowlightView) await new Promise(requestAnimationFrame);
  await window.rowlightView.ready;
}

async function start(): Promise<void> {
  if (!canDraw()) {
    tell({ from: "view", kind: "no-canvas" });
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
  tell({ from: "view", kind: "ready", painted: window.rowlightView?.painted() ?? false });
  await ended;
  tell({ from: "view", kind: "crashed", reason: "ended" });
}

void start();
