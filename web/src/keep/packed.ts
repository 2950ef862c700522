/**
 * The scenario as a short text for a link: what differs from the defaults, the hours of a measured day by
 * columns of whole numbers, then deflate and base64url (RFC 1951, RFC 4648 section 5). It stands behind the # of
 * the address, which a browser sends to no server (RFC 3986, section 3.5).
 */

import { effective, isObject, type Json, type JsonObject } from "../document.ts";
import { type Checked, checked, parsed, withoutUnknown } from "./checked.ts";

/** The version of the text; a newer one is refused. */
const version = 1;

/** A link longer than this is cut by some programs that people send links with [characters]. */
export const longestLink = 2000;

// A text that unpacks to more than a scenario can be is no scenario. [characters], [bytes]
const mostPacked = 40_000;
const mostUnpacked = 400_000;

export type Unpacked = (Checked & { model: string }) | "broken" | "newer";

/** Packs a document; the model is the version of the physics that its numbers came from. */
export async function pack(document: JsonObject, model: string): Promise<string> {
  const text = JSON.stringify({ v: version, m: model, s: differences(withoutUnknown(document)) });
  const bytes = await through(new TextEncoder().encode(text), new CompressionStream("deflate-raw"), mostUnpacked);
  return base64url(bytes);
}

/** Unpacks what pack made, or says why a text is not that. */
export async function unpack(text: string): Promise<Unpacked> {
  try {
    if (text.length > mostPacked) return "broken";
    const bytes = await through(fromBase64url(text), new DecompressionStream("deflate-raw"), mostUnpacked);
    const whole = parsed(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
    if (!isObject(whole)) return "broken";
    if (typeof whole["v"] === "number" && whole["v"] > version) return "newer";
    const result = checked(restored(whole["s"] ?? null));
    return result ? { ...result, document: withoutUnknown(result.document), model: String(whole["m"] ?? "") } : "broken";
  } catch {
    return "broken";
  }
}

/** The fields that say something else than the defaults would. */
export function differences(document: JsonObject): JsonObject {
  const packed: JsonObject = {};
  for (const [key, value] of Object.entries(document)) {
    if (key === "options" && Array.isArray(value)) packed[key] = value.map((option) => optionDifferences(option));
    else {
      const rest = different(key === "weather" ? withColumns(value) : value, effective({}, [key]));
      if (rest !== undefined) packed[key] = rest;
    }
  }
  return packed;
}

/** The reverse of differences: a document that means the same. */
export function restored(packed: Json): Json {
  if (!isObject(packed)) return null;
  const { options, weather, ...others } = packed;
  return {
    ...others,
    ...(weather === undefined ? {} : { weather: withHours(weather) }),
    options: Array.isArray(options) ? options.map(withLists) : [],
  };
}

const formDefaults = (form: Json) => effective({ options: [{ form }] }, ["options", 0]);

function optionDifferences(option: Json): Json {
  if (!isObject(option)) return {};
  const form = option["form"] ?? effective({}, ["options", 0, "form"]) ?? "";
  return { ...(different(option, formDefaults(form)) as JsonObject | undefined), form };
}

/** What differs from a base; of a list as long as that of the base, only the entries that differ. */
function different(value: Json, base: Json | undefined): Json | undefined {
  if (isObject(value) && isObject(base)) {
    const parts = Object.entries(value).map(([key, part]) => [key, different(part, base[key])] as const);
    const kept = parts.filter((part): part is [string, Json] => part[1] !== undefined);
    return kept.length ? Object.fromEntries(kept) : undefined;
  }
  if (Array.isArray(value) && Array.isArray(base) && value.length === base.length) {
    return different({ ...value } as unknown as JsonObject, { ...base } as unknown as JsonObject);
  }
  return JSON.stringify(value) === JSON.stringify(base) ? undefined : value;
}

/** Writes the lists of an option out again. */
function withLists(option: Json): Json {
  if (!isObject(option)) return option;
  return listed(option, formDefaults(option["form"] ?? "") as Json);
}

function listed(value: Json, base: Json | undefined): Json {
  if (!isObject(value)) return value;
  if (Array.isArray(base)) {
    return base.map((entry, i) => {
      const change = value[String(i)];
      return isObject(change) && isObject(entry) ? { ...entry, ...change } : (change ?? entry);
    });
  }
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, listed(part, isObject(base) ? base[key] : undefined)]));
}

/** Measured hours by columns: the first value and the steps from one to the next, in units of the last decimal. */
function withColumns(weather: Json): Json {
  if (!isObject(weather) || !Array.isArray(weather["hours"]) || !weather["hours"].every(isObject)) return weather;
  const hours = weather["hours"] as JsonObject[];
  const keys = Object.keys(hours[0] ?? {});
  const same = hours.every((hour) => keys.every((key) => typeof hour[key] === "number") && Object.keys(hour).length === keys.length);
  if (!same) return weather;
  return { ...weather, hours: Object.fromEntries(keys.map((key) => [key, column(hours.map((hour) => hour[key] as number))])) };
}

/** More decimals than weather files hold; a column with more is written as it is. */
const mostDecimals = 6;

function column(values: number[]): Json {
  for (let decimals = 0; decimals <= mostDecimals; decimals++) {
    const whole = values.map((value) => Math.round(value * 10 ** decimals));
    if (whole.every((n, i) => n / 10 ** decimals === values[i])) return [decimals, ...whole.map((n, i) => n - (whole[i - 1] ?? 0))];
  }
  return [-1, ...values];
}

function withHours(weather: Json): Json {
  if (!isObject(weather) || !isObject(weather["hours"])) return weather;
  const columns = Object.entries(weather["hours"]).map(([key, packed]) => [key, values(packed)] as const);
  const count = Math.max(0, ...columns.map(([, list]) => list.length));
  const hours = Array.from({ length: Math.min(count, 24) }, (_, i) => Object.fromEntries(columns.map(([key, list]) => [key, list[i] ?? null])));
  return { ...weather, hours };
}

function values(packed: Json): number[] {
  if (!Array.isArray(packed) || !packed.every((n): n is number => typeof n === "number")) return [];
  const [decimals = 0, ...steps] = packed as number[];
  if (decimals < 0) return steps;
  let sum = 0;
  return steps.map((step) => (sum += step) / 10 ** decimals);
}

/** Sends bytes through a stream and gathers what comes; more than allowed is an error. */
async function through(bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream, most: number): Promise<Uint8Array> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.byteLength;
    if (size > most) {
      await reader.cancel();
      throw new Error("longer than a scenario can be");
    }
    parts.push(value);
  }
  const whole = new Uint8Array(size);
  let place = 0;
  for (const part of parts) {
    whole.set(part, place);
    place += part.byteLength;
  }
  return whole;
}

function base64url(bytes: Uint8Array): string {
  const text = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  return text.replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

function fromBase64url(text: string): Uint8Array<ArrayBuffer> {
  const bytes = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(bytes, (letter) => letter.charCodeAt(0));
}
