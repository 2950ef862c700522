/**
 * The open lesson: its stage, the guess that the reader committed to, and what the runs gave. While it is open its own
 * document stands before the reader's, who finds everything as it was when he leaves. The address names the lesson, so
 * that a link opens it and the browser's Back leaves it; how far he got is remembered.
 */

import { batch, computed, effect, signal } from "@preact/signals";
import { orbit } from "../camera.ts";
import { turnedOver } from "../directions.ts";
import type { JsonObject } from "../document.ts";
import { answer, engineState, listenToEngine, pending, tellEngine } from "../engine.ts";
import type { Day } from "../generated/result.ts";
import { heldLooks, linkLooks, moveLook } from "../looks.ts";
import type { Chain } from "../messages.ts";
import { remember, remembered } from "../preferences.ts";
import { explained, instant, lend, lending, playing, replaceScenario, scenario, setInstant, sheet, shownOption, step_min } from "../store.ts";
import { seasonSpan } from "../season.ts";
import { t, tOr } from "../text.ts";
import { lookFrom, viewState } from "../view.ts";
import { tapped, way } from "../ways.ts";
import { firstLook, type Lesson, lessonByKey, lessonDocument, type Reading, type Stage, stageAt } from "./catalogue.ts";
import { readAt, withDifferences } from "./readings.ts";

export const lesson = signal<Lesson | null>(null);
export const stageIndex = signal(0);
export const stage = computed<Stage | null>(() => lesson.value && stageAt(lesson.value, stageIndex.value));
export const guess = signal<string | null>(null);
/** What the reader wrote down: what would change his mind. */
export const notes = signal("");
/** The numbers that the runs of the lesson gave; null before they have all been run. */
export const seen = signal<Readonly<Record<string, number>> | null>(null);
/** What is tried out at the end. */
export const tried = signal<string | null>(null);

/** How far the reader got in a lesson. */
export interface Progress {
  stage: number;
  guess: string | null;
  notes: string;
}

export function progressOf(key: string): Progress | null {
  try {
    return JSON.parse(remembered(`lesson.${key}`) ?? "null") as Progress | null;
  } catch {
    return null;
  }
}

effect(() => {
  const progress: Progress = { stage: stageIndex.value, guess: guess.value, notes: notes.value };
  if (lesson.value) remember(`lesson.${lesson.value.key}`, JSON.stringify(progress));
});

// The address and what lies behind a lesson.

const mark = "#lesson=";

/** The address of a lesson, short enough to be typed. */
export function lessonAddress(key: string): string {
  return `${location.origin}${location.pathname}${mark}${key}`;
}

/** Follows the address from now on; the page calls it once, before the first document is sent. */
export function startLessons(): void {
  window.addEventListener("hashchange", followAddress);
  window.addEventListener("popstate", followAddress);
  followAddress();
}

function followAddress(): void {
  const next = location.hash.startsWith(mark) ? lessonByKey(location.hash.slice(mark.length)) : undefined;
  if (next === lesson.peek()) return;
  if (lesson.peek()) close();
  if (next) open(next);
}

export function openLesson(key: string): void {
  location.hash = `lesson=${key}`;
}

export function leaveLesson(): void {
  history.pushState(null, "", location.pathname + location.search);
  followAddress();
}

/** Brings everything back as it was. */
let bringBack = (): void => undefined;

function hold(): () => void {
  const looks = heldLooks();
  const before = { instant: instant.peek(), way: way.peek(), shown: shownOption.peek() };
  return () => {
    looks();
    instant.value = before.instant;
    way.value = before.way;
    shownOption.value = before.shown;
  };
}

function open(next: Lesson): void {
  bringBack = hold();
  const progress = progressOf(next.key);
  documents.clear();
  batch(() => {
    lend(documentOf(next, stageAt(next, Math.min(progress?.stage ?? 0, next.stages.length - 1)).run));
    lesson.value = next;
    guess.value = progress?.guess ?? null;
    notes.value = progress?.notes ?? "";
    seen.value = null;
    tried.value = null;
    sheet.value = explained.value = tapped.value = turnedOver.value = seasonSpan.value = null;
    shownOption.value = 0;
    stageIndex.value = Math.min(progress?.stage ?? 0, next.stages.length - 1);
    linkLooks(true, 0);
  });
  enter();
  if (stageIndex.peek() >= firstLook(next)) void runLesson();
}

function close(): void {
  batch(() => {
    lesson.value = null;
    playing.value = false;
    sheet.value = explained.value = tapped.value = null;
    lend(null);
    bringBack();
  });
}

// A document of the reader's own that comes in, such as a file, ends the lesson.
effect(() => {
  if (!lending.value && lesson.peek()) queueMicrotask(() => lesson.peek() && leaveLesson());
});

/** The set-up as it stands becomes the reader's own, as one step that can be undone. */
export function takeOver(): void {
  const document = scenario.peek();
  leaveLesson();
  replaceScenario(document);
}

// Stages.

export function goTo(index: number): void {
  const now = lesson.peek();
  if (!now) return;
  batch(() => {
    stageIndex.value = Math.max(0, Math.min(index, now.stages.length - 1));
    tried.value = null;
    enter();
  });
}

/** Begins the open lesson anew; what was written down stays. */
export function beginAnew(): void {
  guess.value = null;
  goTo(0);
}

/** Sets scenario, hour, place and way of looking of the stage; the reader may change them from there. */
function enter(): void {
  const now = stage.peek();
  if (!now || !lesson.peek()) return;
  playing.value = false;
  show(documentOf(lesson.peek() as Lesson, now.run));
  way.value = now.way ?? "natural";
  wanted.value = now;
  if (now.since !== undefined && now.hour !== undefined && seen.peek()) sweep(now.since, now.hour);
  else if (now.hour !== undefined) setInstant(instantOf(now.hour));
}

