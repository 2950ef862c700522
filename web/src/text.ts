/** The page's text catalogue. */

import { language } from "./language.ts";
import en from "./text/en.json" with { type: "json" };
import es from "./text/es.json" with { type: "json" };

export type TextKey = keyof typeof en;

const catalogues: Record<string, Record<string, string>> = { en, es };

function template(key: string): string | undefined {
  return catalogues[language.value]?.[key];
}

/** The text of a key with its {parameters} filled in. */
export function t(key: TextKey, values: Record<string, string | number> = {}): string {
  return fill(template(key) ?? key, values);
}

/** The text of a key made at run time, such as "floor." + value; the fallback where there is none. */
export function tOr(key: string, fallback: string): string {
  return template(key) ?? fallback;
}

/** Puts values into the {names} of a template; a name without a value stays as it is. */
export function fill(template: string, values: Record<string, string | number>): string {
  return template.replace(/\{(\w+)\}/g, (whole, name: string) => (name in values ? String(values[name]) : whole));
}
