/** The whole decision in one table: what each option gives and asks, with ranges and sources, and the reader's weights. */

import { letter } from "../document.ts";
import { pending, weighing } from "../engine.ts";
import type { Weighed } from "../generated/result.ts";
import { weighHook } from "../hooks.ts";
import { sentenceText } from "../sentences.ts";
import { optionName } from "../shown.ts";
import { readOnly, scenario, units } from "../store.ts";
import { t } from "../text.ts";
import { show, showDifference, span, text, unitName } from "../units.ts";
import { Button } from "./button.tsx";
import { ChoiceField } from "./choice.tsx";
import { NumberField } from "./field.tsx";
import { Marker } from "./icons.tsx";
import { printDecision } from "./report.tsx";
import { CropPart } from "./weigh-crop.tsx";
import { FrostPart } from "./weigh-frost.tsx";
import { WeighOrder } from "./weigh-order.tsx";

interface Estimate {
  low: number;
  value: number;
  high: number;
}

/** One row of the table: what it is called in the shared catalogue, and what it shows of an option. */
export interface Row {
  key: "heat" | "light" | "frost" | "crop" | "work" | "water" | "colour";
  unit: string;
  of: (option: Weighed) => Estimate;
  /** The weight that the reader may give it. */
  weighed?: true;
  /** The picture starts at nothing; a temperature has no such start. */
  fromZero?: true;
}

const exactly = (value: number): Estimate => ({ low: value, value, high: value });

export const rows: Row[] = [
  { key: "heat", unit: "degC", of: (option) => option.heat_C, weighed: true },
  { key: "light", unit: "MJ/m2", of: (option) => option.light_MJm2, weighed: true, fromZero: true },
  { key: "frost", unit: "share", of: (option) => option.frost.killed, weighed: true, fromZero: true },
  { key: "crop", unit: "t/ha", of: (option) => option.crop.perHa_t, weighed: true, fromZero: true },
  { key: "work", unit: "h/ha", of: (option) => option.work.total_h, weighed: true, fromZero: true },
  { key: "water", unit: "share", of: (option) => exactly(option.water.shaded), fromZero: true },
  { key: "colour", unit: "h", of: (option) => exactly(option.colour_h), fromZero: true },
];

