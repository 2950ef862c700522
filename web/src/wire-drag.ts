/**
 * Wires are dragged in the end-on drawing of an option. The drawing comes anew while one drags, so the place around it
 * takes the pointer; the boxes below the drawing do the same by typing.
 */

import { effective, fieldSchema, isObject, type Json, type Path } from "./document.ts";
import { edit, scenario, sealGesture } from "./store.ts";

/** How far from a wire it can be taken hold of: half of a target of 28 px. */
const reach_px = 14;

/** The height of the lowest line of the drawing's axis [m]. */
const firstLine_m = 0.5;

/** From the window to metres of the row frame seen from the end: x across, z up. */
interface Frame {
  metres: (event: PointerEvent) => { x: number; z: number };
  pixelsPerMetre: number;
}

function frameOf(place: HTMLElement): Frame | null {
  const line = place.querySelector<SVGGraphicsElement>(".axis path");
  const matrix = line?.getScreenCTM();
  if (!line || !matrix) return null;
  const perMetre = -line.getBBox().y / firstLine_m;
  const inverse = matrix.inverse();
  return {
    metres: (event) => {
      const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(inverse);
      return { x: at.x / perMetre, z: -at.y / perMetre };
    },
    pixelsPerMetre: perMetre * Math.abs(matrix.a),
  };
}

/** A length within what its field allows, in whole steps of it. */
function stepped(path: Path, value: number): number {
  const schema = fieldSchema(path);
  const step = schema?.["x-step"] ?? 0.05;
  const inside = Math.min(schema?.maximum ?? value, Math.max(schema?.minimum ?? value, value));
  return Number((Math.round(inside / step) * step).toFixed(3));
}

/** Lets the wires of a list be dragged in a place that holds their drawing. Returns how to stop. */
export function dragWires(place: HTMLElement, list: Path): () => void {
  let held: number | null = null;
  const wires = (): Json[] => {
    const value = effective(scenario.peek(), list);
    return Array.isArray(value) ? value : [];
  };
  /** The wire next to the pointer, if it is near enough to be meant. */
  const meant = (event: PointerEvent): number | null => {
    const frame = frameOf(place);
    if (!frame) return null;
    const at = frame.metres(event);
    const apart = wires().map((wire) => (isObject(wire) ? frame.pixelsPerMetre * Math.hypot(Number(wire["offset_m"] ?? 0) - at.x, Number(wire["height_m"]) - at.z) : Infinity));
    const nearest = apart.indexOf(Math.min(...apart));
    return (apart[nearest] ?? Infinity) <= reach_px ? nearest : null;
  };
  const down = (event: PointerEvent) => {
    held = event.button === 0 ? meant(event) : null;
    if (held === null) return;
    event.preventDefault();
    place.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent) => {
    const frame = held === null ? null : frameOf(place);
    if (!frame) {
      place.classList.toggle("over-wire", meant(event) !== null);
      return;
    }
    const { x, z } = frame.metres(event);
    const next = wires().map((wire, i) =>
      i === held && isObject(wire) ? { ...wire, height_m: stepped([...list, i, "height_m"], z), offset_m: stepped([...list, i, "offset_m"], x) } : wire,
    );
    if (JSON.stringify(next) !== JSON.stringify(wires())) edit(list, next, `drag ${list.join("/")}/${held}`);
  };
  const up = () => {
    if (held !== null) sealGesture();
    held = null;
  };
  // A finger on a wire drags it; elsewhere it scrolls the page.
  const touch = (event: TouchEvent) => {
    if (held !== null) event.preventDefault();
  };
  const stop = new AbortController();
  const { signal } = stop;
  place.addEventListener("pointerdown", down, { signal });
  place.addEventListener("pointermove", move, { signal });
  place.addEventListener("pointerup", up, { signal });
  place.addEventListener("pointercancel", up, { signal });
  place.addEventListener("touchstart", touch, { signal, passive: false });
  place.addEventListener("touchmove", touch, { signal, passive: false });
  return () => stop.abort();
}
