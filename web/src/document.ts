/**
 * The raw scenario document and how it is read and edited. The page edits the raw document, so that
 * fields that it does not know survive; what the document leaves out is filled in from the training
 * form and then from the schema, by the same rule as the simulation does.
 */

import forms from "../../sim/scenario/forms.json" with { type: "json" };
import schema from "../../sim/scenario/schema.json" with { type: "json" };

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
export type JsonObject = { [key: string]: Json };
export type Path = readonly (string | number)[];

/** One training form of the catalogue. */
export interface Form {
  key: string;
  name: string;
  line: string;
  option: JsonObject;
}

export const formCatalogue = forms as unknown as Form[];

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The value at a path; undefined where the document does not say. */
export function at(root: Json | undefined, path: Path): Json | undefined {
  let value = root;
  for (const step of path) {
    if (Array.isArray(value)) value = value[step as number];
    else if (isObject(value)) value = value[step];
    else return undefined;
  }
  return value;
}

/** A copy of the document with the value at the path replaced; objects on the way are made as needed. */
export function withValue(root: Json | undefined, path: Path, value: Json): Json {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === "number") {
    const copy = Array.isArray(root) ? [...root] : [];
    copy[step] = withValue(copy[step], rest, value);
    return copy;
  }
  const base = isObject(root) ? root : {};
  return { ...base, [step]: withValue(base[step], rest, value) };
}

/** Lays one value over another: objects merge key by key, everything else replaces. */
export function layered(under: Json | undefined, over: Json | undefined): Json | undefined {
  if (over === undefined) return under;
  if (!isObject(over) || !isObject(under)) return over;
  const merged: JsonObject = { ...under };
  for (const key of Object.keys(over)) merged[key] = layered(under[key], over[key]) as Json;
  return merged;
}

/** The part of a JSON Schema that the page reads. */
export interface FieldSchema {
  type?: string;
  minimum?: number;
  maximum?: number;
  maxItems?: number;
  default?: Json;
  enum?: string[];
  description?: string;
  properties?: Record<string, FieldSchema>;
  items?: FieldSchema;
  $ref?: string;
  "x-unit"?: string;
  "x-step"?: number;
}

const root = schema as unknown as FieldSchema & { $defs?: Record<string, FieldSchema> };

function resolved(field: FieldSchema | undefined): FieldSchema | undefined {
  const name = field?.$ref?.match(/^#\/\$defs\/(.+)$/)?.[1];
  if (!name) return field;
  return { ...root.$defs?.[name], ...field };
}

/** The schema of the field at a path of the scenario; undefined for a path that it does not have. */
export function fieldSchema(path: Path): FieldSchema | undefined {
  let field: FieldSchema | undefined = resolved(root);
  for (const step of path) {
    const properties = field?.properties ?? {};
    field = resolved(typeof step === "number" ? field?.items : Object.hasOwn(properties, step) ? properties[step] : undefined);
  }
  return field;
}

/** The default of a schema, of objects by their properties; undefined where it has none. */
export function schemaDefault(field: FieldSchema | undefined): Json | undefined {
  const own = resolved(field);
  if (own?.default !== undefined) return own.default;
  if (!own?.properties) return undefined;
  const value: JsonObject = {};
  for (const [key, property] of Object.entries(own.properties)) {
    const inner = schemaDefault(property);
    if (inner !== undefined) value[key] = inner;
  }
  return value;
}

const optionDefaults = schemaDefault(fieldSchema(["options", 0])) as JsonObject;
const scenarioDefaults = schemaDefault(root) as JsonObject;

export function formByKey(key: Json | undefined): Form | undefined {
  return formCatalogue.find((form) => form.key === key);
}

/** The raw options of a document. */
export function rawOptions(document: JsonObject): JsonObject[] {
  const options = document["options"];
  return Array.isArray(options) ? options.filter(isObject) : [];
}

/** What the simulation reads at a path of the document: the raw value, else the form's, else the schema's. */
export function effective(document: JsonObject, path: Path): Json | undefined {
  const own = at(document, path);
  if (path[0] !== "options" || typeof path[1] !== "number") return layered(at(scenarioDefaults, path), own);
  const rest = path.slice(2);
  const form = formByKey(at(document, ["options", path[1], "form"]) ?? optionDefaults["form"]);
  return layered(layered(at(optionDefaults, rest), at(form?.option, rest)), own);
}

/** The same as a number; NaN where the document holds something else. */
export function effectiveNumber(document: JsonObject, path: Path): number {
  const value = effective(document, path);
  return typeof value === "number" ? value : Number.NaN;
}

/** The same as a text; empty where the document holds something else. */
export function effectiveText(document: JsonObject, path: Path): string {
  const value = effective(document, path);
  return typeof value === "string" ? value : "";
}

/**
 * The document with one value set. A list that the document leaves to the form is first written out,
 * since a list of which only one place is given would mean something else.
 */
export function edited(document: JsonObject, path: Path, value: Json): JsonObject {
  let written: Json = document;
  path.forEach((step, i) => {
    const list = path.slice(0, i);
    if (typeof step !== "number" || at(written, list) !== undefined) return;
    const full = effective(document, list);
    if (full !== undefined) written = withValue(written, list, full);
  });
  return withValue(written, path, value) as JsonObject;
}

/**
 * An option with another form: it takes all sizes of that form and keeps what belongs to the site and the work: its row
 * direction, shade, water and costs. A band of a net at heights of its own would hang beside the fruit of another form.
 */
export function withForm(option: JsonObject, form: string): JsonObject {
  const next: JsonObject = { form, rows: {} };
  const keep = (...paths: Path[]) => paths.forEach((path) => {
    const value = at(option, path);
    if (value === undefined) return;
    Object.assign(next, withValue(next, path, value));
  });
  keep(["rows", "azimuth_deg"], ["shade"], ["leaves", "water"], ["cost"]);
  if (isObject(next["shade"])) {
    const { netFrom_m: _from, netTo_m: _to, ...shade } = next["shade"];
    next["shade"] = shade;
  }
  return next;
}

/** A path as a JSON Pointer (RFC 6901), the form in which faults name fields. */
export function pointer(path: Path): string {
  return path.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

/** The letter by which an option is called. */
export function letter(option: number): string {
  return "ABCD"[option] ?? "?";
}
