/**
 * What this browser keeps, in IndexedDB: the work of each tab as it was last, and scenarios by the name that the
 * person gave them. Nothing is removed but by the person, or when there is more work than anybody looks for.
 */

import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { JsonObject } from "../document.ts";

/** The work of one tab. */
export interface Work {
  id: string;
  name: string;
  /** When it was last changed [ms since 1970]. */
  changed: number;
  document: JsonObject;
}

/** A scenario that was kept under a name. */
export interface Named {
  name: string;
  changed: number;
  document: JsonObject;
}

interface Stores extends DBSchema {
  work: { key: string; value: Work };
  named: { key: string; value: Named };
}

/** Works of closed tabs that are kept; the oldest go first. */
export const mostWorks = 30;

let opened: Promise<IDBPDatabase<Stores>> | null = null;

function shelf(): Promise<IDBPDatabase<Stores>> {
  opened ??= openDB<Stores>("rowlight", 1, {
    upgrade(db) {
      db.createObjectStore("work", { keyPath: "id" });
      db.createObjectStore("named", { keyPath: "name" });
    },
    // A newer page in another tab may rebuild the stores; this one opens them again when it next writes.
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      opened = null;
    },
    terminated: () => (opened = null),
  });
  // A failed opening is tried again, since storage may come back.
  opened.catch(() => (opened = null));
  return opened;
}

export async function keepWork(work: Work): Promise<void> {
  await (await shelf()).put("work", work);
}

/** All works, the newest first. */
export async function works(): Promise<Work[]> {
  const all = await (await shelf()).getAll("work");
  return all.sort((a, b) => b.changed - a.changed);
}

/** Forgets what is beyond the most works. */
export async function forgetOldWorks(): Promise<void> {
  const db = await shelf();
  for (const { id } of (await works()).slice(mostWorks)) await db.delete("work", id);
}

export async function keepNamed(named: Named): Promise<void> {
  await (await shelf()).put("named", named);
}

export async function removeNamed(name: string): Promise<void> {
  await (await shelf()).delete("named", name);
}

/** The named scenarios, the newest first. */
export async function namedScenarios(): Promise<Named[]> {
  const all = await (await shelf()).getAll("named");
  return all.sort((a, b) => b.changed - a.changed);
}
