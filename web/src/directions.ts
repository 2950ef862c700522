/** What comes of turning the rows through the compass: each direction as the engine finds it. */

import { signal } from "@preact/signals";
import { listenToEngine } from "./engine.ts";
import type { Sentence } from "./generated/result.ts";
import type { EngineMessage } from "./messages.ts";
import type { Direction } from "./polar.ts";

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
