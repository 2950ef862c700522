/** The numbers of a row of the decision, each over its picture on the scale that all options share. */

import { effectiveText, letter } from "../document.ts";
import { ranges, weighing } from "../engine.ts";
import type { Estimate, Weighed } from "../generated/result.ts";
import { weighHook } from "../hooks.ts";
import { sentenceText } from "../sentences.ts";
import { optionName } from "../shown.ts";
import { scenario, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { formatNumber, inUnit, show, showDifference, span, text, unitName } from "../units.ts";
import { type Row, type Scale, scaleFor } from "../weighing.ts";
import { Marker } from "./icons.tsx";
import { killsText } from "./weigh-frost.tsx";

/** What a row is called, what it holds, or where it is from. */
export function columnText(key: Row["key"], part: "" | ".says" | ".source"): string {
  return sentenceText(`weigh.${key}${part}`, weighing.value?.terms ?? {}, units.value);
}

/** What a row holds, and which way its numbers count as better. */
export function rowSays(key: Row["key"]): string {
  const better = key === "light" ? `${tOr(`lightWish.${effectiveText(scenario.value, ["weights", "lightWish"])}`, "")}.` : t(`weigh.better.${key}`);
  return `${columnText(key, ".says")} ${better}`;
}

/** Where the numbers of a row are from: sources, and what is assumed. */
export function rowSource(key: Row["key"]): string {
  const night = weighing.value?.night;
  return key === "frost" && night ? `${columnText(key, ".source")} ${killsText(night)}` : columnText(key, ".source");
}

interface CellsProps {
  row: Row;
  options: Weighed[];
  /** On the page: with test marks, and the names of options for where the table is too narrow for columns. */
  onPage?: boolean;
}

export function WeighCells({ row, options, onPage = false }: CellsProps) {
  const estimates = options.map(row.of);
  const scale = scaleFor(estimates.flatMap(({ low, high }) => [inUnit(low, row.unit, units.value), inUnit(high, row.unit, units.value)]), row.fromZero ?? false);
  return (
    <>
      {estimates.map((estimate, option) => (
        <td key={option} role="cell">
          {onPage && <Who option={option} />}
          <Figure estimate={estimate} row={row} hook={onPage ? weighHook(row.key, option) : undefined} />
          <Picture estimate={estimate} row={row} scale={scale} />
          {row.key === "water" && <span class="small">{t("weigh.coefficient", { range: coefficient(options[option]) })}</span>}
          {row.key === "frost" && <span class="small">{frostWords(options[option])}</span>}
        </td>
      ))}
    </>
  );
}

/** Whose cell it is, where no column says so. */
function Who({ option }: { option: number }) {
  return (
    <span class="weigh-who" aria-hidden="true">
      <Marker option={option} /> {letter(option)} <span class="weigh-name">{optionName(scenario.value, option)}</span>
    </span>
  );
}

interface FigureProps {
  estimate: Estimate;
  row: Row;
  hook: string | undefined;
}

function Figure({ estimate: { low, value, high }, row, hook }: FigureProps) {
  return (
    <span class="weigh-number">
      <span class="weigh-figure" data-testid={hook} data-value={String(value)} data-low={String(low)} data-high={String(high)}>
        {show(value, row.unit, units.value).value}
        <span class="unit">{unitName(row.unit, units.value)}</span>
      </span>{" "}
      <span class="weigh-range">{rangeWords(low, high, row)}</span>
    </span>
  );
}

function rangeWords(low: number, high: number, { unit, drawn }: Row): string {
  if (high > low) return span(low, high, unit, units.value);
  return t(drawn && !ranges.value ? "weigh.range.coming" : "weigh.range.none");
}

/** A bar from the start of the scale, or a dot on it, with the reach of the range and the ends of the scale. */
function Picture({ estimate: { low, value, high }, row, scale }: { estimate: Estimate; row: Row; scale: Scale }) {
  const place = (number: number) => (100 * (inUnit(number, row.unit, units.value) - scale.from)) / (scale.to - scale.from);
  const end = (number: number) => text({ value: formatNumber(number, scale.digits), unit: unitName(row.unit, units.value) });
  return (
    <span class="weigh-picture" aria-hidden="true">
      <span class="weigh-bar">
        {row.fromZero ? <span class="weigh-value" style={{ width: `${place(value)}%` }} /> : <span class="weigh-dot" style={{ left: `${place(value)}%` }} />}
        {high > low && <span class="weigh-reach" style={{ left: `${place(low)}%`, width: `${place(high) - place(low)}%` }} />}
      </span>
      <span class="weigh-ends">
        <span>{row.fromZero ? "0" : end(scale.from)}</span>
        <span>{end(scale.to)}</span>
      </span>
    </span>
  );
}

/** Where the buds are, and how far their air is from the cold that kills a tenth of them. */
function frostWords(option: Weighed | undefined): string {
  if (!option) return "";
  const { buds_m, margin_K: margin } = option.frost;
  const size = (kelvin: number) => showDifference(Math.abs(kelvin), "K", units.value);
  const plain = (kelvin: number) => size(kelvin).value.replace("+", "");
  const whole = (kelvin: number) => text(size(kelvin)).replace("+", "");
  const height = text(show(buds_m, "m", units.value));
  if (margin.low >= 0) return t("weigh.buds.spare", { height, low: plain(margin.low), high: whole(margin.high) });
  if (margin.high <= 0) return t("weigh.buds.lack", { height, low: plain(margin.high), high: whole(margin.low) });
  return t("weigh.buds.either", { height, low: whole(margin.low), high: whole(margin.high) });
}

function coefficient(option: Weighed | undefined): string {
  if (!option) return "";
  const { low, high } = option.water.cropCoefficient;
  return span(low, high, "", units.value);
}
