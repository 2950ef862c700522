/** What comes of turning the rows through the compass: each direction as a helper finds it. */

import { effect, signal } from "@preact/signals";
import { rawOptions } from "./document.ts";
import { answer } from "./engine.ts";
import type { Sentence } from "./generated/result.ts";
import { type Direction, withDirection } from "./polar.ts";
import { Sweep } from "./sweeps.ts";

/** All that is known of the directions so far. */
export interface Turned {
  /** By option, in rising azimuth. */
  rows: Direction[][];
  /** Once all is known. */
  whole?: { from: string; to: string; days: number; tradeOffs: Sentence[]; yours: Sentence };
}

export const turned = signal<Turned | null>(null);

/** The days over which rows are turned; null while nobody looks. */
export const turnedOver = signal<"day" | "ripening" | "season" | null>(null);

interface Whole {
  from: string;
  to: string;
  days: number;
  yours: Sentence;
  options: { rows: Direction[]; tradeOff: Sentence }[];
}

export const turning = new Sweep("rows", {
  begin: (_, document) => (turned.value = { rows: rawOptions(document).map(() => []) }),
  parts: (texts) => {
    const add = (rows: Direction[][], text: string) => {
      const { option, direction } = JSON.parse(text) as { option: number; direction: Direction };
      return withDirection(rows, option, direction);
    };
    turned.value = { rows: texts.reduce(add, turned.peek()?.rows ?? []) };
  },
  whole: (text) => {
    const { from, to, days, yours, options } = JSON.parse(text) as Whole;
    turned.value = { rows: options.map((option) => option.rows), whole: { from, to, days, yours, tradeOffs: options.map((option) => option.tradeOff) } };
  },
});

/** Turns the rows of the newest answer. */
export function turnRows(): void {
  const document = answer.peek()?.document;
  const over = turnedOver.peek();
  if (document && over) turning.start(document, { over, from: "", to: "" });
}

// Every new answer is turned as long as somebody looks and has not stopped it.
effect(() => {
  if (!turnedOver.value) turning.end("idle");
  else if (answer.value && turning.state.peek().phase !== "stopped") turnRows();
});
