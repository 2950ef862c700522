/** What the charts of the day draw of each option: courses over the hours, picked from the newest results. */

import { signal } from "@preact/signals";
import { answer, listenToEngine, tellEngine } from "./engine.ts";
import type { Flows } from "./messages.ts";
import { optionResult, sideName, sidesInOrder, worse } from "./shown.ts";
import { t, type TextKey } from "./text.ts";

/** A course with its name; the dash and the colour tell it from the others. */
export interface NamedCourse {
  name: string;
  values: readonly number[];
  dash: string;
  colour?: string;
  thin?: boolean;
}

export type ChartKind = "temperature" | "light" | "lit" | "flows";

export const chartKinds: readonly ChartKind[] = ["temperature", "light", "lit", "flows"];

/** The unit of what a chart draws, as the formatter of units knows it. */
export const chartUnits: Record<ChartKind, string> = { temperature: "degC", light: "W/m2", lit: "share", flows: "W/m2" };

const dashes = { whole: "", long: "9 4", short: "2 3", mixed: "9 3 2 3" };

/** The heat flows of one berry of each option, by its letter, with the result that they belong to. */
const flows = signal<{ generation: number; byOption: Record<string, Flows> }>({ generation: 0, byOption: {} });
listenToEngine((message) => {
  if (message.kind !== "flows") return;
  const found = JSON.parse(message.flows) as Flows;
  const before = flows.peek();
  const byOption = before.generation === message.generation ? before.byOption : {};
  flows.value = { generation: message.generation, byOption: { ...byOption, [found.option]: found } };
});

/** Asks for the heat flows of the bunch that is hottest on the hotter side of each option. */
export function askForFlows(): void {
  const now = answer.peek();
  now?.day.options.forEach((result, option) => {
    const own = worse(result, "hottest_C");
    if (own) tellEngine({ kind: "flows", generation: now.generation, option, side: own.at, hour: own.side.summary.hottestAt_h });
  });
}

/** The flows of an option; undefined until they have been worked out for the result that is shown. */
export function flowsOf(letter: string): Flows | undefined {
  return flows.value.generation === answer.value?.generation ? flows.value.byOption[letter] : undefined;
}

/** The courses of an option in a chart; none before there are results. */
export function coursesOf(kind: ChartKind, option: number, letter: string): NamedCourse[] {
  const result = optionResult(option);
  if (!result) return [];
  if (kind === "flows") return flowCourses(flowsOf(letter));
  return sidesInOrder(result).flatMap(({ side }, i) => {
    const dash = i === 0 ? dashes.whole : dashes.long;
    const name = sideName(side);
    if (kind === "light") return [{ name, values: side.steps.light_Wm2, dash }];
    if (kind === "lit") return [{ name, values: side.steps.litShare, dash }];
    return [
      { name: t("charts.hottest", { side: name }), values: side.steps.hottest_C, dash },
      { name: t("charts.mean", { side: name }), values: side.steps.mean_C, dash: i === 0 ? dashes.short : dashes.mixed, thin: true },
    ];
  });
}

/** All flows point into the berry: what it gives off is drawn below zero, and the sum of all is what warms it. */
function flowCourses(of: Flows | undefined): NamedCourse[] {
  if (!of) return [];
  const out = (values: readonly number[]) => values.map((value) => -value + 0);
  const named = (key: TextKey, values: readonly number[], dash: string): NamedCourse => ({ name: t(key), values, dash });
  return [
    { ...named("charts.sunlight", of.sunlight_Wm2, dashes.whole), colour: "var(--sun)" },
    named("charts.longwave", of.longwave_Wm2, dashes.short),
    named("charts.air", out(of.air_Wm2), dashes.long),
    named("charts.evaporation", out(of.evaporation_Wm2), dashes.mixed),
    { ...named("charts.stored", of.stored_Wm2, dashes.whole), thin: true },
  ];
}