const instantOf = (hour: number) => (hour * 60) / step_min;

/** The document is sent again only where it is another one. */
function show(document: JsonObject): void {
  if (scenario.peek() !== document) lend(document);
}

/** The place to look from, until the view can go there. */
const wanted = signal<Stage | null>(null);
effect(() => {
  const want = wanted.value;
  if (!want?.from || viewState.value.phase !== "running" || answer.value?.document !== scenario.value) return;
  // The view reads the document in the frame after.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      if (wanted.peek() !== want || !want.from) return;
      wanted.value = null;
      lookFrom(0, want.from);
      if (want.turn_deg) moveLook(0, (look) => orbit(look, want.turn_deg ?? 0, 0));
    }),
  );
});

/** How long the day takes from one hour to another [ms]. */
const sweep_ms = 3000;

/** Plays the day from one hour to another, until the reader takes the hour or the stage; at once with reduced motion. */
function sweep(from: number, to: number): void {
  const [first, last, of] = [instantOf(from), instantOf(to), stage.peek()];
  if (window.matchMedia("(prefers-reduced-motion: reduce)").matches) return setInstant(last);
  setInstant(first);
  let [start, shown] = [0, instant.peek()];
  const frame = (now: number) => {
    start ||= now;
    if (stage.peek() !== of || instant.peek() !== shown) return;
    const share = Math.min((now - start) / sweep_ms, 1);
    setInstant(first + share * (last - first));
    shown = instant.peek();
    if (share < 1) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

// Documents and runs.

const documents = new Map<string, JsonObject>();

/** The document of a run, the same object each time. */
function documentOf(of: Lesson, run = ""): JsonObject {
  const known = documents.get(run);
  if (known) return known;
  const made = document(of, of.runs?.[run]);
  documents.set(run, made);
  return made;
}

function document(of: Lesson, set: Lesson["tries"][number]["set"] = {}): JsonObject {
  const name = (letter: string) => tOr(`lesson.${of.key}.option.${letter}`, "");
  const names = { lesson: tOr(`lesson.${of.key}.title`, of.key), note: t("lesson.invented"), options: [..."ABCD"].map((letter) => name(letter) || undefined) };
  return lessonDocument(of, names, set);
}

/** Tries something out, or with null goes back to how it was. */
export function tryOut(key: string | null): void {
  const now = lesson.peek();
  if (!now) return;
  tried.value = key;
  const set = now.tries.find((one) => one.key === key)?.set;
  show(set ? document(now, set) : documentOf(now, stage.peek()?.run));
}

export const running = signal(false);

/** Commits to the guess, runs all that the lesson needs and goes on to look at it. */
export async function runLesson(): Promise<void> {
  const now = lesson.peek();
  if (!now || running.peek()) return;
  running.value = true;
  try {
    const read = await runAll(now);
    if (!read || lesson.peek() !== now) return;
    seen.value = withDifferences(now, read);
    goTo(Math.max(stageIndex.peek(), firstLook(now)));
  } catch (error) {
    // The engine has ended below it: the page says so, and the run can be started again.
    if (!(error instanceof Ended)) throw error;
  } finally {
    running.value = false;
  }
}

async function runAll(of: Lesson): Promise<Record<string, number> | null> {
  const read: Record<string, number> = {};
  // The first run comes last: it is the one that is looked at.
  for (const run of [...Object.keys(of.runs ?? {}), ""]) {
    show(documentOf(of, run));
    const day = await answered(of);
    if (!day) return null;
    for (const [name, reading] of Object.entries(of.values)) {
      if ((reading.run ?? "") !== run) continue;
      if (reading.chain) read[name] = await chainNumber(reading.chain);
      else if (reading.path) read[name] = readAt(day, reading);
    }
  }
  return read;
}

/** The result of the document that is shown now; null when the lesson is left before. */
function answered(of: Lesson): Promise<Day | null> {
  return new Promise((done) => {
    const stop = effect(() => {
      const ready = answer.value?.document === scenario.value && !pending.value;
      if (lesson.value === of && !ready) return;
      done(lesson.peek() === of ? (answer.peek()?.day ?? null) : null);
      queueMicrotask(() => stop());
    });
  });
}

/** The engine gave no answer, since it ended or has got another document. */
class Ended extends Error {}

/** Chains of one result that are known, by option, side and hour. */
const chains = new Map<string, Chain>();
let chainsOf = 0;

/** A number from how the hottest berry of a side comes to its temperature. Chains are asked for one after the other. */
async function chainNumber({ option, side, hour, symbol }: NonNullable<Reading["chain"]>): Promise<number> {
  const generation = answer.peek()?.generation ?? 0;
  if (generation !== chainsOf) chains.clear();
  chainsOf = generation;
  const key = `${option} ${side} ${hour}`;
  const chain = chains.get(key) ?? (await askChain(generation, option, side, hour));
  chains.set(key, chain);
  return chain.links.find((link) => link.symbol === symbol)?.value ?? Number.NaN;
}

let hearChain = (_chain: Chain): void => undefined;
listenToEngine((message) => {
  if (message.kind === "explanation") hearChain(JSON.parse(message.chain) as Chain);
});

function askChain(generation: number, option: number, side: number, hour: number): Promise<Chain> {
  return new Promise((done, failed) => {
    hearChain = done;
    const stop = effect(() => {
      if (engineState.value.phase === "running" && answer.value?.generation === generation && scenario.value === answer.value.document) return;
      failed(new Ended());
      queueMicrotask(() => stop());
    });
    tellEngine({ kind: "explain", generation, option, side, hour });
  });
}
