/** Where the panes lie, and whether all columns fit beside each other. Measured only when the layout changes. */

import { computed, effect, signal } from "@preact/signals";
import { lending, optionCount, shownOption } from "./store.ts";
import { panes } from "./view.ts";
import type { Pane } from "./view-messages.ts";

/** A column needs this much, in multiples of the text size, so that larger text counts too; in a lesson it shows less. */
const column_rem = 20;
const lessonColumn_rem = 13;

const width = signal(window.innerWidth);
const textSize = signal(16);

export const fits = computed(() => width.value >= optionCount.value * (lending.value ? lessonColumn_rem : column_rem) * textSize.value);

/** Watches the columns and tells the view where its panes are. Returns how to stop. */
export function watchLayout(grid: HTMLElement): () => void {
  const measure = () => {
    width.value = grid.clientWidth;
    textSize.value = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    const found = rectangles(grid);
    if (JSON.stringify(found) !== JSON.stringify(panes.peek())) panes.value = found;
  };
  const observer = new ResizeObserver(measure);
  const stop = effect(() => {
    // Which panes there are follows from these; they are in the document one frame later.
    void [optionCount.value, shownOption.value, fits.value];
    requestAnimationFrame(() => {
      observer.disconnect();
      observer.observe(grid);
      for (const pane of grid.querySelectorAll("[data-pane]")) observer.observe(pane);
    });
  });
  return () => {
    stop();
    observer.disconnect();
  };
}

/** One rectangle per option within the frame; an option that is not shown has none. */
function rectangles(grid: HTMLElement): Pane[] {
  const frame = grid.querySelector("iframe")?.getBoundingClientRect();
  return Array.from({ length: optionCount.peek() }, (_, option) => {
    const pane = grid.querySelector(`[data-pane="${option}"]`)?.getBoundingClientRect();
    if (!pane || !frame) return { x: 0, y: 0, width: 0, height: 0 };
    return { x: pane.x - frame.x, y: pane.y - frame.y, width: pane.width, height: pane.height };
  });
}
