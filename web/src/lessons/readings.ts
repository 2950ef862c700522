/** Reads the numbers of a lesson. Nothing is computed here but picks and differences of given numbers. */

import { step_min } from "../store.ts";
import type { Lesson, Reading } from "./catalogue.ts";

/** The number at a reading's path of a result; NaN where it has none, as a four-armed form has no further arms. */
export function readAt(day: unknown, { path = "", hour }: Reading): number {
  return at(day, path.split("/"), hour);
}

function at(value: unknown, [step, ...rest]: string[], hour: number | undefined): number {
  if (step === undefined) {
    const found = Array.isArray(value) && hour !== undefined ? value[Math.round((hour * 60) / step_min)] : value;
    return typeof found === "number" ? found : Number.NaN;
  }
  if (step === "*") return Array.isArray(value) ? Math.max(...value.map((entry) => at(entry, rest, hour))) : Number.NaN;
  return typeof value === "object" && value !== null ? at((value as Record<string, unknown>)[step], rest, hour) : Number.NaN;
}

/** Adds the differences to what was read; those of which a part is missing are left out. */
export function withDifferences({ values }: Lesson, read: Record<string, number>): Record<string, number> {
  const all = { ...read };
  for (const [name, { of, less }] of Object.entries(values)) {
    const [whole, part] = [all[of ?? ""], all[less ?? ""]];
    if (whole !== undefined && part !== undefined) all[name] = whole - part;
  }
  return all;
}

/** The guess that the numbers bear out. */
export function borneOut({ answer: { pick, of, alike } }: Lesson, read: Record<string, number>): string {
  const sign = pick === "most" ? 1 : -1;
  const ordered = Object.entries(of).map(([guess, name]) => ({ guess, number: sign * (read[name] ?? Number.NaN) })).sort((a, b) => b.number - a.number);
  const [first, second] = ordered;
  if (!first) return "";
  return alike && second && first.number - second.number < alike.within ? alike.guess : first.guess;
}
