/**
 * The page's side of the engine: starts the worker, sends it the newest scenario at once, and holds
 * the newest answer. While it computes, the answer before stays, marked as pending.
 */

import { batch, computed, effect, signal } from "@preact/signals";
import type { Loaded } from "./download.ts";
import type { JsonObject } from "./document.ts";
import type { Day, Ranges, Weighing } from "./generated/result.ts";
import type { EngineMessage, FaceCourse, Fault, PageMessage, Preview, Sighted } from "./messages.ts";
import { instant, scenario, step_min } from "./store.ts";

/** The newest result and the document that it answers. */
export interface Answer {
  generation: number;
  document: JsonObject;
  day: Day;
  faces: FaceCourse[];
}

export type EngineState =
  | { phase: "loading"; progress: Loaded }
  | { phase: "running" }
  | { phase: "crashed"; reason: string }
  | { phase: "unavailable"; reason: string }
  | { phase: "unsupported" };

export const engineState = signal<EngineState>({ phase: "loading", progress: { loaded: 0, total: 0 } });
export const answer = signal<Answer | null>(null);
/** What the newest document makes of the numbers, nearly, until its answer is there; null where there is no telling. */
export const preview = signal<{ generation: number; of: Preview } | null>(null);
/** What it makes of the picture at the hour that was shown, nearly. */
export const sighted = signal<Sighted | null>(null);
/** True until the engine has told what the newest document makes of the picture, or that there is no telling, or takes too long. */
export const unsighted = signal(false);
/** How far the numbers of the answer may be off; null until the first draws have been lived through. */
export const ranges = signal<Ranges | null>(null);
/** Frost, crop, work and water of the answer, with the ranges of its heat and light once they are drawn. */
export const weighing = signal<Weighing | null>(null);
export const faults = signal<readonly Fault[]>([]);
/** Share of the running computation that is done, 0–1. */
export const progress = signal(0);

/** Draws that the ranges come from in the end: three times those of the first look. */
export const drawsWanted = 96;

const sent = signal(0);
const settled = signal(0);

/** True while a newer scenario than the one shown is being computed. */
export const pending = computed(() => sent.value > settled.value);

/** True while the numbers shown are behind the scenario, once its first ones are there or late: until then all stays as it is, so that the page has little to draw on an input. */
export const behind = signal(false);
effect(() => {
  if (!pending.value) behind.value = false;
  else if (!unsighted.value) behind.value = true;
});

let worker: Worker | null = null;
let heard: Promise<void> = Promise.resolve();
const documents = new Map<number, JsonObject>();

/** Starts the engine, or starts it again after a crash; the document is sent as soon as it is ready. */
export function startEngine(): void {
  if (typeof WebAssembly !== "object" || typeof WebAssembly.instantiateStreaming !== "function") {
    engineState.value = { phase: "unsupported" };
    return;
  }
  worker?.terminate();
  documents.clear();
  engineState.value = { phase: "loading", progress: { loaded: 0, total: 0 } };
  worker = new Worker(new URL("engine-worker.js", document.baseURI));
  worker.onmessage = ({ data }: MessageEvent<EngineMessage>) => {
    // One after the other: showing a result takes more than one task.
    heard = heard.then(() => take(data)).then(() => listeners.forEach((hear) => hear(data))).catch(reportError);
  };
  worker.onerror = (event) => {
    engineState.value = { phase: "unavailable", reason: event.message };
  };
}

/** How long a picture waits for its colours [ms], however many inputs come meanwhile. */
const sightedWithin_ms = 150;
let giveUp: ReturnType<typeof setTimeout> | undefined;

function send(document: JsonObject): void {
  if (!worker) return;
  const generation = sent.peek() + 1;
  sent.value = generation;
  if (answer.peek() && !unsighted.peek()) {
    unsighted.value = true;
    clearTimeout(giveUp);
    giveUp = setTimeout(() => (unsighted.value = false), sightedWithin_ms);
  }
  documents.set(generation, document);
  const hour = (instant.peek() * step_min) / 60;
  tellEngine({ kind: "run", generation, scenario: JSON.stringify(document), draws: drawsWanted, hour });
}

