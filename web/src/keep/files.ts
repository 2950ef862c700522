/** Scenario files: the same document as the command line reads, in the page's hands. */

import { effectiveText, isObject, type Json, type JsonObject } from "../document.ts";
import { type Checked, checked, parsed } from "./checked.ts";

/** The version of the document that this page writes, as sim/scenario has it. */
export const schemaVersion = 1;

/** The longest file that is read, as the command line has it [bytes]. */
export const longestFile = 4 * 1024 * 1024;

/** What came of reading a document: itself, with the version that it had; or why it was refused. */
export type Read = (Checked & { migratedFrom: number | null }) | { refused: "notJson" | "notScenario" | "newer"; found?: number };

/**
 * How a document of each older version becomes one of the next. Documents from before versions were written
 * (version 0) differ by nothing but the missing number.
 */
const migrations: readonly ((document: JsonObject) => JsonObject)[] = [(document) => document];

/** Reads the text of a file. */
export function readText(text: string): Read {
  let raw: Json;
  try {
    raw = parsed(text.replace(/^\uFEFF/, ""));
  } catch {
    return { refused: "notJson" };
  }
  return readDocument(raw);
}

/** Brings a document of any version up to this one, refuses a newer one, and leaves out what is not valid. */
export function readDocument(raw: Json): Read {
  if (!isObject(raw)) return { refused: "notScenario" };
  const given = raw["schemaVersion"];
  const found = typeof given === "number" && Number.isInteger(given) && given >= 0 ? given : 0;
  if (found > schemaVersion) return { refused: "newer", found };
  let document = raw;
  for (let at = found; at < schemaVersion; at++) document = migrations[at]?.(document) ?? document;
  const result = checked({ ...document, schemaVersion });
  if (!result) return { refused: "notScenario" };
  return { ...result, migratedFrom: found < schemaVersion ? found : null };
}

/** The document as the text of a file. */
export function fileText(document: JsonObject): string {
  return `${JSON.stringify({ ...document, schemaVersion }, null, 2)}\n`;
}

/** A name for a file made of the scenario: letters and digits of any script, joined by hyphens. */
export function fileName(document: JsonObject, ending: string): string {
  const words = effectiveText(document, ["name"]).toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return `${words.join("-").slice(0, 60) || "rowlight"}${ending}`;
}

/** Hands a file to the person, who chooses where it goes. */
export function download(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
