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

/**
 * The drawing library asks the body for its size in every frame, for which the browser would lay out the whole page when
 * something on it has changed, between new colours and their picture. So the size is kept here, and
 * learnt anew, before the library hears of it, whenever the frame has another.
 */
function keepSize(body: HTMLElement): void {
  const sides = ["clientWidth", "clientHeight"] as const;
  const size = { clientWidth: 0, clientHeight: 0 };
  const learn = () => {
    for (const side of sides) size[side] = Number(Reflect.get(Element.prototype, side, body));
  };
  learn();
  for (const side of sides) Object.defineProperty(body, side, { get: () => size[side] });
  window.addEventListener("resize", learn);
  new ResizeObserver(learn).observe(body);
}

async function start(): Promise<void> {
  if (!canDraw()) {
    tell({ from: "view", kind: "no-canvas" });
    return;
  }
  keepSize(document.body);
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
