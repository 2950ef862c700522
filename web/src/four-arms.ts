/** What a vine with two arms would be with four: an option like it on two wires, to be compared with it. */

import { effective, effectiveNumber, type Json, type JsonObject, type Path, rawOptions, withForm } from "./document.ts";

/** As many nodes in all as before, or as many on each arm. */
export type Nodes = "same" | "twice";

/** What the vine keeps: its place in the row, its fruit and its gaps. */
const kept: Path[] = [
  ["rows", "rowSpacing_m"], ["rows", "vineSpacing_m"], ["bunches", "perShoot"], ["bunches", "mass_g"],
  ["training", "blindNodes"], ["training", "missingVines"], ["training", "youngVines"],
];

/** The option of a document with four arms on two wires, as a quadrilateral. Shoots and leaf area count per metre of canopy, of which it has twice as much. */
export function fourArmed(document: JsonObject, index: number, nodes: Nodes, name: string): JsonObject {
  const own = (path: Path) => effective(document, ["options", index, ...path]);
  const perMetre = (path: Path) => effectiveNumber(document, ["options", index, ...path]) * (nodes === "same" ? 0.5 : 1);
  const next: JsonObject = { ...withForm(rawOptions(document)[index] ?? {}, "quadrilateral"), name };
  const put = ([part = "", key = ""]: Path, value: Json) => (next[part] = { ...(next[part] as JsonObject | undefined), [key]: value });
  for (const path of kept) {
    const value = own(path);
    if (value !== undefined) put(path, value);
  }
  for (const path of [["shoots", "perMetre"], ["leaves", "area_m2_per_m"]] as Path[]) put(path, perMetre(path));
  return next;
}
