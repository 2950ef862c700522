/** The numbers behind the charts of row directions. */

import { useSignal } from "@preact/signals";
import { letter } from "../document.ts";
import type { Direction, DirectionSide } from "../polar.ts";
import { limits } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { show, text } from "../units.ts";
import { sharedWord } from "../words.ts";
import { Quantity } from "./quantity.tsx";

export function DirectionTable({ rows }: { rows: Direction[][] }) {
  const open = useSignal(false);
  return (
    <details class="direction-table" data-testid="directions-table" onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>{t("directions.table")}</summary>
      {open.value && rows.map((of, option) => <OptionDirections key={option} option={option} rows={of} />)}
    </details>
  );
}

function OptionDirections({ option, rows }: { option: number; rows: Direction[] }) {
  const caption = t("directions.table.caption", { letter: letter(option) });
  const [watch, hot, burn] = limits.value.map((limit) => t("directions.heat", { limit: text(show(limit.temperature_C, "degC", units.value, 0)) }));
  const heads = [t("directions.rows"), t("directions.side"), t("directions.lit"), t("directions.before"), t("directions.after"), watch, hot, burn, t("directions.risk"), t("directions.leaves")];
  return (
    <div class="table-scroll" role="region" aria-label={caption} tabIndex={0}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {heads.map((head, i) => (
              <th key={i} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{rows.map((row) => row.sides.map((side, i) => <Line key={`${row.azimuth_deg}-${i}`} row={row} side={side} first={i === 0} />))}</tbody>
      </table>
    </div>
  );
}

function Line({ row, side, first }: { row: Direction; side: DirectionSide; first: boolean }) {
  const cells: [number, string, number?][] = [
    [side.lit_h, "h"],
    [side.lightBefore_MJm2, "MJ/m2"],
    [side.lightAfter_MJm2, "MJ/m2"],
    [side.heatOverWatch_K_h, "K h"],
    [side.heatOverHot_K_h, "K h"],
    [side.heatOverBurn_K_h, "K h"],
    [side.atRisk, "share"],
    [row.interceptedShare, "share"],
  ];
  return (
    <tr>
      {first && (
        <th scope="rowgroup" rowSpan={2}>
          <Quantity value={row.azimuth_deg} unit="deg" digits={0} />
        </th>
      )}
      <td>{sharedWord(side.compass)}</td>
      {cells.map(([value, unit], i) => (
        <td key={i}>
          <Quantity value={value} unit={unit} />
        </td>
      ))}
    </tr>
  );
}
