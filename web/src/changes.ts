/** Which option an option was copied from by the look of it, and in what the two differ. */

import { effective, fieldSchema, isObject, type Json, type JsonObject, type Path, rawOptions } from "./document.ts";

/** One field in which an option differs from another, with both values. */
export interface Change {
  path: Path;
  from: Json | undefined;
  to: Json | undefined;
}

/** An option before another one that it differs from in a few fields only. */
export interface Likeness {
  like: number;
  changes: Change[];
}

/** With more changes than this an option is one of its own. */
export const mostChanges = 3;

/** The earlier option of the same form with the fewest differences, the nearest one first; null where there is none. */
export function likeness(document: JsonObject, option: number): Likeness | null {
  const options = rawOptions(document);
  const form = effective(document, ["options", option, "form"]);
  let best: Likeness | null = null;
  for (let like = Math.min(option, options.length) - 1; like >= 0; like--) {
    if (effective(document, ["options", like, "form"]) !== form) continue;
    const changes = differences(effective(document, ["options", like]), effective(document, ["options", option]), []).map((change) => ({
      ...change,
      path: ["options", option, ...change.path],
    }));
    if (changes.length <= mostChanges && (!best || changes.length < best.changes.length)) best = { like, changes };
  }
  return best;
}

/** The fields in which two values differ; lists as a whole, fields that the schema does not know not at all. */
function differences(from: Json | undefined, to: Json | undefined, path: Path): Change[] {
  if (isObject(from) || isObject(to)) {
    const [a, b] = [isObject(from) ? from : {}, isObject(to) ? to : {}];
    return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) => differences(a[key], b[key], [...path, key]));
  }
  const known = fieldSchema(["options", 0, ...path]) && path[0] !== "name";
  return known && JSON.stringify(from) !== JSON.stringify(to) ? [{ path, from, to }] : [];
}
