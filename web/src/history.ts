/**
 * Undo and redo over immutable documents. Edits with the same gesture key in a row are one step, so
 * that a slider drag is undone at once.
 */

/** Steps kept; older ones are forgotten. */
export const maxSteps = 200;

export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** The gesture that made the present, until it is sealed. */
  readonly gesture: string | null;
}

export function startHistory<T>(present: T): History<T> {
  return { past: [], present, future: [], gesture: null };
}

/** Makes next the present. A gesture that goes on replaces its own step; null is always a step. */
export function record<T>(h: History<T>, next: T, gesture: string | null = null): History<T> {
  if (next === h.present) return h;
  if (gesture !== null && gesture === h.gesture) return { ...h, present: next, future: [] };
  const past = [...h.past, h.present].slice(-maxSteps);
  return { past, present: next, future: [], gesture };
}

/** Ends the gesture: the next edit is a new step. */
export function seal<T>(h: History<T>): History<T> {
  return h.gesture === null ? h : { ...h, gesture: null };
}

export function undo<T>(h: History<T>): History<T> {
  const previous = h.past.at(-1);
  if (previous === undefined) return h;
  return { past: h.past.slice(0, -1), present: previous, future: [h.present, ...h.future], gesture: null };
}

export function redo<T>(h: History<T>): History<T> {
  const next = h.future[0];
  if (next === undefined) return h;
  return { past: [...h.past, h.present], present: next, future: h.future.slice(1), gesture: null };
}
