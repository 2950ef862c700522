/**
 * The page's side of the 3D view. The view keeps nothing that the page cannot send again: after a
 * restart everything is sent anew. Changes are gathered and sent once a frame.
 */

import { effect, signal, untracked } from "@preact/signals";
import type { Loaded } from "./download.ts";
import { answer, unsighted } from "./engine.ts";
import type { ShownSun } from "./messages.ts";
import type { Day } from "./generated/result.ts";
import { temperatureScale } from "./scales.ts";
import { chosenLook, setLook, takeHomes } from "./looks.ts";
import { sightedNow } from "./shown.ts";
import { instant, optionCount, scenario, theme, units } from "./store.ts";
import type { Pane, PlacedLabel, View, ViewMessage } from "./view-messages.ts";
import { afterNoon_h, type FixedLook, tapBunch, tapped, way } from "./ways.ts";

export type ViewState =
  | { phase: "loading"; progress: Loaded }
  | { phase: "running"; painted: boolean }
  | { phase: "no-canvas" }
  | { phase: "crashed"; reason: string };

export const viewState = signal<ViewState>({ phase: "loading", progress: { loaded: 0, total: 0 } });
/** Counts the documents that the view has taken. */
const stands = signal(0);
/** Rectangles of the panes within the frame, one per option. */
export const panes = signal<readonly Pane[]>([]);
/** Counts up when the frame must be loaded again. */
export const viewGeneration = signal(0);

let frame: HTMLIFrameElement | null = null;

export function holdFrame(element: HTMLIFrameElement | null): void {
  frame = element;
}

/** The window in which the view draws; null before it is there. */
export function viewFrame(): Window | null {
  return frame?.contentWindow ?? null;
}

export function restartView(): void {
  viewState.value = { phase: "loading", progress: { loaded: 0, total: 0 } };
  viewGeneration.value += 1;
}

/** Listens to the frame; the page calls it once. */
export function listenToView(): void {
  window.addEventListener("message", (event: MessageEvent<ViewMessage>) => {
    if (event.origin !== window.location.origin || event.source !== frame?.contentWindow) return;
    if (event.data?.from === "view") take(event.data);
  });
  followDensity();
}

/** The drawing library asks once how dense the pixels of the display are: at another density the view starts anew. */
function followDensity(): void {
  const same = window.matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
  same.addEventListener(
    "change",
    () => {
      if (viewState.peek().phase === "running") restartView();
      followDensity();
    },
    { once: true },
  );
}

// The program says why it ends, just before it does.
window.rowlightViewFailed = (reason) => take(reason === "no-canvas" ? { from: "view", kind: "no-canvas" } : { from: "view", kind: "crashed", reason });

function take(message: ViewMessage): void {
  switch (message.kind) {
    case "loading":
      viewState.value = { phase: "loading", progress: message };
      return;
    case "ready":
      viewState.value = { phase: "running", painted: message.painted };
      return;
    case "no-canvas":
      viewState.value = { phase: "no-canvas" };
      return;
    case "crashed":
      if (viewState.peek().phase !== "no-canvas") viewState.value = { phase: "crashed", reason: message.reason };
  }
}

/**
 * Runs an effect that calls the view, unless it has nothing to say yet, in a task of its own or at once, and after a slow
 * call rests twice as long as the call took, so that dragging stays smooth: the frame of the view shares the page's thread.
 */
function sendToView(read: () => ((view: View) => void) | null, when: "in a task" | "at once" = "in a task"): void {
  let next: ((view: View) => void) | null = null;
  let waiting = false;
  let restUntil = 0;
  const run = () => {
    const now = performance.now();
    if (now < restUntil) {
      setTimeout(run, restUntil - now);
      return;
    }
    waiting = false;
    const view = frame?.contentWindow?.rowlightView;
    const call = next;
    next = null;
    if (!view || !call) return;
    call(view);
    const end = performance.now();
    restUntil = end + 2 * (end - now);
  };
  effect(() => {
    if (viewState.value.phase !== "running") return;
    next = read() ?? next;
    if (next && !waiting) {
      waiting = true;
      if (when === "at once") untracked(run);
      else setTimeout(run);
    }
  });
}

// The order is that of sending: the stands before what colours them.

sendToView(() => {
  const now = theme.value;
  return (view) => {
    view.setTheme(now);
    view.setScale(temperatureScale);
  };
});

sendToView(() => {
  const rectangles = panes.value;
  return (view) => view.setPanes([...rectangles], window.devicePixelRatio);
});