/** Sends a message to the engine as it runs; what is handed over is gone from the page. */
export function tellEngine(message: PageMessage, handedOver: Transferable[] = []): void {
  worker?.postMessage(message, handedOver);
}

const listeners: ((message: EngineMessage) => void)[] = [];

/** Hears every message of the engine. */
export function listenToEngine(hear: (message: EngineMessage) => void): void {
  listeners.push(hear);
}

// Every change of the document is sent at once; the engine drops what is no longer the newest.
effect(() => {
  if (engineState.value.phase === "running") send(scenario.value);
});

function take(message: EngineMessage): void | Promise<void> {
  switch (message.kind) {
    case "loading":
      engineState.value = { phase: "loading", progress: message };
      return;
    case "ready":
      engineState.value = { phase: "running" };
      return;
    case "unavailable":
      engineState.value = { phase: "unavailable", reason: message.reason };
      return;
    case "crashed":
      settled.value = sent.peek();
      forgetPreview();
      engineState.value = { phase: "crashed", reason: message.reason };
      return;
    case "progress":
      if (message.generation === sent.peek()) progress.value = message.done;
      return;
    case "faults":
      if (message.generation === sent.peek()) takeFaults(message);
      return;
    case "preview":
      if (message.generation === sent.peek()) takePreview(message);
      return;
    case "result":
      return takeResult(message);
    case "bands":
      return takeBands(message);
  }
}

/** What was shown before the faults stays, as the engine has run it. */
function takeFaults(message: Extract<EngineMessage, { kind: "faults" }>): void {
  settle(message.generation, () => {
    forgetPreview();
    faults.value = JSON.parse(message.faults) as Fault[];
  });
}

function forgetPreview(): void {
  preview.value = null;
  sighted.value = null;
  unsighted.value = false;
}

/** The ranges are those of numbers that no longer stand. Where there is no telling, the preview of an earlier input no longer does. */
function takePreview({ generation, preview: text, seen }: Extract<EngineMessage, { kind: "preview" }>): void {
  batch(() => {
    forgetPreview();
    if (!answer.peek() || !text) return;
    preview.value = { generation, of: JSON.parse(text) as Preview };
    sighted.value = seen ?? null;
    ranges.value = null;
  });
}

/**
 * Shows a result in three tasks, so that none keeps the page from answering a touch: reading it, its numbers, and the
 * table that weighs them. A newer input between two of them ends it; until the last the numbers count as pending.
 */
async function takeResult(message: Extract<EngineMessage, { kind: "result" }>): Promise<void> {
  const document = documents.get(message.generation);
  const newest = () => message.generation === sent.peek();
  if (!document || !newest()) return;
  const day = JSON.parse(message.result) as Day;
  await breath();
  if (!newest()) return;
  batch(() => {
    faults.value = [];
    ranges.value = null;
    forgetPreview();
    answer.value = { generation: message.generation, document, day, faces: message.faces };
  });
  await breath();
  if (!newest()) return;
  settle(message.generation, () => (weighing.value = day.weighing ?? null));
}

/** Waits until the numbers shown have their ranges, as far as the engine is going to draw them. */
export function rangesDrawn(): Promise<void> {
  return new Promise((drawn) => {
    const stop = effect(() => {
      if (!ranges.value && engineState.value.phase === "running" && !faults.value.length) return;
      drawn();
      queueMicrotask(() => stop());
    });
  });
}

/** Lets the browser draw and hear before the work goes on. */
function breath(): Promise<void> {
  return new Promise((goOn) => setTimeout(goOn));
}

/** Shows ranges in two tasks: the table that weighs them first, since whoever waits for ranges waits for both. */
async function takeBands(message: Extract<EngineMessage, { kind: "bands" }>): Promise<void> {
  const newest = () => message.generation === answer.peek()?.generation;
  if (!newest()) return;
  weighing.value = JSON.parse(message.weighing) as Weighing;
  await breath();
  if (newest()) ranges.value = JSON.parse(message.bands) as Ranges;
}

function settle(generation: number, change: () => void): void {
  batch(() => {
    settled.value = generation;
    progress.value = 0;
    change();
  });
  for (const old of documents.keys()) if (old <= generation) documents.delete(old);
}
