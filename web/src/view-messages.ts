/** What passes between the page and the 3D view in its frame. */

import type { Home, Look } from "./camera.ts";
import type { ShownSun } from "./messages.ts";
import type { UnitSystem } from "./units.ts";

/** A rectangle of the frame [CSS px]; a width of 0 hides the pane. */
export interface Pane {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A saying of a picture (drawing-words.ts), its middle at a place of the frame [CSS px]. */
export interface PlacedLabel {
  x: number;
  y: number;
  saying: string;
}

/** The functions that the view program sets on its window. */
export interface View {
  ready: Promise<void>;
  setScenario(json: string): string;
  setPanes(panes: Pane[], devicePixelRatio: number): void;
  setInstant(sun: ShownSun): void;
  setFaces(option: number, surface: Uint8Array, lit: Uint8Array): void;
  setScale(scale: { min_C: number; max_C: number }): void;
  /** Null is the look at first. */
  setLook(option: number, look: Look | null): void;
  /** The look at first of an option of the document that was set last. */
  home(option: number): Home;
  /** The cross-section of an option as SVG, its ids made from the key, its texts sayings; empty until its plants have grown. */
  section(option: number, key: string, units: UnitSystem): string;
  /** One of the names of ways. */
  setWay(way: string): void;
  /** Every thing in an even colour of its own, to compare pictures. */
  setObjects(on: boolean): void;
  /** The bunch of an option that one looks out from; a negative one is one in the middle. */
  setBunch(option: number, bunch: number): void;
  /** The bunch of an option that one looks out from, or −1. */
  bunch(option: number): number;
  /** The bunch that is shown at a place of the frame, or −1. */
  bunchAt(option: number, x: number, y: number): number;
  /** What is said inside the pane of an option and their places in the frame. */
  labels(option: number): PlacedLabel[];
  /** The look from a place, given where the sun of the afternoon stands. */
  fixedLook(option: number, from: string, sunAzimuth_deg: number, sunElevation_deg: number): Look;
  setTheme(theme: "light" | "dark"): void;
  /** Whether the picture is still being made, or made finer. */
  busy(): boolean;
  /** Whether the pictures are painted without WebGL. */
  painted(): boolean;
  frames(): number;
  quads(): number;
  /** The program's work for the last frame, and that of the graphics card, 0 while it is at work. */
  lastFrame_ms(): number;
  lastRaster_ms(): number;
  /** What the program holds when garbage has gone [bytes]. */
  held_bytes(): number;
  /** When the program had drawn the last frame [ms since 1970]. */
  lastDrawn_ms(): number;
  /** The longest time that the program worked at a stretch for the next picture. */
  slice_ms(): number;
}

declare global {
  interface Window {
    rowlightView?: View;
    /** On the page's window: the program of the view calls it with the reason before it ends. */
    rowlightViewFailed?: (reason: string) => void;
  }
}

/** What the frame tells the page. */
export type ViewMessage = { from: "view" } & (
  | { kind: "loading"; loaded: number; total: number }
  | { kind: "ready"; painted: boolean }
  | { kind: "no-canvas" }
  | { kind: "crashed"; reason: string }
);
