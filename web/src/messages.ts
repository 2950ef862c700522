/** The messages between the page and the engine in its worker. */

import type { JsonObject } from "./document.ts";
import type { Side } from "./generated/result.ts";

/** From the page: compute this scenario; the newest generation wins. */
export interface RunMessage {
  kind: "run";
  generation: number;
  scenario: string;
  /** Draws of the uncertain inputs for the ranges that follow the result. */
  draws: number;
  /** The hour of the day that is shown. */
  hour: number;
}

/** The days that work is wanted over; from and to, as month-day, say it otherwise. */
export interface Stretch {
  over: "day" | "ripening" | "season";
  from: string;
  to: string;
}

/** From the page: cut the work of many days into parts. The engine that has the open weather file is asked. */
export interface PlanMessage extends Stretch {
  kind: "plan";
  generation: number;
  scenario: string;
  what: "rows" | "season";
}

/** To a helper: take up this plan in place of the one before; an empty one only ends that. */
export interface WorkMessage {
  kind: "work";
  generation: number;
  plan: string;
}

/** To a helper: do a part of the plan. */
export interface PartMessage {
  kind: "part";
  generation: number;
  part: number;
}

/** To a helper: put the answers of all parts together. */
export interface WholeMessage {
  kind: "whole";
  generation: number;
  answers: string;
}

/** What a page needs to know of a plan. */
export interface Plan {
  days: { weather: { date: string }; stage: string }[];
  parts: { option: number; from: number; to: number }[];
}

/** From the page: read this weather file and keep it open. Its bytes are handed over; they go no further. */
export interface WeatherMessage {
  kind: "weather";
  generation: number;
  name: string;
  bytes: ArrayBuffer;
  /** What the file may not say itself, as JSON: the site and date of the document, and the mapping of a table. */
  asked: string;
}

/** From the page: take a day of the open weather file. */
export interface WeatherDayMessage {
  kind: "weatherDay";
  generation: number;
  month: number;
  day: number;
}

/**
 * From the page: explain the hottest bunch face of a side at an hour, in the newest result, or give its heat flows over
 * the day.
 */
export interface ExplainMessage {
  kind: "explain" | "flows";
  generation: number;
  option: number;
  /** 0 left, 1 right, as in results. */
  side: number;
  hour: number;
}

/** What a change makes of the numbers, nearly, before the engine has run the day; as sim/result has it. */
export interface Preview {
  options: { sides: [SidePreview, SidePreview] }[];
}

/** A side without its courses. */
export type SidePreview = Pick<Side, "compass" | "azimuth_deg" | "sunSide" | "summary">;

/** How the surface temperature of one bunch face comes about, from the sun to the berry. */
export interface Chain {
  option: string;
  side: string;
  bunch: number;
  bunches: number;
  hour_h: number;
  links: Link[];
}

/** One number of a chain. What it means stands in the shared catalogue by its symbol; part and source are codes of it. Relation and source are absent where there is nothing to say. */
export interface Link {
  part: string;
  symbol: string;
  value: number;
  unit: string;
  relation?: string;
  source?: string;
}

/** The heat flows of the berries of one bunch face over a day [W/m² of skin], as sim/result has them. */
export interface Flows {
  option: string;
  side: string;
  bunch: number;
  bunches: number;
  sunlight_Wm2: number[];
  longwave_Wm2: number[];
  air_Wm2: number[];
  evaporation_Wm2: number[];
  stored_Wm2: number[];
}

export type PageMessage = ExplainMessage | RunMessage | PlanMessage | WeatherMessage | WeatherDayMessage;

/** The faces of one option, for drawing: one value per instant and face. */
export interface FaceCourse {
  /** Temperature of the hottest point of the berry [°C], at [instant · faces + face]. */
  surface: Float32Array;
  /** 1 where the face is in direct sun, same index. */
  lit: Uint8Array;
}

