/** The day strip of an option: one band for each side, coloured by the temperature of its hottest fruit. */

import { useEffect, useRef } from "preact/hooks";
import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import { colourLine, type Limit, spellsOver } from "../scales.ts";
import { limits, optionResult, type ShownSide, sideName, sidesInOrder } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { clock, show, text } from "../units.ts";
import { HourLine } from "./hour-line.tsx";

export function DayStrip({ option }: { option: number }) {
  const result = optionResult(option);
  const hour = answer.value?.day.hour ?? [];
  return (
    <figure class="strip" aria-label={t("strip", { letter: letter(option) })}>
      <figcaption>{t("strip.title")}</figcaption>
      {(result ? sidesInOrder(result) : []).map((side) => (
        <Band key={side.place} shown={side} hour={hour} />
      ))}
      <HourAxis />
    </figure>
  );
}

function Band({ shown, hour }: { shown: ShownSide; hour: readonly number[] }) {
  const course = shown.side.steps.hottest_C;
  return (
    <div class="band">
      <span class="band-name">{sideName(shown.side)}</span>
      <div class="band-track">
        <ColourBand course={course} />
        {limits.value.map((limit) => (
          <OverLimit key={limit.key} limit={limit} hour={hour} course={course} />
        ))}
        <HourLine />
      </div>
      <ul class="visually-hidden">
        {limits.value.map((limit) => (
          <li key={limit.key}>{spellWords(shown, limit, hour)}</li>
        ))}
      </ul>
    </div>
  );
}

function ColourBand({ course }: { course: readonly number[] }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    canvas.current?.getContext("2d")?.putImageData(colourLine(course), 0, 0);
  }, [course]);
  return <canvas ref={canvas} class="band-colour" width={course.length} height={1} aria-hidden="true" />;
}

/** A named line under the band for as long as it is over the limit, with a tick at each crossing. */
function OverLimit({ limit, hour, course }: { limit: Limit; hour: readonly number[]; course: readonly number[] }) {
  const spells = spellsOver(hour, course, limit.temperature_C);
  const place = nameHours <= (spells[0]?.from ?? 24) || nameHours > 24 - (spells.at(-1)?.to ?? 0) ? "" : "at-end";
  return (
    <div class={`over over-${limit.key}`} aria-hidden="true">
      {spells.map(({ from, to }) => (
        <span key={from} class="spell" style={{ left: `${(100 * from) / 24}%`, width: `${(100 * (to - from)) / 24}%` }} />
      ))}
      <span class={`over-name ${place}`}>{t("over", { limit: text(show(limit.temperature_C, "degC", units.value, 0)) })}</span>
    </div>
  );
}

/** The name of a line takes at most so many hours of the band; it stands before the line, or after it where there is more room. */
const nameHours = 6;

function spellWords({ side }: ShownSide, limit: Limit, hour: readonly number[]): string {
  const spells = spellsOver(hour, side.steps.hottest_C, limit.temperature_C);
  const words = { side: sideName(side), limit: text(show(limit.temperature_C, "degC", units.value, 0)) };
  if (spells.length === 0) return t("strip.none", words);
  return spells.map(({ from, to }) => t("strip.over", { ...words, from: clock(from), to: clock(to) })).join(" ");
}

/** The hours under a strip or the ribbon. */
export function HourAxis({ every = 6 }: { every?: number }) {
  const hours = Array.from({ length: 24 / every + 1 }, (_, i) => i * every);
  return (
    <div class="hour-axis" aria-hidden="true">
      {hours.map((hour) => (
        <span key={hour} style={{ left: `${(100 * hour) / 24}%` }}>
          {hour}
        </span>
      ))}
    </div>
  );
}
