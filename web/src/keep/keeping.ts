/**
 * Keeps the work of this tab as it changes and brings it back on the next visit. Each tab keeps its own work, so
 * that two of them never write over each other; where the browser cannot keep anything the person is told.
 */

import { computed, effect, signal } from "@preact/signals";
import { effectiveText, type JsonObject } from "../document.ts";
import { firstScenario } from "../scenarios.ts";
import { lend, ownScenario, readOnly, replaceScenario, startScenario } from "../store.ts";
import { readDocument, readText, type Read, longestFile } from "./files.ts";
import { unpack } from "./packed.ts";
import * as shelf from "./shelf.ts";

/** Something to tell about a document that came in, or about what could not be kept. */
export type Notice =
  | { kind: "migrated"; name: string }
  | { kind: "dropped"; name: string; fields: string[] }
  | { kind: "unknown"; name: string; fields: string[] }
  | { kind: "refused"; name: string; why: "notJson" | "notScenario" | "newer" | "tooLong" | "unreadable" }
  | { kind: "link"; why: "broken" | "newer" };

/** Notices of the document that came in last. */
export const notices = signal<readonly Notice[]>([]);
/** Why the work of this tab is not kept: no room, or no storage at all. */
export const notKept = signal<"full" | "blocked" | null>(null);
/** Why the scenario that was to be kept under a name is not. */
export const notSaved = signal<"full" | "blocked" | null>(null);
/** Earlier works and named scenarios, newest first. */
export const earlier = signal<readonly shelf.Work[]>([]);
export const named = signal<readonly shelf.Named[]>([]);
/** The scenario that was removed last, to put back. */
export const removed = signal<shelf.Named | null>(null);
/** The version of the physics that a link was made with; its numbers may differ under another one. */
export const linkModel = signal<string | null>(null);

/** The work of this tab, and whether another tab is open beside it. */
let id = newId();
export const otherTabs = signal(false);
export const earlierElsewhere = computed(() => earlier.value.filter((work) => work.id !== id));

/** Longer than a gesture takes between two moves, shorter than one waits before closing a tab [ms]. */
const calm_ms = 300;

/** A browser that does not answer in time is not waited for [ms]. */
const patience_ms = 1500;

/**
 * Brings back what the address or this browser holds, then begins to keep. What comes after the # of the address
 * goes before, as a work of its own.
 */
export async function startKeeping(): Promise<void> {
  // A link that is put into the address of an open page opens as in a new one; the work before is kept as it was left.
  window.addEventListener("hashchange", () => location.hash.startsWith(linkMark) && location.reload());
  if (await openAddress()) {
    if (!readOnly) keepFromNow();
    return;
  }
  if (readOnly) return;
  await Promise.race([bringBack(), new Promise((done) => setTimeout(done, patience_ms))]);
  keepFromNow();
}

/** What the # of an address begins with that holds a scenario. */
const linkMark = "#s=";

/** Opens the scenario behind the # of the address, which is then taken off: editing would make it untrue. */
export async function openAddress(): Promise<boolean> {
  if (!location.hash.startsWith(linkMark)) return false;
  const found = await unpack(location.hash.slice(linkMark.length));
  if (!readOnly) history.replaceState(null, "", location.pathname + location.search);
  if (typeof found === "string") {
    notices.value = [{ kind: "link", why: found }];
    return false;
  }
  linkModel.value = found.model;
  id = newId();
  startScenario(found.document);
  notices.value = tellings({ ...found, migratedFrom: null }, effectiveText(found.document, ["name"]));
  return true;
}

/** A name that no other tab has. */
function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

const tabKey = "rowlight.work";

function ofTab(): string | null {
  try {
    return sessionStorage.getItem(tabKey);
  } catch {
    return null;
  }
}

/** A copied tab brings the mark of its original along: whoever holds the lock has the work. */
async function claim(work: string): Promise<boolean> {
  if (!navigator.locks) return false;
  return new Promise((answer) => {
    void navigator.locks.request(`rowlight-work-${work}`, { ifAvailable: true }, (lock) => {
      answer(lock !== null);
      return lock ? new Promise(() => undefined) : undefined;
    });
  });
}

