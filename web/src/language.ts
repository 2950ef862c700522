/** The language of the page and how it writes numbers and dates. */

import { signal } from "@preact/signals";
import { remember, remembered } from "./preferences.ts";

/** The languages that the page speaks, by their BCP 47 tags, in their own words. */
export const languages = { en: "English", es: "Español" } as const;
export type Language = keyof typeof languages;

function asLanguage(tag: string | null | undefined): Language | null {
  const language = tag?.split("-")[0]?.toLowerCase();
  return language !== undefined && Object.hasOwn(languages, language) ? (language as Language) : null;
}

/** What the browser prefers, most wanted first; none outside one. */
const preferred: readonly string[] = typeof navigator === "object" ? (navigator.languages ?? []) : [];

/** The chosen language, else the first of those that the browser prefers, else English. */
export const language = signal<Language>(asLanguage(remembered("language")) ?? preferred.map(asLanguage).find((found) => found !== null) ?? "en");

export function setLanguage(next: Language): void {
  language.value = next;
  remember("language", next);
}

/** The locale of numbers and dates: the browser's own kind of the language, since it tells points from commas. */
export function locale(): string {
  if (language.value === "en") return "en-GB"; // day before month, as the page's sentences have it
  return preferred.find((tag) => asLanguage(tag) === language.value) ?? language.value;
}
