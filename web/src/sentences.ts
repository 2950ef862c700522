/** Verdicts, comparisons and faults in words, from the catalogue that the command line shares. */

import { letter } from "./document.ts";
import type { Sentence } from "./generated/result.ts";
import { fieldName } from "./labels.ts";
import type { Fault } from "./messages.ts";
import { clock, formatNumber, show, showDifference, showPlain, text, type UnitSystem } from "./units.ts";
import { optionWord, sharedTemplate, sharedWord } from "./words.ts";

type Values = Record<string, unknown>;

/** One parameter as the tag of its template says; the tags are those of sim/words. */
function written(value: unknown, tag: string | undefined, values: Values, units: UnitSystem): string {
  if (Array.isArray(value)) return value.join(", ");
  if (tag === "word") return sharedWord(String(value));
  if (typeof value !== "number") return optionWord(String(value));
  switch (tag) {
    case "temperature":
      return text(show(value, "degC", units));
    case "temperatureDifference":
      return text(showDifference(value, "K", units)).replace("+", "");
    case "degreeHours":
      return text(show(value, "K h", units, 1));
    case "clock":
      return clock(value);
    case "hours":
      return text(show(value, "h", units));
    case "percent":
      return text(show(value, "share", units));
    case "height":
      return text(show(value, "m", units, 2));
    case "prunings":
      return text(show(value, "kg/m", units, 2));
    case "leafToFruit":
      return text(show(value, "m2/kg", units, 1));
    case "count":
      return formatNumber(value, 0);
    case "measure":
      return text(showPlain(value, String(values["unit"] ?? ""), units));
    default:
      return text(showPlain(value, "", units));
  }
}

/** The text of a code; a parameter without a value stays in its braces, a code without a text as it is. */
export function sentenceText(code: string, values: Values, units: UnitSystem): string {
  const template = sharedTemplate(code) ?? code;
  return template.replace(/\{(\w+)(?::(\w+))?\}/g, (whole, name: string, tag: string | undefined) =>
    name in values ? written(values[name], tag, values, units) : whole,
  );
}

/** A text of the shared catalogue that has no values. */
export function sharedText(code: string): string {
  return sharedTemplate(code) ?? code;
}

export function verdictText(sentence: Sentence, units: UnitSystem): string {
  return sentenceText(sentence.code, { ...sentence.words, ...sentence.values }, units);
}

/**
 * A comparison names the options; two of the same name are called by their letters, and of more than two each by
 * its letter and its name.
 */
export function comparisonText(sentence: Sentence, option: number, base: number, units: UnitSystem): string {
  const { name, base: baseName } = sentence.words ?? {};
  const called = (index: number, own: string | undefined) => (name === baseName ? letter(index) : `${letter(index)}: ${optionWord(own ?? "")}`);
  return sentenceText(sentence.code, { ...sentence.words, name: called(option, name), base: called(base, baseName), ...sentence.values }, units);
}

export function faultText(fault: Fault, units: UnitSystem): string {
  return sentenceText(fault.code, { ...fault.values, field: fieldName(fault.path) }, units);
}
