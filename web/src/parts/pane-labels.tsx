/** The words inside the picture of a flat way: heights and sides of a slice, directions and hours of an outlook. */

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { answer } from "../engine.ts";
import { drawingWords } from "../drawing-words.ts";
import { lookOf } from "../looks.ts";
import { instant, scenario } from "../store.ts";
import { labelsOf, panes, viewState } from "../view.ts";
import type { PlacedLabel } from "../view-messages.ts";
import { way } from "../ways.ts";

/** How often a picture that is being made is asked for its words [ms]. */
const askEvery_ms = 150;

const none: readonly PlacedLabel[] = [];

export function PaneLabels({ option }: { option: number }) {
  const labels = useSignal<readonly PlacedLabel[]>(none);
  const pane = panes.value[option];
  const flat = way.value === "slice" || way.value === "outlook";
  const reasons = [way.value, pane, scenario.value, instant.value, answer.value, lookOf(option), viewState.value];
  useEffect(() => {
    if (!flat) {
      labels.value = none;
      return undefined;
    }
    let timer = 0;
    const ask = () => {
      const { now, busy } = labelsOf(option);
      if (JSON.stringify(now) !== JSON.stringify(labels.peek())) labels.value = now;
      if (busy) timer = window.setTimeout(ask, askEvery_ms);
    };
    timer = window.setTimeout(ask, askEvery_ms);
    return () => window.clearTimeout(timer);
  }, reasons);
  if (!flat || !pane) return null;
  return (
    <div class="pane-labels" aria-hidden="true">
      {labels.value.map(({ x, y, saying }, i) => (
        <span key={i} style={{ left: `${x - pane.x}px`, top: `${y - pane.y}px` }}>
          {drawingWords(saying)}
        </span>
      ))}
    </div>
  );
}
