/** The whole decision in one table: what each option gives and asks, with ranges and sources, and the reader's weights. */

import { useEffect, useRef } from "preact/hooks";
import { letter } from "../document.ts";
import { weighing } from "../engine.ts";
import type { Weighed } from "../generated/result.ts";
import { weighHook } from "../hooks.ts";
import { optionName } from "../shown.ts";
import { readOnly, scenario } from "../store.ts";
import { t } from "../text.ts";
import { keepRowsWhole } from "../whole-rows.ts";
import { isWeighed, type Row, rows } from "../weighing.ts";
import { Button } from "./button.tsx";
import { ChoiceField } from "./choice.tsx";
import { NumberField } from "./field.tsx";
import { Marker } from "./icons.tsx";
import { printDecision } from "./report.tsx";
import { columnText, rowSays, rowSource, WeighCells } from "./weigh-cells.tsx";
import { CropPart } from "./weigh-crop.tsx";
import { FrostPart } from "./weigh-frost.tsx";
import { WeighOrder } from "./weigh-order.tsx";

/** The two lines of each row of the table. */
function linesOf(body: HTMLElement | null): Element[][] {
  return [...(body?.querySelectorAll(".weigh-numbers") ?? [])].map((line) => [line, line.nextElementSibling ?? line]);
}

export function Weigh() {
  const body = useRef<HTMLTableSectionElement>(null);
  useEffect(() => keepRowsWhole(() => linesOf(body.current)), []);
  const now = weighing.value;
  if (!now) return null;
  return (
    <section class="weigh follows" aria-labelledby="weigh" data-testid="weigh">
      <h2 id="weigh">{t("weigh")}</h2>
      <div class="weigh-head">
        <p class="small">{t("weigh.intro")}</p>
        {!readOnly && <Button label={t("weigh.print")} onPress={() => void printDecision()} hook="weigh-print" />}
      </div>
      <WeighOrder />
      <table class="weigh-table" role="table" aria-label={t("weigh.table")} style={{ "--options": now.options.length }}>
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
        <tbody role="rowgroup" ref={body}>
          {rows.map((row) => (
            <TableRow key={row.key} row={row} options={now.options} />
          ))}
        </tbody>
      </table>
      <p class="small" role="note">
        {t("weigh.hands")}
      </p>
      <div class="weigh-parts">
        <FrostPart />
        <CropPart />
      </div>
    </section>
  );
}

/** Two lines for a row: its numbers, and under them over the whole width what they are and where from. */
function TableRow({ row, options }: { row: Row; options: Weighed[] }) {
  const title = columnText(row.key, "");
  return (
    <>
      <tr role="row" class="weigh-numbers">
        <th scope="row" role="rowheader">
          <span class="weigh-title">{title}</span>
          {isWeighed(row) && <NumberField path={["weights", row.key]} unit="share" label={t("weigh.weight")} spoken={t("weigh.weight.of", { column: title })} hook={weighHook(row.key)} />}
        </th>
        <WeighCells row={row} options={options} onPage />
      </tr>
      <tr role="row" class="weigh-says">
        <td role="cell" colSpan={options.length + 1}>
          <div>
            <p class="small">{row.key === "light" ? columnText("light", ".says") : rowSays(row.key)}</p>
            {row.key === "light" && <ChoiceField path={["weights", "lightWish"]} words="lightWish" />}
            <details class="weigh-source">
              <summary aria-label={t("weigh.source.of", { column: title })}>{t("weigh.source")}</summary>
              <p class="small">{rowSource(row.key)}</p>
            </details>
          </div>
        </td>
      </tr>
    </>
  );
}