export function Weigh() {
  const now = weighing.value;
  if (!now) return null;
  return (
    <section class={`weigh ${pending.value ? "pending" : ""}`} aria-labelledby="weigh" data-testid="weigh">
      <h2 id="weigh">{t("weigh")}</h2>
      <div class="weigh-head">
        <p class="small">{t("weigh.intro")}</p>
        {!readOnly && <Button label={t("weigh.print")} onPress={() => void printDecision()} hook="weigh-print" />}
      </div>
      <WeighOrder />
      <div class="table-scroll" role="region" aria-label={t("weigh.table")} tabIndex={0}>
        <table class="weigh-table" role="table" style={{ "--options": now.options.length }}>
          <thead role="rowgroup">
            <tr role="row">
              <th scope="col" role="columnheader">
                <span class="small">{t("weigh.column")}</span>
              </th>
              {now.options.map((_, option) => (
                <th key={option} scope="col" role="columnheader">
                  <Marker option={option} /> {letter(option)} <span class="weigh-name">{optionName(scenario.value, option)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody role="rowgroup">
            {rows.map((row) => (
              <TableRow key={row.key} row={row} options={now.options} />
            ))}
          </tbody>
        </table>
      </div>
      <div class="weigh-parts">
        <FrostPart />
        <CropPart />
      </div>
    </section>
  );
}

/** What a row is called, what it holds, or where it is from. */
export function columnText(key: Row["key"], part: "" | ".says" | ".source"): string {
  return sentenceText(`weigh.${key}${part}`, weighing.value?.terms ?? {}, units.value);
}

/** Two lines for a row: its numbers, and under them over the whole width what they are and where from. */
function TableRow({ row, options }: { row: Row; options: Weighed[] }) {
  const title = columnText(row.key, "");
  return (
    <>
      <tr role="row" class="weigh-numbers">
        <th scope="row" role="rowheader">
          <span class="weigh-title">{title}</span>
          {row.weighed && <NumberField path={["weights", row.key]} unit="share" label={t("weigh.weight")} spoken={t("weigh.weight.of", { column: title })} hook={weighHook(row.key)} />}
        </th>
        <WeighCells row={row} options={options} hooks />
      </tr>
      <tr role="row" class="weigh-says">
        <td role="cell" colSpan={options.length + 1}>
          <div>
            <p class="small">{columnText(row.key, ".says")}</p>
            {row.key === "light" && <ChoiceField path={["weights", "lightWish"]} words="lightWish" />}
            <details class="weigh-source">
              <summary aria-label={t("weigh.source.of", { column: title })}>{t("weigh.source")}</summary>
              <p class="small">{columnText(row.key, ".source")}</p>
            </details>
          </div>
        </td>
      </tr>
    </>
  );
}

/** The numbers of a row, each over its picture on the scale that all options share. */
export function WeighCells({ row, options, hooks = false }: { row: Row; options: Weighed[]; hooks?: boolean }) {
  const estimates = options.map(row.of);
  const room = row.fromZero ? 0 : 1; // of a scale without a start, so that its ends can be seen
  const from = row.fromZero ? 0 : Math.min(...estimates.map(({ low }) => low)) - room;
  const to = Math.max(...estimates.map(({ high }) => high)) + room;
  return (
    <>
      {estimates.map((estimate, option) => (
        <td key={option} role="cell">
          <Figure estimate={estimate} unit={row.unit} from={from} to={to} bar={row.fromZero ?? false} hook={hooks ? weighHook(row.key, option) : undefined} />
          {row.key === "water" && <span class="small">{t("weigh.coefficient", { range: coefficient(options[option]) })}</span>}
          {row.key === "frost" && <span class="small">{frostWords(options[option])}</span>}
        </td>
      ))}
    </>
  );
}

/** Where the buds are, and how far their air is from the cold that begins to kill them. */
function frostWords(option: Weighed | undefined): string {
  if (!option) return "";
  const { buds_m, margin_K } = option.frost;
  const degrees = (kelvin: number) => showDifference(kelvin, "K", units.value);
  return t("weigh.buds", { height: text(show(buds_m, "m", units.value)), low: degrees(margin_K.low).value, high: text(degrees(margin_K.high)) });
}

function coefficient(option: Weighed | undefined): string {
  if (!option) return "";
  const { low, high } = option.water.cropCoefficient;
  return span(low, high, "", units.value);
}

interface FigureProps {
  estimate: Estimate;
  unit: string;
  from: number;
  to: number;
  /** A bar from the start of the scale, or a dot on it. */
  bar: boolean;
  hook: string | undefined;
}

/** A number over its picture on the scale that all options share, with the reach of its range. */
function Figure({ estimate: { low, value, high }, unit, from, to, bar, hook }: FigureProps) {
  const at = (place: number) => (to > from ? Math.min(100, Math.max(0, (100 * (place - from)) / (to - from))) : 0);
  return (
    <>
      <span class="weigh-figure" data-testid={hook} data-value={String(value)} data-low={String(low)} data-high={String(high)}>
        {show(value, unit, units.value).value}
        <span class="unit">{unitName(unit, units.value)}</span>
      </span>
      <span class="weigh-bar" aria-hidden="true">
        {bar ? <span class="weigh-value" style={{ width: `${at(value)}%` }} /> : <span class="weigh-dot" style={{ left: `${at(value)}%` }} />}
        {high > low && <span class="weigh-reach" style={{ left: `${at(low)}%`, width: `${at(high) - at(low)}%` }} />}
      </span>
      <span class="weigh-range">{high > low ? span(low, high, unit, units.value) : "\u00a0"}</span>
    </>
  );
}
