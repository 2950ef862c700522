/** The rows of the one table of the decision, the scales of their pictures, and what the reader's weights come to. */

import type { Estimate, Weighed } from "./generated/result.ts";

/** What a weight may be given to. */
export const weighable = ["heat", "light", "frost", "crop", "work"] as const;

/** One row of the table: what it is called in the shared catalogue, and what it shows of an option. */
export interface Row {
  key: (typeof weighable)[number] | "water" | "colour";
  unit: string;
  of: (option: Weighed) => Estimate;
  /** Its range comes from draws, some time after its numbers. */
  drawn?: true;
  /** Its picture starts at nothing; a temperature has no such start. */
  fromZero?: true;
}

const exactly = (value: number): Estimate => ({ low: value, value, high: value });

export const rows: Row[] = [
  { key: "heat", unit: "degC", of: (option) => option.heat_C, drawn: true },
  { key: "light", unit: "MJ/m2", of: (option) => option.light_MJm2, drawn: true, fromZero: true },
  { key: "frost", unit: "share", of: (option) => option.frost.killed, fromZero: true },
  { key: "crop", unit: "t/ha", of: (option) => option.crop.perHa_t, fromZero: true },
  { key: "work", unit: "h/ha", of: (option) => option.work.total_h, fromZero: true },
  { key: "water", unit: "share", of: (option) => exactly(option.water.shaded), fromZero: true },
  { key: "colour", unit: "h", of: (option) => exactly(option.colour_h), fromZero: true },
];

/** Whether the reader may give a row weight; the others are hints. */
export function isWeighed({ key }: Row): boolean {
  return (weighable as readonly string[]).includes(key);
}

/** A scale whose ends are round numbers. */
export interface Scale {
  from: number;
  to: number;
  /** Decimals that its ends need. */
  digits: number;
}

/** The scale that holds all of some numbers, in the unit in which they are shown; from nothing on where it is wished. */
export function scaleFor(numbers: readonly number[], fromZero: boolean): Scale {
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  const step = roundStep((most - (fromZero ? 0 : least)) / 4);
  const from = fromZero ? 0 : step * Math.floor(least / step);
  const to = Math.max(step * Math.ceil(most / step), from + step);
  return { from, to, digits: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}

/** The least of 1, 2, 5, 10, 20 … and their tenths that is not below a length; 1 where there is none. */
function roundStep(length: number): number {
  if (!(length > 0)) return 1;
  const ten = 10 ** Math.floor(Math.log10(length));
  return ten * ([1, 2, 5, 10].find((part) => part * ten >= length * (1 - 1e-9)) ?? 10);
}

/** What has weight, the heaviest first, with its share of all weights. */
export function weightShares(weightOf: (key: Row["key"]) => number): { key: Row["key"]; share: number }[] {
  const heavy = weighable.map((key) => ({ key, weight: Math.max(0, weightOf(key)) })).filter(({ weight }) => weight > 0);
  const sum = heavy.reduce((total, { weight }) => total + weight, 0);
  return heavy.map(({ key, weight }) => ({ key, share: weight / sum })).sort((a, b) => b.share - a.share);
}
