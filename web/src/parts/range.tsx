/** How far numbers may be off: a line on a scale that all options share, its ends in words, and what the draws say. */

import { letter } from "../document.ts";
import { answer, drawsWanted, ranges } from "../engine.ts";
import type { HourBands } from "../generated/result.ts";
import { optionHook } from "../hooks.ts";
import { type RoundScale, roundScale } from "../scales.ts";
import { sharedText } from "../sentences.ts";
import { compared, type DayNumber, drawnDifference, limits, type ShownSide, worseBand } from "../shown.ts";
import { optionCount, units } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber, inUnit, show, span, text, unitName } from "../units.ts";

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
      {band && <DayWhisker low={band.low} high={band.high} value={value} unit={unit} scale={sharedScale(number, unit)} />}
      {band && <span title={t("range.title", { span: span(band.low, band.high, unit, units.value) })}>{span(band.low, band.high, unit, units.value)}</span>}
    </dd>
  );
}

/** One scale for the ranges of all options, in shown units: hours from zero, temperatures with the limit of burning on it. */
function sharedScale(number: DayNumber, unit: string): RoundScale {
  const bands = Array.from({ length: optionCount.value }, (_, option) => worseBand(option, number)).filter((band) => band !== undefined);
  const held = [...bands.flatMap(({ low, high }) => [low, high]), unit === "h" ? 0 : limits.value[2].temperature_C];
  return roundScale(held.map((value) => inUnit(value, unit, units.value)));
}

interface WhiskerProps {
  low: number;
  high: number;
  value: number;
  unit: string;
  scale: RoundScale;
}

/** The range of a number of the day, in shown units. */
function DayWhisker({ low, high, value, unit, scale }: WhiskerProps) {
  const shown = (stored: number) => inUnit(stored, unit, units.value);
  const burn = limits.value[2].temperature_C;
  const limit = unit === "h" ? undefined : { at: shown(burn), name: `${t("limit.burn")} ${show(burn, unit, units.value, 0).value}` };
  return <Whisker low={shown(low)} high={shown(high)} value={shown(value)} unit={unitName(unit, units.value)} scale={scale} limit={limit} />;
}

/** A range as a bar with the value as a line across it, over a scale with ticks and its ends in figures. */
export function Whisker({ low, high, value, unit, scale: { from, to, step }, limit }: WhiskerProps & { limit?: { at: number; name: string } | undefined }) {
  const at = (place: number) => (100 * (place - from)) / (to - from);
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  return (
    <div class="whisker" aria-hidden="true">
      <span class="whisker-ticks" style={{ backgroundSize: `${at(from + step)}% 100%` }} />
      {limit && <span class="whisker-limit" style={{ left: `${at(limit.at)}%` }} />}
      {limit && (
        <span class="whisker-limit-name" style={{ left: `${at(limit.at)}%` }}>
          {limit.name}
        </span>
      )}
      <span class="whisker-reach" style={{ left: `${at(low)}%`, width: `${at(high) - at(low)}%` }} />
      <span class="whisker-value" style={{ left: `${at(value)}%` }} />
      <div class="whisker-ends">
        <span>{formatNumber(from, digits)}</span>
        <span>{text({ value: formatNumber(to, digits), unit })}</span>
      </div>
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
      {most && ` ${t("odds.most", { input: sharedText(`input.${most}`) })}`}
      {drawn &&
        Array.from({ length: optionCount.value }, (_, option) => {
          const hottest = drawnDifference(option)?.hottest_K;
          if (!hottest || hottest.worse + hottest.better === 0) return ""; // nothing drawn, or a copy
          const words = { letter: letter(option), base: letter(compared.value), share: percent(Math.max(hottest.worse, hottest.better)) };
          return ` ${t(hottest.worse > hottest.better ? "odds.hotter" : "odds.cooler", words)}`;
        })}
    </p>
  );
}
