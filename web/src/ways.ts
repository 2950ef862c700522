/** The ways of looking at the rows, the same in all panes, and the bunch that was tapped. */

import { signal } from "@preact/signals";

/** The names of the ways as render has them. */
export const ways = ["natural", "light", "heat", "slice", "outlook"] as const;
export type Way = (typeof ways)[number];

export const way = signal<Way>("natural");

/** The places that one looks from at once, as render has them; the first is the look at first. */
export const fixedLooks = ["front", "along", "end", "above", "sun", "corner"] as const;
export type FixedLook = (typeof fixedLooks)[number];

/** How long after its highest the sun of the afternoon stands [h], as in render. */
export const afterNoon_h = 3;

/** A bunch whose day is read. */
export interface TappedBunch {
  option: number;
  bunch: number;
}

export const tapped = signal<TappedBunch | null>(null);

/** Reads the day of a bunch; a negative one is none. */
export function tapBunch(option: number, bunch: number): void {
  tapped.value = bunch < 0 ? null : { option, bunch };
}