/** The work of this tab before it was loaded again, else a copy of the newest one. */
async function bringBack(): Promise<void> {
  try {
    const all = await shelf.works();
    earlier.value = all;
    const before = ofTab();
    const own = all.find((work) => work.id === before);
    if (own && (await claim(own.id))) id = own.id;
    const work = own ?? all[0];
    if (!work || ownScenario.peek() !== firstScenario) return;
    const read = readDocument(work.document);
    if ("document" in read) startScenario(read.document);
  } catch {
    notKept.value = "blocked";
  }
}

function keepFromNow(): void {
  try {
    sessionStorage.setItem(tabKey, id);
  } catch {
    // Without it a reload brings back a copy of the work.
  }
  void meetTabs();
  void refresh();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let waiting: JsonObject | null = null;
  const started = ownScenario.peek();
  const write = () => {
    clearTimeout(timer);
    const document = waiting;
    waiting = null;
    if (document) void keep(document);
  };
  effect(() => {
    const document = ownScenario.value;
    if (document === firstScenario || (document === started && waiting === null && !linkModel.peek())) return;
    waiting = document;
    clearTimeout(timer);
    timer = setTimeout(write, calm_ms);
  });
  // The last moment that a page is sure to see.
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && write());
  window.addEventListener("pagehide", write);
}

async function keep(document: JsonObject): Promise<void> {
  try {
    await shelf.keepWork({ id, name: effectiveText(document, ["name"]), changed: Date.now(), document });
    notKept.value = null;
    await shelf.forgetOldWorks();
  } catch (error) {
    notKept.value = failure(error);
  }
}

function failure(error: unknown): "full" | "blocked" {
  return error instanceof DOMException && error.name === "QuotaExceededError" ? "full" : "blocked";
}

/** Takes the work of this tab and lets all open tabs count anew, now and when this one is looked at again. */
async function meetTabs(): Promise<void> {
  await claim(id);
  document.addEventListener("visibilitychange", () => void countTabs());
  const tabs = new BroadcastChannel("rowlight-tabs");
  tabs.onmessage = () => void countTabs();
  tabs.postMessage("opened");
  await countTabs();
}

/** Tells whether more than one tab holds a work. */
async function countTabs(): Promise<void> {
  const held = (await navigator.locks?.query())?.held ?? [];
  otherTabs.value = held.filter(({ name }) => name?.startsWith("rowlight-work-")).length > 1;
}

/** Reads anew what this browser holds. */
export async function refresh(): Promise<void> {
  try {
    earlier.value = await shelf.works();
    named.value = await shelf.namedScenarios();
    await countTabs();
  } catch {
    notKept.value = "blocked";
  }
}

/** Keeps the scenario under a name; one of the same name is replaced. */
export async function saveAs(name: string): Promise<void> {
  try {
    await shelf.keepNamed({ name, changed: Date.now(), document: ownScenario.peek() });
    notSaved.value = null;
  } catch (error) {
    notSaved.value = failure(error);
  }
  await refresh();
}

export async function remove(entry: shelf.Named): Promise<void> {
  await shelf.removeNamed(entry.name);
  removed.value = entry;
  await refresh();
}

export async function putBack(): Promise<void> {
  const entry = removed.peek();
  if (!entry) return;
  await shelf.keepNamed(entry);
  removed.value = null;
  await refresh();
}

/** Opens a kept document, as one step that can be undone. */
export function openKept(document: JsonObject, name: string): void {
  take(readDocument(document), name);
}

/** Opens a file, as one step that can be undone; one that cannot be read leaves everything as it was. */
export async function openFile(file: File): Promise<void> {
  if (file.size > longestFile) {
    notices.value = [{ kind: "refused", name: file.name, why: "tooLong" }];
    return;
  }
  try {
    take(readText(await file.text()), file.name);
  } catch {
    notices.value = [{ kind: "refused", name: file.name, why: "unreadable" }];
  }
}

function take(read: Read, name: string): void {
  if ("refused" in read) {
    notices.value = [{ kind: "refused", name, why: read.refused }];
    return;
  }
  linkModel.value = null;
  lend(null);
  replaceScenario(read.document);
  notices.value = tellings(read, name);
}

function tellings(read: Extract<Read, { document: JsonObject }>, name: string): Notice[] {
  const all: Notice[] = [];
  if (read.migratedFrom !== null) all.push({ kind: "migrated", name });
  if (read.dropped.length) all.push({ kind: "dropped", name, fields: read.dropped });
  if (read.unknown.length) all.push({ kind: "unknown", name, fields: read.unknown });
  return all;
}