// Looks and colours follow the document in the same task: a frame between them would show the old ones, and rasterising
// it keeps the next frame waiting. So the document waits for its first colours, where there are any soon, and goes with them before
// the page draws its numbers, so that numbers and picture come in one frame.
sendToView(() => {
  const json = JSON.stringify(scenario.value);
  const count = optionCount.value;
  if (unsighted.value) return null;
  return (view) => {
    view.setScenario(json);
    takeHomes(Array.from({ length: count }, (_, option) => view.home(option)));
    looks()(view);
    colours()(view);
    stands.value += 1;
  };
}, "at once");

sendToView(() => {
  const now = way.value;
  const bunch = tapped.value;
  const count = optionCount.value;
  return (view) => {
    view.setWay(now);
    for (let option = 0; option < count; option++) view.setBunch(option, bunch?.option === option ? bunch.bunch : -1);
  };
});

sendToView(looks);

sendToView(colours);

function looks(): (view: View) => void {
  const all = Array.from({ length: optionCount.value }, (_, option) => chosenLook(option));
  return (view) => all.forEach((look, option) => view.setLook(option, look));
}

/** The sun and the faces of the hour shown: of the answer, or those that a change makes of them. */
function colours(): (view: View) => void {
  const i = instant.value;
  const now = answer.value;
  const near = sightedNow.value;
  return (view) => {
    if (!now) return;
    view.setInstant(near?.sun ?? sunOf(now.day, i));
    now.faces.forEach((course, option) => {
      const soon = near?.faces[option];
      const { surface, lit } = soon ?? course;
      const count = soon ? surface.length : surface.length / now.day.hour.length;
      const from = soon ? 0 : i * count;
      const bytes = new Uint8Array(surface.buffer, surface.byteOffset + 4 * from, 4 * count);
      view.setFaces(option, bytes, lit.subarray(from, from + count));
    });
  };
}

function sunOf({ sun, air, hour }: Day, i: number): ShownSun {
  return {
    hour: hour[i] ?? 0,
    sunAzimuth_deg: sun.azimuth_deg[i] ?? 0,
    sunElevation_deg: sun.elevation_deg[i] ?? 0,
    dni_Wm2: air.dni_Wm2[i] ?? 0,
    dhi_Wm2: air.dhi_Wm2[i] ?? 0,
  };
}

/**
 * Calls back with the cross-section of an option as SVG now and whenever its plants have grown anew; the answer
 * ends that. Another document is drawn as soon as the view has grown what it asks for.
 */
export function watchSection(option: number, draw: (svg: string) => void): () => void {
  let turn = 0;
  let after: ReturnType<typeof setTimeout> | undefined;
  const cancel = () => {
    cancelAnimationFrame(turn);
    clearTimeout(after);
  };
  const end = effect(() => {
    void stands.value;
    const shownIn = units.value;
    if (viewState.value.phase !== "running") return;
    cancel();
    // Picture and numbers come first: drawing a section keeps the page busy for as long as either. The view draws in the same
    // frame, but after the page.
    const wait = () => {
      turn = requestAnimationFrame(() => {
        if (unsighted.peek()) wait();
        else after = setTimeout(() => (unsighted.peek() ? wait() : ask()));
      });
    };
    const ask = () => {
      const svg = frame?.contentWindow?.rowlightView?.section(option, `option-${option}`, shownIn) ?? "";
      if (svg) after = setTimeout(draw, 0, svg);
      else wait();
    };
    wait();
  });
  return () => {
    cancel();
    end();
  };
}

function running(): View | undefined {
  return viewState.peek().phase === "running" ? frame?.contentWindow?.rowlightView : undefined;
}

/** The words inside a pane as it is shown, and whether its picture is still being made. */
export function labelsOf(option: number): { now: readonly PlacedLabel[]; busy: boolean } {
  const view = running();
  return { now: view?.labels(option) ?? [], busy: view?.busy() ?? false };
}

/** Looks at an option, or at all that are looked at together, from a place. */
export function lookFrom(option: number, from: FixedLook): void {
  const sun = answer.peek()?.day.sun;
  const hour = answer.peek()?.day.hour;
  if (from === "front") return setLook(option, null);
  const at = sun && hour ? hour.findIndex((h) => h >= sun.transit_h + afterNoon_h) : -1;
  const look = running()?.fixedLook(option, from, sun?.azimuth_deg[at] ?? 270, sun?.elevation_deg[at] ?? 30);
  if (look) setLook(option, look);
}

/** Reads the bunch at a place within a pane [CSS px]. */
export function tapPane(option: number, x: number, y: number): void {
  const pane = panes.peek()[option];
  if (pane) tapBunch(option, running()?.bunchAt(option, pane.x + x, pane.y + y) ?? -1);
}

/** Reads the bunch that one looks out from, one in the middle at first. */
export function readBunch(option: number): void {
  tapBunch(option, running()?.bunch(option) ?? -1);
}
