/** The page's text catalogue. */

import en from "./text/en.json";

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
