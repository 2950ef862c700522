/** The texts of a lesson, with the numbers of its runs in them. */

import { units } from "../store.ts";
import { fill, t, tOr } from "../text.ts";
import { clock, show, showDifference, text } from "../units.ts";
import type { Lesson, Reading } from "./catalogue.ts";
import { seen } from "./lesson.ts";

/** A number as the reader reads it; a dash where there is none. */
export function reading({ unit, given }: Reading, read: number | undefined): string {
  const value = given ?? read;
  if (value === undefined || Number.isNaN(value)) return "–";
  if (unit === "clock") return clock(value);
  // A difference of temperatures has no offset; its sign stands in the words around it.
  return unit === "K" ? text(showDifference(value, unit, units.value)).replace("+", "") : text(show(value, unit, units.value));
}

/** A text of the lesson; the numbers in it are those of the runs, dashes before them. */
export function lessonText(of: Lesson, part: string): string {
  return withNumbers(of, tOr(`lesson.${of.key}.${part}`, ""));
}

/** Fills the numbers of a lesson into a text. */
export function withNumbers(of: Lesson, template: string): string {
  const numbers = Object.entries(of.values).map(([name, one]) => [name, reading(one, seen.value?.[name])]);
  return fill(template, Object.fromEntries(numbers));
}

export function guessText(of: Lesson, guess: string): string {
  return lessonText(of, `guess.${guess}`);
}

/** What a stage is called; several looks are numbered by their own titles. */
export function stageName(of: Lesson, index: number): string {
  const key = of.stages[index]?.key ?? "";
  return tOr(`lesson.stage.${key}`, key);
}

/** The name of a column: of this lesson, or shared by several, with its hour where it has one. */
export function columnName(of: Lesson, column: string, hour: number | undefined): string {
  const name = tOr(`lesson.${of.key}.column.${column}`, tOr(`lesson.column.${column}`, column));
  return hour === undefined ? name : t("lesson.columnAt", { name, hour: clock(Math.round(hour * 12) / 12) });
}

export function rowName(of: Lesson, row: string): string {
  return withNumbers(of, tOr(`lesson.row.${row}`, row));
}
