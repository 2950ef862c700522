/** The lessons as data: what each runs, looks at and reads from the results. Its texts stand in the text catalogue. */

import raw from "../../../testdata/lessons/catalogue.json" with { type: "json" };
import { edited, type Json, type JsonObject, layered, type Path, rawOptions } from "../document.ts";
import type { FixedLook, Way } from "../ways.ts";

/** A number that a lesson reads: from a day's result, from the heat flows of one berry, or from two others. */
export interface Reading {
  unit: string;
  /** Where it stands in the result; "*" of a list takes the greatest of its entries. */
  path?: string;
  /** The clock hour of a course. */
  hour?: number;
  /** The run that it is read from; without it the first. */
  run?: string;
  /** The hottest berry of a side of an option at an hour, and the number of its chain. */
  chain?: { option: number; side: number; hour: number; symbol: string };
  /** A number of the literature that the texts name, for its unit. */
  given?: number;
  /** The difference of two others of the lesson: of less less. */
  of?: string;
  less?: string;
}

/** A stage of a lesson. Hour, place and way of looking, and the run, hold until a later stage says otherwise. */
export interface Stage {
  key: string;
  hour?: number;
  /** The hour from which the day plays up to it. */
  since?: number;
  from?: FixedLook;
  /** Turned from there by [deg]; 180 looks at the other side of the row. */
  turn_deg?: number;
  way?: Way;
  run?: string;
  /** The table: what its columns are called, their hours, and its rows: a label, then a number for each column. */
  columns?: string[];
  hours?: number[];
  rows?: string[][];
}

/** Something to change at the end of a lesson, by paths of the document. */
export interface Try {
  key: string;
  set: Record<string, Json>;
}

export interface Lesson {
  key: string;
  /** Keys of cautions that belong to what the lesson is about. */
  cautions: string[];
  scenario: JsonObject;
  runs?: Record<string, Record<string, Json>>;
  values: Record<string, Reading>;
  guesses: string[];
  /** Which guess the results bear out: that of the most or the least, or the one that all are alike. */
  answer: { pick: "most" | "least"; of: Record<string, string>; alike?: { guess: string; within: number } };
  stages: Stage[];
  tries: Try[];
}

const shared = raw.shared as unknown as JsonObject;

export const lessons = raw.lessons as unknown as Lesson[];

export function lessonByKey(key: string): Lesson | undefined {
  return lessons.find((lesson) => lesson.key === key);
}

/** The stage with all that holds at it. */
export function stageAt({ stages }: Lesson, index: number): Stage {
  const held: Partial<Stage> = {};
  for (const { hour, from, turn_deg, way, run } of stages.slice(0, index + 1)) {
    if (from !== undefined) delete held.turn_deg;
    Object.assign(held, JSON.parse(JSON.stringify({ hour, from, turn_deg, way, run })));
  }
  return { ...held, ...stages[index] } as Stage;
}

/** Stages from this one on have the results before them. */
export function firstLook({ stages }: Lesson): number {
  return stages.findIndex(({ key }) => key === "run") + 1;
}

/** The document of a run of the lesson, with further values set; names are what it and its options are called. */
export function lessonDocument(lesson: Lesson, names: { lesson: string; note: string; options: (string | undefined)[] }, set: Record<string, Json> = {}): JsonObject {
  const whole = layered(shared, lesson.scenario) as JsonObject;
  const options = rawOptions(whole).map((option, i) => (names.options[i] ? { ...option, name: names.options[i] } : option));
  const document: JsonObject = { ...whole, name: names.lesson, note: names.note, options };
  return Object.entries(set).reduce((next, [place, value]) => edited(next, pathOf(place), value), document);
}

function pathOf(place: string): Path {
  return place.split("/").map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}
