/** What the parts of the page show of the newest answer. Nothing is computed here but picks of given numbers. */

import { computed } from "@preact/signals";
import { effectiveNumber, effectiveText, formByKey, type JsonObject } from "./document.ts";
import { answer, preview, ranges, sighted } from "./engine.ts";
import type { Band, Difference, OptionResult, Side, Summary, SummaryBands } from "./generated/result.ts";
import type { HourSide } from "./messages.ts";
import { instant, scenario } from "./store.ts";
import { t, type TextKey } from "./text.ts";
import { formName, sharedWord } from "./words.ts";

/** The limits of the shown answer, lowest first. */
export const limits = computed(() => {
  const document = answer.value?.document ?? scenario.value;
  const of = (key: "watch" | "hot" | "burn") => ({ key, temperature_C: effectiveNumber(document, ["limits", `${key}_C`]) });
  return [of("watch"), of("hot"), of("burn")] as const;
});

/** The option that the others are compared with. */
export const compared = computed(() => {
  const index = effectiveNumber(answer.value?.document ?? scenario.value, ["compare"]);
  return Number.isInteger(index) ? index : 0;
});

export function optionResult(option: number): OptionResult | undefined {
  return answer.value?.day.options[option];
}

/** The same with the sides of the preview, where there is one; its courses and its verdict are still those of the answer. */
export function optionSoon(option: number): OptionResult | undefined {
  const result = optionResult(option);
  const soon = preview.value?.of.options[option];
  if (!result || !soon) return result;
  const sides = result.sides.map((side, i) => ({ ...side, ...soon.sides[i as 0 | 1] })) as OptionResult["sides"];
  return { ...result, sides };
}

/** Whether a number of the day is that of the preview, not of the answer. */
export function isNearly(option: number, number: DayNumber): boolean {
  return preview.value !== null && worse(optionSoon(option), number)?.value !== worse(optionResult(option), number)?.value;
}

/** Whether a preview stands by which an option stays as the answer has it. */
export function isSteady(option: number): boolean {
  const soon = preview.value?.of.options[option];
  const was = optionResult(option);
  return !!soon && !!was && JSON.stringify(soon.sides) === JSON.stringify(was.sides.map(({ steps: _, ...side }) => side));
}

/** What a change makes of the hour shown, nearly, until its answer is there; null where there is no telling. */
export const sightedNow = computed(() => {
  const hour = answer.value?.day.hour[instant.value];
  return sighted.value?.sun.hour === hour ? sighted.value : null;
});

/** A side of an option at the hour shown: as it is sighted, where it is, else of the answer. */
export function atHour(option: number, { side, place }: ShownSide): HourSide & { nearly: boolean } {
  const soon = sightedNow.value?.faces[option]?.sides[place === "left" ? 0 : 1];
  if (soon) return { ...soon, nearly: true };
  const of = (course: readonly number[]) => course[instant.value] ?? Number.NaN;
  return { litShare: of(side.steps.litShare), mean_C: of(side.steps.mean_C), hottest_C: of(side.steps.hottest_C), nearly: false };
}

/** The name of an option: its own, else that of its form. */
export function optionName(document: JsonObject, option: number): string {
  const own = effectiveText(document, ["options", option, "name"]);
  const form = formByKey(effectiveText(document, ["options", option, "form"]));
  return own || (form ? formName(form) : "");
}

/** A side of a row as results give it, with its place in them. */
export interface ShownSide {
  side: Side;
  place: "left" | "right";
}

/** Both sides, the one with the early sun first. */
export function sidesInOrder(option: OptionResult): ShownSide[] {
  const [left, right] = option.sides;
  if (!left || !right) return [];
  const sides: ShownSide[] = [
    { side: left, place: "left" },
    { side: right, place: "right" },
  ];
  const early = (side: Side) => side.sunSide === "morning" || side.sunSide === "pole";
  return early(left) || !early(right) ? sides : sides.reverse();
}

const sideNames: Record<string, TextKey> = {
  morning: "side.morning",
  afternoon: "side.afternoon",
  equator: "side.equator",
  pole: "side.pole",
};

export function sideName(side: Side): string {
  const key = sideNames[side.sunSide];
  return t("side.compass", { side: key ? t(key) : "", compass: sharedWord(side.compass) });
}

/** The numbers of the hottest fruit over a day. */
export type DayNumber = "hottest_C" | "hottestOverBurn_h" | "hottestOverHot_h" | "hottestOverWatch_h";

/** A number of the worse side, the one with the hotter hottest fruit, as verdicts and comparisons have it; and the place of the side in the results. */
export function worse(option: OptionResult | undefined, number: DayNumber): { side: Side; at: number; value: number } | undefined {
  const [left, right] = option?.sides ?? [];
  if (!left || !right) return undefined;
  const at = right.summary.hottest_C > left.summary.hottest_C ? 1 : 0;
  const side = at ? right : left;
  return { side, at, value: (side.summary as Summary)[number] };
}

/** The range of a number of the day on the worse side; undefined until it has been drawn. */
export function worseBand(option: number, number: DayNumber): Band | undefined {
  const at = worse(optionResult(option), number)?.at;
  return at === undefined ? undefined : (ranges.value?.options[option]?.sides[at] as SummaryBands | undefined)?.[number];
}

/** How an option differs from the compared one over the draws. */
export function drawnDifference(option: number): Difference | undefined {
  return ranges.value?.differences.find((difference) => difference.option === option);
}
