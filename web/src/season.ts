/** What a season does to the fruit, day by day and hour by hour, as helpers find it. */

import { effect, signal } from "@preact/signals";
import { type HeatWave, type Season, type SeasonPart, type SeasonSide, type SideDay, withPart } from "./calendar.ts";
import { rawOptions } from "./document.ts";
import { answer } from "./engine.ts";
import { turnedOver } from "./directions.ts";
import { dismissHelpers, Sweep } from "./sweeps.ts";

export const season = signal<Season | null>(null);

/** The days of the season that is wanted, as month-day, empty for all of it; null while nobody looks. */
export const seasonSpan = signal<{ from: string; to: string } | null>(null);

interface Whole {
  days: { airMax_C: number }[];
  waves: HeatWave[];
  options: { sides: [SeasonSide, SeasonSide] }[];
}

export const seasonSweep = new Sweep("season", {
  begin: ({ days }, document) => {
    const none = () => Array<SideDay | undefined>(days.length).fill(undefined);
    season.value = {
      days: days.map(({ weather, stage }) => ({ date: weather.date, stage })),
      calendar: rawOptions(document).map(() => [none(), none()]),
    };
  },
  parts: (texts) => {
    const before = season.peek();
    if (before) season.value = texts.reduce((known, text) => withPart(known, JSON.parse(text) as SeasonPart), before);
  },
  whole: (text) => {
    const { days, waves, options } = JSON.parse(text) as Whole;
    const before = season.peek();
    if (before) season.value = { ...before, whole: { airMax_C: days.map((day) => day.airMax_C), waves, options: options.map(({ sides }) => sides) } };
  },
});

/** Runs the season of the newest answer. */
export function runSeason(): void {
  const document = answer.peek()?.document;
  const span = seasonSpan.peek();
  if (document && span) seasonSweep.start(document, { over: "season", ...span });
}

// Every new answer has its season as long as somebody looks and has not stopped it.
effect(() => {
  if (!seasonSpan.value) seasonSweep.end("idle");
  else if (answer.value && seasonSweep.state.peek().phase !== "stopped") runSeason();
});

// While nobody looks at either, nobody needs the helpers.
effect(() => {
  if (!turnedOver.value && !seasonSpan.value) dismissHelpers();
});
