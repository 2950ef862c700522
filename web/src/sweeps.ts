/**
 * Work of many days, shared among helpers: a wish is planned by the engine, its parts are done by the helpers and shown as
 * they come, and one of them puts the parts together. One wish is worked on at a time; a new one of its kind takes the place
 * of the one before.
 */

import { batch, type Signal, signal } from "@preact/signals";
import type { JsonObject } from "./document.ts";
import { listenToEngine, tellEngine } from "./engine.ts";
import type { EngineMessage, Fault, Plan, Stretch } from "./messages.ts";
import { Helper, Shares, sizeHere } from "./pool.ts";
import { throttled } from "./throttle.ts";

/** How far a wish has come. Done is the share of its days [0–1]. */
export type SweepState =
  | { phase: "idle" | "planning" | "done" | "stopped" }
  | { phase: "running"; done: number }
  | { phase: "refused"; faults: readonly Fault[] }
  | { phase: "failed"; reason: string };

/** Who wants a sweep, and hears of it. */
interface Hearer {
  /** A plan has been made: what was known before is gone. */
  begin(plan: Plan, document: JsonObject): void;
  /** The answers to some more parts. */
  parts(answers: readonly string[]): void;
  whole(answer: string): void;
}

interface Run {
  generation: number;
  sweep: Sweep;
  document: JsonObject;
  plan: string;
  parts: Plan["parts"];
  shares: Shares;
  answers: string[];
  /** Answers that have come since some were shown last. */
  unshown: string[];
  daysLeft: number;
}

/** Parts are shown so far apart: drawing them takes the processors that the helpers work on. */
const showEvery_ms = 400;

let last = 0;
let helpers: Helper[] = [];
let current: Run | null = null;
let waiting: Run[] = [];
const planning = new Map<number, { sweep: Sweep; document: JsonObject }>();

export class Sweep {
  readonly state: Signal<SweepState> = signal({ phase: "idle" });

  constructor(
    readonly what: "rows" | "season",
    readonly hearer: Hearer,
  ) {}

  start(document: JsonObject, stretch: Stretch): void {
    this.end("planning");
    hire(); // helpers start while the work is planned
    const generation = ++last;
    planning.set(generation, { sweep: this, document });
    tellEngine({ kind: "plan", generation, scenario: JSON.stringify(document), what: this.what, ...stretch });
  }

  /** Ends the work; what is known of it stays. */
  end(phase: "idle" | "planning" | "stopped"): void {
    if (current?.sweep === this && phase === "stopped") showParts(current);
    for (const [generation, { sweep }] of planning) if (sweep === this) planning.delete(generation);
    waiting = waiting.filter(({ sweep }) => sweep !== this);
    this.state.value = { phase };
    if (current?.sweep === this) next();
  }
}

/** Starts the helpers that are missing. */
function hire(): void {
  for (let i = helpers.length; i < sizeHere(); i++) helpers.push(new Helper((message) => hear(i, message)));
}

/** Ends the helpers, and with them the memory that they hold. */
export function dismissHelpers(): void {
  helpers.forEach((helper) => helper.end());
  helpers = [];
}

listenToEngine((message: EngineMessage) => {
  if (message.kind !== "planned") return;
  const wish = planning.get(message.generation);
  if (!wish) return;
  planning.delete(message.generation);
  if (!message.plan) {
    wish.sweep.state.value = { phase: "refused", faults: JSON.parse(message.faults) as Fault[] };
    return;
  }
  const plan = JSON.parse(message.plan) as Plan;
  const { parts } = plan;
  const daysLeft = parts.reduce((days, part) => days + part.to - part.from, 0);
  const shares = new Shares(
    parts.map(({ from, to }) => to - from),
    sizeHere(),
  );
  const run: Run = { generation: message.generation, ...wish, plan: message.plan, parts, shares, answers: [], unshown: [], daysLeft };
  waiting.push(run);
  if (!current) next();
  // Reading the plan and showing it are two tasks, so that neither keeps the page from answering a touch.
  setTimeout(() => {
    if (run === current || waiting.includes(run)) begin(run, plan);
  });
});

function begin(run: Run, plan: Plan): void {
  batch(() => {
    run.sweep.hearer.begin(plan, run.document);
    run.sweep.state.value = { phase: "running", done: 0 };
  });
}

/** Takes up the work that has waited longest, or none. */
function next(): void {
  const before = current;
  current = waiting.shift() ?? null;
  if (!current) {
    if (before) helpers.forEach((helper) => helper.tell({ kind: "work", generation: ++last, plan: "" }));
    return;
  }
  // Generations rise with every plan and every end of one.
  current.generation = ++last;
  hire();
  const { generation, plan } = current;
  helpers.forEach((helper, i) => {
    helper.tell({ kind: "work", generation, plan });
    give(i);
  });
}

/** Gives a helper its next part, if there is one. */
function give(helper: number): void {
  const part = current?.shares.take(helper);
  if (current && part !== undefined) helpers[helper]?.tell({ kind: "part", generation: current.generation, part });
}

function hear(helper: number, message: EngineMessage): void {
  if (message.kind === "crashed" || message.kind === "unavailable") {
    fail(message.reason);
    return;
  }
  if (!current || !("generation" in message) || message.generation !== current.generation) return;
  if (message.kind === "part") takePart(current, message.part, message.answer, helper);
  if (message.kind === "whole") {
    const { sweep } = current;
    batch(() => {
      sweep.hearer.whole(message.whole);
      sweep.state.value = { phase: "done" };
    });
    next();
  }
}

function takePart(run: Run, part: number, answer: string, helper: number): void {
  const of = run.parts[part];
  if (!of) return;
  run.answers[part] = answer;
  run.unshown.push(answer);
  run.daysLeft -= of.to - of.from;
  // The helper first: it need not wait until the part is shown.
  if (run.daysLeft > 0) give(helper);
  else helpers[helper]?.tell({ kind: "whole", generation: run.generation, answers: `[${run.answers.join(",")}]` });
  // The last ones at once: the whole, which follows, is a task of its own.
  if (run.daysLeft > 0) showSoon(run);
  else showParts(run);
}

const showSoon = throttled((run: Run) => {
  if (run === current) showParts(run);
}, showEvery_ms);

/** Shows what has come of a run, and how far it is. */
function showParts(run: Run): void {
  const all = run.parts.reduce((days, { from, to }) => days + to - from, 0);
  batch(() => {
    run.sweep.hearer.parts(run.unshown.splice(0));
    run.sweep.state.value = { phase: "running", done: 1 - run.daysLeft / all };
  });
}

/** A helper that has stopped may have left the work half done: all are sent home, and the work has failed. */
function fail(reason: string): void {
  dismissHelpers();
  const failed = current;
  current = null;
  if (failed) failed.sweep.state.value = { phase: "failed", reason };
  next();
}
