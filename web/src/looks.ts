/** Where one looks from in each pane. The first looks come from the view; the page keeps what was chosen. */

import { batch, signal } from "@preact/signals";
import { afterTurn, compassFrom, type Home, type Look } from "./camera.ts";

/** The look chosen for each option; null where the one at first holds. */
const looks = signal<readonly (Look | null)[]>([]);
/** The look at first of each option, once the view runs. */
const homes = signal<readonly Home[]>([]);
/** Whether all panes are looked at together. */
export const looksLinked = signal(true);

/** The chosen look of an option, null for the one at first. */
export function chosenLook(option: number): Look | null {
  return looks.value[option] ?? null;
}

/** The look of an option; undefined before the view runs. */
export function lookOf(option: number): Look | undefined {
  return chosenLook(option) ?? homes.value[option];
}

/** The compass direction from which an option is looked at [deg]; undefined before the view runs. */
export function seenFrom(option: number): number | undefined {
  const home = homes.value[option];
  return home && compassFrom(chosenLook(option) ?? home, home);
}

/** Chooses a look, or with null the one at first, for an option or for all that are looked at together. */
export function setLook(option: number, look: Look | null): void {
  const all = Array.from({ length: Math.max(looks.value.length, homes.value.length, option + 1) }, (_, i) => chosenLook(i));
  looks.value = all.map((old, i) => (looksLinked.value || i === option ? look : old));
}

/** Changes the look of an option. */
export function moveLook(option: number, move: (look: Look) => Look | null): void {
  const look = lookOf(option);
  if (look) setLook(option, move(look));
}

/** Looks at all panes together, as at the one that leads, or at each by itself. */
export function linkLooks(linked: boolean, lead: number): void {
  batch(() => {
    looksLinked.value = linked;
    if (linked) setLook(lead, chosenLook(lead));
  });
}

/** Takes the looks at first of a document that the view has read. */
export function takeHomes(next: readonly Home[]): void {
  batch(() => {
    looks.value = next.map((home, i) => afterTurn(chosenLook(i), homes.value[i], home, looksLinked.value));
    homes.value = next;
  });
}

/** Options have been put in another order; each place names its option before, or none. */
export function orderLooks(before: readonly number[]): void {
  batch(() => {
    looks.value = before.map((i) => chosenLook(i));
    homes.value = before.flatMap((i) => homes.value[i] ?? []);
  });
}

/** All looks as they are, to come back to. */
export function heldLooks(): () => void {
  const [before, firsts, together] = [looks.peek(), homes.peek(), looksLinked.peek()];
  return () =>
    batch(() => {
      looks.value = before;
      homes.value = firsts;
      looksLinked.value = together;
    });
}