/** The sun of an hour as the view takes it. */
export interface ShownSun {
  hour: number;
  sunAzimuth_deg: number;
  sunElevation_deg: number;
  dni_Wm2: number;
  dhi_Wm2: number;
}

/** What a change makes of the hour shown, nearly: all faces at that hour of each option that changes, and what they make together. */
export interface Sighted {
  sun: ShownSun;
  faces: (SightedFaces | null)[];
}

export interface SightedFaces extends FaceCourse {
  sides: [HourSide, HourSide];
}

/** A side at an instant, as its steps in results have it. */
export interface HourSide {
  litShare: number;
  mean_C: number;
  hottest_C: number;
}

/** One thing wrong with the scenario or with a weather file. */
export interface Fault {
  code: string;
  path: string;
  values?: Record<string, unknown>;
}

/** One whole day of a weather file; a typical year takes its months from different years. */
export interface WeatherDay {
  year: number;
  month: number;
  day: number;
  /** Highest air temperature [°C]; absent where the file has none. */
  airMax_C?: number;
}

/** What there is to tell of a weather file. */
export interface WeatherContents {
  name: string;
  format: string;
  place: string;
  latitude_deg: number;
  longitude_deg: number;
  elevation_m: number;
  utcOffset_h: number;
  /** In the order of the file. */
  days: WeatherDay[];
  hottest?: WeatherDay;
  /** What the light says about the clock, and whether it shows it to be off. */
  clock: Fault;
  shifted: boolean;
  preview?: WeatherPreview;
}

/** The clearest day of a file, at every quarter of an hour. */
export interface WeatherPreview {
  day: WeatherDay;
  hour_h: number[];
  air_C: number[];
  ghi_Wm2: number[];
  /** Of the sun above the horizon. */
  elevation_deg: number[];
}

/** How to read the table of a logger; web/docs/weather.md tells the fields. */
export interface TableMapping {
  encoding: string;
  separator: string;
  decimalComma: boolean;
  firstLine: number;
  dateOrder: string;
  clock: string;
  utcOffset_h: number;
  stamp: string;
  step_min: number;
  windHeight_m: number;
  wind_ms: number;
  columns: TableColumn[];
}

/** What a column holds; counted from 1. */
export interface TableColumn {
  column: number;
  name?: string;
  quantity: string;
  unit?: string;
}

/** A table whose mapping is a guess, to be confirmed. */
export interface WeatherTable {
  name: string;
  mapping: TableMapping;
  /** Of all columns. */
  names: string[];
  /** The first readings, field by field. */
  rows: string[][];
  /** What a column may hold, with the units that it is read in. */
  quantities: { name: string; units: string[] }[];
}

/** What came of opening a weather file: its contents, a table to be mapped, or the faults that block it. */
export interface OpenedWeather {
  file?: WeatherContents;
  table?: WeatherTable;
  notices: Fault[];
  faults: Fault[];
}

/** What came of taking a day: the part to lay over the document, or the faults that block it. */
export interface TakenDay {
  fragment?: JsonObject;
  notices: Fault[];
  faults: Fault[];
}

export type EngineMessage =
  | { kind: "loading"; loaded: number; total: number }
  | { kind: "unavailable"; reason: string }
  | { kind: "ready" }
  | { kind: "progress"; generation: number; stage: string; done: number }
  | { kind: "faults"; generation: number; faults: string }
  | { kind: "preview"; generation: number; preview?: string; seen?: Sighted }
  | { kind: "result"; generation: number; result: string; faces: FaceCourse[] }
  | { kind: "explanation"; generation: number; chain: string }
  | { kind: "flows"; generation: number; flows: string }
  | { kind: "bands"; generation: number; bands: string; weighing: string }
  | { kind: "planned"; generation: number; plan: string; faults: string }
  | { kind: "part"; generation: number; part: number; answer: string }
  | { kind: "whole"; generation: number; whole: string }
  | { kind: "weatherFile"; generation: number; opened: string }
  | { kind: "scenarioDay"; generation: number; taken: string }
  | { kind: "crashed"; generation: number; reason: string };
