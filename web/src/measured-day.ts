/**
 * A day of a weather file within the document. It brings its 24 hours, its place and its clock; what it
 * does not speak of, such as slope and floor, and what the page does not know, stays.
 */

import { at, isObject, type JsonObject, layered, withValue } from "./document.ts";

/** The fields that a measured day sets: the light of a file belongs to the sun of its place. */
const setByDay = {
  site: ["latitude_deg", "longitude_deg", "elevation_m", "utcOffset_h"],
  weather: ["date", "airMax_C", "airMin_C", "dewPoint_C", "wind_ms", "windFrom_deg", "hours", "source"],
} as const;

type Part = keyof typeof setByDay;
const parts = Object.keys(setByDay) as Part[];

/** Whether the document is computed by measured hours; the numbers of a design day then only tell of them. */
export function isMeasured(document: JsonObject): boolean {
  const hours = at(document, ["weather", "hours"]);
  return Array.isArray(hours) && hours.length > 0;
}

/** The document with a measured day laid over it. */
export function withMeasuredDay(document: JsonObject, fragment: JsonObject): JsonObject {
  return layered(document, fragment) as JsonObject;
}

/** What withDesignDay puts back: those of the fields that the document has. */
export function designDay(document: JsonObject): JsonObject {
  const kept: JsonObject = {};
  for (const part of parts) {
    const own = at(document, [part]);
    if (isObject(own)) kept[part] = picked(own, setByDay[part]);
  }
  return kept;
}

/**
 * The document with a design day in place of the measured one. Without a design day to go back to, the
 * numbers that tell of the hours become one.
 */
export function withDesignDay(document: JsonObject, before: JsonObject | null): JsonObject {
  if (!before) return withoutFields(document, "weather", ["hours", "source"]);
  return parts.reduce((next, part) => {
    const bare = withoutFields(next, part, setByDay[part]);
    const own = at(before, [part]);
    return isObject(own) ? (layered(bare, { [part]: own }) as JsonObject) : bare;
  }, document);
}

function picked(object: JsonObject, keys: readonly string[]): JsonObject {
  return Object.fromEntries(Object.entries(object).filter(([key]) => keys.includes(key)));
}

function withoutFields(document: JsonObject, part: Part, keys: readonly string[]): JsonObject {
  const own = at(document, [part]);
  if (!isObject(own)) return document;
  return withValue(document, [part], Object.fromEntries(Object.entries(own).filter(([key]) => !keys.includes(key)))) as JsonObject;
}
