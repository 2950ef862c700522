/** How far numbers may be off: a line on a scale that all options share, its ends in words, and what the draws say. */

import { letter } from "../document.ts";
import { answer, drawsWanted, ranges } from "../engine.ts";
import type { HourBands } from "../generated/result.ts";
import { optionHook } from "../hooks.ts";
import { compared, type DayNumber, drawnDifference, type ShownSide, worseBand } from "../shown.ts";
import { optionCount, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { formatNumber, show, span, text } from "../units.ts";

interface DayRangeProps {
  option: number;
  number: DayNumber;
  unit: string;
  value: number;
  hook: string;
}

/** The range of a number of the day; its place is kept until it has been drawn. */
export function DayRange({ option, number, unit, value, hook }: DayRangeProps) {
  const band = worseBand(option, number);
  const growing = (ranges.value?.draws ?? 0) < drawsWanted;
  return (
    <dd class={`range ${growing ? "pending" : ""}`} data-testid={optionHook(option, hook)} data-low={band?.low} data-high={band?.high}>
      {band && <Whisker low={band.low} high={band.high} value={value} scale={sharedScale(number)} />}
      {band && <span title={t("range.title", { span: span(band.low, band.high, unit, units.value) })}>{span(band.low, band.high, unit, units.value)}</span>}
    </dd>
  );
}

/** The least and the largest end of the ranges of a number over all options. */
function sharedScale(number: DayNumber): { from: number; to: number } {
  const bands = Array.from({ length: optionCount.value }, (_, option) => worseBand(option, number)).filter((band) => band !== undefined);
  return { from: Math.min(...bands.map((band) => band.low)), to: Math.max(...bands.map((band) => band.high)) };
}

interface WhiskerProps {
  low: number;
  high: number;
  value: number;
  scale: { from: number; to: number };
}

function Whisker({ low, high, value, scale: { from, to } }: WhiskerProps) {
  const at = (place: number) => (to > from ? (100 * (place - from)) / (to - from) : 0);
  return (
    <div class="whisker" aria-hidden="true">
      <span class="whisker-reach" style={{ left: `${at(low)}%`, width: `${at(high) - at(low)}%` }} />
      <span class="whisker-value" style={{ left: `${at(value)}%` }} />
    </div>
  );
}

interface HourRangeProps {
  option: number;
  place: ShownSide["place"];
  hour: number;
  number: "litShare" | "mean_C" | "hottest_C";
  unit: string;
}

/** The range of a number at a whole hour of daylight. */
export function HourRange({ option, place, hour, number, unit }: HourRangeProps) {
  const hours: HourBands[] = ranges.value?.options[option]?.hours[place === "left" ? 0 : 1] ?? [];
  const reach = hours.find((bands) => bands.hour_h === hour)?.[number];
  return reach ? <span class="hour-range note">{span(reach.low, reach.high, unit, units.value)}</span> : null;
}

/** What the draws say beside the ranges: what matters most, and how often an option is worse than the compared one. */
export function Odds() {
  const drawn = ranges.value;
  if (!answer.value) return null;
  const percent = (share: number) => text(show(share, "share", units.value));
  const most = drawn && worseBand(compared.value, "hottest_C")?.most;
  return (
    <p class={`odds small ${drawn && drawn.draws >= drawsWanted ? "" : "pending"}`} data-testid="odds" data-draws={drawn?.draws ?? 0}>
      {drawn ? t("odds", { draws: formatNumber(drawn.draws, 0) }) : t("odds.pending")}
      {most && ` ${t("odds.most", { input: tOr(`input.${most}`, most) })}`}
      {drawn &&
        Array.from({ length: optionCount.value }, (_, option) => {
          const hottest = drawnDifference(option)?.hottest_K;
          if (!hottest) return "";
          const words = { letter: letter(option), base: letter(compared.value), share: percent(Math.max(hottest.worse, hottest.better)) };
          return ` ${t(hottest.worse > hottest.better ? "odds.hotter" : "odds.cooler", words)}`;
        })}
    </p>
  );
}
