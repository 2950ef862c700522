/**
 * The one store: the raw scenario document with its undo history, and what the person is looking at.
 * Results live in engine.ts; everything shown follows from these signals.
 */

import { batch, computed, effect, signal } from "@preact/signals";
import { at, edited, effectiveNumber, type Json, type JsonObject, type Path, rawOptions, withForm } from "./document.ts";
import { designDay, isMeasured, withDesignDay, withMeasuredDay } from "./measured-day.ts";
import { type History, record, redo, seal, startHistory, undo } from "./history.ts";
import { orderLooks } from "./looks.ts";
import { remember, remembered } from "./preferences.ts";
import { firstScenario } from "./scenarios.ts";
import type { UnitSystem } from "./units.ts";

/** The most options that a scenario holds. */
export const maxOptions = 4;

/** Instants of a day, 5 minutes apart from 0:00 to 24:00. */
export const lastInstant = 288;

/** Minutes between instants. */
export const step_min = 5;

/** True where the page is a picture within another page: what it shows is looked at and not changed. */
export const readOnly = typeof location === "object" && new URLSearchParams(location.search).has("embed");

const own = signal<History<JsonObject>>(startHistory(firstScenario));
/** A document in front of the person's own, which stays as it is behind it; null where there is none. */
const lent = signal<History<JsonObject> | null>(null);
const history = computed(() => lent.value ?? own.value);

/** The document that is shown and edited. */
export const scenario = computed(() => history.value.present);
/** The document that the changes shown began with: as it was opened, or the earliest of them that is remembered. */
export const openedScenario = computed(() => history.value.past[0] ?? history.value.present);
/** The person's own document. */
export const ownScenario = computed(() => own.value.present);
/** Whether another document stands in front of it. */
export const lending = computed(() => lent.value !== null);
export const canUndo = computed(() => history.value.past.length > 0);
export const canRedo = computed(() => history.value.future.length > 0);
export const optionCount = computed(() => rawOptions(scenario.value).length);

function setHistory(next: History<JsonObject>): void {
  if (lent.peek()) lent.value = next;
  else own.value = next;
}

/** Replaces the document as one step of its own, or as a part of a gesture. */
export function replaceScenario(next: JsonObject, gesture: string | null = null): void {
  if (readOnly) return;
  setHistory(record(history.peek(), next, gesture));
}

/** Begins with a document of the person's own: there is nothing before it to go back to. */
export function startScenario(document: JsonObject): void {
  own.value = startHistory(document);
}

/** Puts a document in front of the person's own, or with null takes it away again. */
export function lend(document: JsonObject | null): void {
  batch(() => {
    lent.value = document && startHistory(document);
    keepViewInside();
  });
}

/** Sets one value of the document. Edits with the same gesture until sealGesture are one step. */
export function edit(path: Path, value: Json, gesture: string | null = null): void {
  if (at(scenario.value, path) === value) return;
  replaceScenario(edited(scenario.value, path, value), gesture);
}

export function sealGesture(): void {
  setHistory(seal(history.value));
}

export function undoEdit(): void {
  setHistory(undo(history.value));
  keepViewInside();
}

export function redoEdit(): void {
  setHistory(redo(history.value));
  keepViewInside();
}

/** Adds a copy of an option at the end. */
export function copyOption(from: number): void {
  const source = rawOptions(scenario.value)[from];
  if (source) addOption(source, from);
}

/** Adds an option at the end, looked at as the one that it came from. */
export function addOption(option: JsonObject, from: number): void {
  const options = rawOptions(scenario.value);
  if (options.length >= maxOptions) return;
  batch(() => {
    replaceScenario({ ...scenario.value, options: [...options, option] });
    orderLooks([...options.keys(), from]);
    shownOption.value = options.length;
  });
}

/** Asks what if one thing were different: adds a copy of an option and opens it to be changed. */
export function whatIf(from: number): void {
  const added = optionCount.value;
  if (added >= maxOptions) return;
  batch(() => {
    copyOption(from);
    sheet.value = added;
  });
}

