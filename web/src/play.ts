/** Plays the day: the sun runs from now to midnight and begins again. With reduced motion it goes hour by hour. */

import { instant, lastInstant, playing, setInstant, step_min } from "./store.ts";

/** One day takes this long. */
const day_ms = 24_000;
const step_ms = day_ms / lastInstant;
/** Reduced motion: one hour in this time. */
const calmHour_ms = 1500;

export function togglePlay(): void {
  playing.value = !playing.peek();
  if (playing.peek()) play();
}

function play(): void {
  const calm = window.matchMedia("(prefers-reduced-motion: reduce)").matches;
  const [period, steps] = calm ? [calmHour_ms, 60 / step_min] : [step_ms, 1];
  let due = performance.now() + period;
  const frame = (now: number) => {
    if (!playing.peek()) return;
    const count = now < due ? 0 : 1 + Math.floor((now - due) / period);
    if (count > 0) {
      due += count * period;
      const next = instant.peek() + Math.min(count, 12) * steps;
      setInstant(next > lastInstant ? 0 : next);
    }
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}
