/** The page's text catalogue. */

import type { Loaded } from "./download.ts";
import en from "./text/en.json" with { type: "json" };
import { megabytes } from "./units.ts";

export type TextKey = keyof typeof en;

const catalogue: Record<string, string> = en;

/** The text of a key with its {parameters} filled in. */
export function t(key: TextKey, values: Record<string, string | number> = {}): string {
  return fill(catalogue[key] ?? key, values);
}

/** The text of a key made at run time, such as "floor." + value; the fallback where there is none. */
export function tOr(key: string, fallback: string): string {
  return catalogue[key] ?? fallback;
}

/** Puts values into the {names} of a template; a name without a value stays as it is. */
export function fill(template: string, values: Record<string, string | number>): string {
  return template.replace(/\{(\w+)\}/g, (whole, name: string) => (name in values ? String(values[name]) : whole));
}

/** How much of a program has come; without a size in the manifest only the bytes so far. */
export function loadingText(key: "loading.engine" | "loading.view", { loaded, total }: Loaded): string {
  if (!total) return t(`${key}.unknown`, { loaded: megabytes(loaded) });
  return t(key, { loaded: megabytes(loaded), total: megabytes(total) });
}
