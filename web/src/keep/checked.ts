/**
 * Documents from outside: a file, a link, a store of an earlier visit. Whatever they hold, only values that the
 * schema of the scenario allows go further, and the page never runs on a document of the wrong shape.
 */

import { type Schema, Validator } from "@cfworker/json-schema";
import schema from "../../../sim/scenario/schema.json" with { type: "json" };
import { at, fieldSchema, isObject, type Json, type JsonObject, type Path, pointer } from "../document.ts";

/** A document with the values that had to be left out and the names that are not known, as JSON Pointers. */
export interface Checked {
  document: JsonObject;
  dropped: string[];
  unknown: string[];
}

const validator = new Validator(schema as unknown as Schema, "2020-12", false);

/** Keywords that only say that something below them is wrong. */
const outer = new Set(["$ref", "properties", "items"]);

/** More rounds than a document is deep: leaving out a value can lay bare that a list lacks one. */
const rounds = 8;

/**
 * The values of a document that the schema allows; null where no option is left. Names that the schema does not
 * have stay: they may be those of another program.
 */
export function checked(raw: Json): Checked | null {
  if (!isObject(raw)) return null;
  let document: JsonObject = raw;
  const dropped = new Set<string>();
  for (let round = 0; round < rounds; round++) {
    const wrong = wrongPlaces(document);
    if (wrong.length === 0) return { document, dropped: [...dropped], unknown: unknownNames(document) };
    for (const place of wrong) {
      if (place.length === 0) return null;
      dropped.add(pointer(place));
      document = without(document, place);
    }
  }
  return null;
}

/** Leaves out the names that the schema does not have. */
export function withoutUnknown(document: JsonObject): JsonObject {
  return unknownPaths(document, []).reduceRight((next, path) => without(next, path), document);
}

/** JSON text as a value; "__proto__" is no name of a field, and setting it would change more than a field. */
export function parsed(text: string): Json {
  return JSON.parse(text, (key, value) => (key === "__proto__" ? undefined : value)) as Json;
}

/** What is to be left out, the last of a list first, so that the places of the others stay. */
function wrongPlaces(document: JsonObject): Path[] {
  const wrong = validator.validate(document).errors.filter(({ keyword }) => !outer.has(keyword));
  const places = new Map<string, Path>();
  for (const { instanceLocation } of wrong) {
    const place = removable(pathOf(instanceLocation));
    places.set(pointer(place), place);
  }
  return [...places.values()].sort((a, b) => String(b.at(-1)).localeCompare(String(a.at(-1)), "en", { numeric: true }));
}

/** A list of which one entry is wrong means something else without it; only options stand for themselves. */
function removable(place: Path): Path {
  return typeof place.at(-1) === "number" && place.at(-2) !== "options" ? place.slice(0, -1) : place;
}

function pathOf(location: string): Path {
  const steps = location.split("/").slice(1);
  return steps.map((step) => {
    const name = decodeURIComponent(step).replaceAll("~1", "/").replaceAll("~0", "~");
    return /^\d+$/.test(name) ? Number(name) : name;
  });
}

function without(root: JsonObject, place: Path): JsonObject {
  const [list, last] = [place.slice(0, -1), place.at(-1)];
  return mapped(root, list, (value) => {
    if (Array.isArray(value)) return value.filter((_, i) => i !== last);
    return isObject(value) ? Object.fromEntries(Object.entries(value).filter(([key]) => key !== last)) : value;
  }) as JsonObject;
}

/** A copy in which the value at a path is another one; a path that is not there changes nothing. */
function mapped(root: Json, path: Path, change: (value: Json) => Json): Json {
  const [step, ...rest] = path;
  if (step === undefined) return change(root);
  if (Array.isArray(root)) return root.map((value, i) => (i === step ? mapped(value, rest, change) : value));
  if (!isObject(root)) return root;
  return Object.fromEntries(Object.entries(root).map(([key, value]) => [key, key === step ? mapped(value, rest, change) : value]));
}

function unknownNames(document: JsonObject): string[] {
  return unknownPaths(document, []).map(pointer);
}

function unknownPaths(root: JsonObject, path: Path): Path[] {
  const value = at(root, path);
  if (Array.isArray(value)) return value.flatMap((_, i) => unknownPaths(root, [...path, i]));
  if (!isObject(value)) return [];
  return Object.keys(value).flatMap((key) => {
    const below = [...path, key];
    return fieldSchema(below) ? unknownPaths(root, below) : [below];
  });
}
