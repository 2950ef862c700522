/** What comes of turning the rows through the compass: each direction as the engine finds it. */

import { signal } from "@preact/signals";
import { listenToEngine } from "./engine.ts";
import type { Sentence } from "./generated/result.ts";
import type { EngineMessage } from "./messages.ts";

/** One side of the rows at one azimuth, means per day. */
export interface DirectionSide {
  compass: string;
  lit_h: number;
  light_MJm2: number;
  lightBefore_MJm2: number;
  lightAfter_MJm2: number;
  heatOverWatch_K_h: number;
  heatOverHot_K_h: number;
  heatOverBurn_K_h: number;
  atRisk: number;
  hottest_C: number;
}

/** An option with its rows at one azimuth. */
export interface Direction {
  azimuth_deg: number;
  sides: [DirectionSide, DirectionSide];
  interceptedShare: number;
}

/** All that is known of the directions so far. */
export interface Turned {
  generation: number;
  done: number;
  /** By option, in rising azimuth. */
  rows: Direction[][];
  /** Once all is known. */
  whole?: { from: string; to: string; days: number; tradeOffs: Sentence[]; yours: Sentence };
}

export const turned = signal<Turned | null>(null);

interface Whole {
  from: string;
  to: string;
  days: number;
  yours: Sentence;
  options: { rows: Direction[]; tradeOff: Sentence }[];
}

export function takeDirection(before: Turned | null, message: EngineMessage): Turned | null {
  if (message.kind === "direction") {
    const same = before?.generation === message.generation && !before.whole;
    const rows = same ? before.rows.map((of) => [...of]) : [];
    while (rows.length <= message.option) rows.push([]);
    rows[message.option]?.push(JSON.parse(message.direction) as Direction);
    return { generation: message.generation, done: message.done, rows };
  }
  if (message.kind === "directions") {
    const { from, to, days, yours, options } = JSON.parse(message.directions) as Whole;
    return {
      generation: message.generation,
      done: 1,
      rows: options.map((option) => option.rows),
      whole: { from, to, days, yours, tradeOffs: options.map((option) => option.tradeOff) },
    };
  }
  return before;
}

listenToEngine((message) => (turned.value = takeDirection(turned.peek(), message)));

/** The numbers that the charts can show. */
export type HeatOver = "heatOverWatch_K_h" | "heatOverHot_K_h" | "heatOverBurn_K_h";

/** The number on the worse side. */
export function worst(row: Direction, number: HeatOver): number {
  return Math.max(row.sides[0][number], row.sides[1][number]);
}

/** Places on the polar chart, a row line having two ends: [x, y] with north up, as far from the middle as the value. */
export function polar(rows: readonly Direction[], number: HeatOver, radius: number, most: number): [number, number][] {
  const half = rows.filter((row) => row.azimuth_deg < 180);
  const place = (turn: number) => (row: Direction): [number, number] => {
    const angle = ((row.azimuth_deg + turn) * Math.PI) / 180;
    const distance = most > 0 ? (radius * worst(row, number)) / most : 0;
    return [distance * Math.sin(angle), -distance * Math.cos(angle)];
  };
  return [...half.map(place(0)), ...half.map(place(180))];
}

/** A round number at or above a value, to end an axis on. */
export function axisEnd(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return (([1, 2, 5, 10].find((step) => step * power >= value) ?? 10) * power);
}