/** Puts an option one place to the left or right; the compared option stays the same one. */
export function moveOption(index: number, by: -1 | 1): void {
  const options = rawOptions(scenario.value);
  const to = index + by;
  if (to < 0 || to >= options.length) return;
  const order = [...options.keys()];
  order[index] = to;
  order[to] = index;
  batch(() => {
    replaceScenario({ ...scenario.value, compare: Math.max(0, order.indexOf(effectiveNumber(scenario.value, ["compare"]))), options: order.map((i) => options[i] as JsonObject) });
    orderLooks(order);
    if (shownOption.value === index) shownOption.value = to;
    sheet.value = null;
    explained.value = null;
  });
}

/** Removes an option; the compared option stays the same one, or becomes the first. */
export function removeOption(index: number): void {
  const options = rawOptions(scenario.value);
  if (options.length < 2) return;
  const compare = effectiveNumber(scenario.value, ["compare"]);
  const kept = compare > index ? compare - 1 : compare === index ? 0 : compare;
  batch(() => {
    replaceScenario({ ...scenario.value, compare: kept, options: options.filter((_, i) => i !== index) });
    orderLooks([...options.keys()].filter((i) => i !== index));
    keepViewInside();
  });
}

/** Gives an option another form. */
export function chooseForm(index: number, form: string): void {
  edit(["options", index], withForm(rawOptions(scenario.value)[index] ?? {}, form));
}

/** The design day before a measured one was taken; null where the document came with a measured one. */
const designDayBefore = signal<JsonObject | null>(null);
effect(() => {
  if (!isMeasured(ownScenario.value)) designDayBefore.value = designDay(ownScenario.value);
});

/** Takes a measured day with its place and clock, as one step or as a part of a gesture. */
export function takeMeasuredDay(fragment: JsonObject, gesture: string | null = null): void {
  replaceScenario(withMeasuredDay(scenario.value, fragment), gesture);
}

/** Goes back from a measured day to the design day, place and clock before it, as one step. */
export function backToDesignDay(): void {
  replaceScenario(withDesignDay(scenario.value, designDayBefore.peek()));
}

// What the person is looking at.

/** The chosen instant, counted in steps of 5 minutes; the page opens in the middle of the afternoon. */
export const instant = signal((15.5 * 60) / step_min);
export const playing = signal(false);
export const units = signal<UnitSystem>(remembered("units") === "us" ? "us" : "metric");
/** The option shown where only one fits. */
export const shownOption = signal(0);
/** What the open sheet edits: an option by its index, the site and weather; or what it is for: keeping, handing on, choosing a lesson; or nothing. */
export const sheet = signal<number | "site" | "keep" | "share" | "lessons" | null>(null);
/** The number of the day whose explanation is open; only while no sheet is. */
export const explained = signal<{ option: number; number: string } | null>(null);
effect(() => {
  if (sheet.value !== null) explained.value = null;
});
/** True while a file is dragged over the page. */
export const fileHovers = signal(false);

/** The looks of the page that a system has. */
export type Theme = "light" | "dark";

/** Chosen look; null follows the system. */
export const chosenTheme = signal<Theme | null>(asTheme(remembered("theme")));
export const systemTheme = signal<Theme>("light");
/** True while the page is shown to a room: the look for a projector, which is a light one. It is not remembered. */
export const projected = signal(false);
/** The look that holds for pictures. */
export const theme = computed<Theme>(() => (projected.value ? "light" : (chosenTheme.value ?? systemTheme.value)));

function asTheme(value: string | null): Theme | null {
  return value === "light" || value === "dark" ? value : null;
}

export function setInstant(next: number): void {
  instant.value = Math.min(lastInstant, Math.max(0, Math.round(next)));
}

export function setUnits(system: UnitSystem): void {
  units.value = system;
  remember("units", system);
}

/** Turns the other look on; choosing what the system has anyway goes back to following it. */
export function switchTheme(): void {
  const next: Theme = theme.value === "light" ? "dark" : "light";
  projected.value = false;
  chosenTheme.value = next === systemTheme.value ? null : next;
  remember("theme", chosenTheme.value);
}

function keepViewInside(): void {
  const last = optionCount.value - 1;
  if (shownOption.value > last) shownOption.value = last;
  if (typeof sheet.value === "number" && sheet.value > last) sheet.value = null;
  if (explained.value && explained.value.option > last) explained.value = null;
}
