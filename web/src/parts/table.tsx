/** The hourly table behind the pictures: the same numbers for reading and for a screen reader. */

import { useSignal } from "@preact/signals";
import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import type { Day } from "../generated/result.ts";
import { optionName, sideName, sidesInOrder } from "../shown.ts";
import { step_min } from "../store.ts";
import { t } from "../text.ts";
import { clock } from "../units.ts";
import { Quantity } from "./quantity.tsx";
import { HourRange } from "./range.tsx";

const instantsPerHour = 60 / step_min;

export function HourTable() {
  const open = useSignal(false);
  const day = answer.value?.day;
  return (
    <details class="hours" data-testid="table" onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>{t("table")}</summary>
      <div class="hour-tables">{open.value && day && day.options.map((_, option) => <OptionTable key={option} day={day} option={option} />)}</div>
    </details>
  );
}

function OptionTable({ day, option }: { day: Day; option: number }) {
  const result = day.options[option];
  const document = answer.value?.document;
  if (!result || !document) return null;
  const sides = sidesInOrder(result);
  const caption = t("table.caption", { letter: letter(option), form: optionName(document, option) });
  return (
    <div class="table-scroll" role="region" aria-label={caption} tabIndex={0}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th rowSpan={2} scope="col">
              {t("table.hour")}
            </th>
            <th rowSpan={2} scope="col">
              {t("table.air")}
            </th>
            <th rowSpan={2} scope="col">
              {t("table.sun")}
            </th>
            {sides.map(({ side, place }) => (
              <th key={place} colSpan={3} scope="colgroup">
                {sideName(side)}
              </th>
            ))}
          </tr>
          <tr>
            {sides.map(({ place }) => [
              <th key={`${place}-lit`} scope="col">
                {t("lit")}
              </th>,
              <th key={`${place}-mean`} scope="col">
                {t("mean")}
              </th>,
              <th key={`${place}-hottest`} scope="col">
                {t("hottest")}
              </th>,
            ])}
          </tr>
        </thead>
        <tbody>
          {day.hour.map((hour, i) =>
            i % instantsPerHour ? null : (
              <tr key={i}>
                <th scope="row">{clock(hour)}</th>
                <td>
                  <Quantity value={day.air.temperature_C[i]} unit="degC" />
                </td>
                <td>
                  <Quantity value={day.sun.elevation_deg[i]} unit="deg" />
                </td>
                {sides.map(({ side, place }) => [
                  <td key={`${place}-lit`}>
                    <Quantity value={side.steps.litShare[i]} unit="share" />
                    <HourRange option={option} place={place} hour={hour} number="litShare" unit="share" />
                  </td>,
                  <td key={`${place}-mean`}>
                    <Quantity value={side.steps.mean_C[i]} unit="degC" />
                    <HourRange option={option} place={place} hour={hour} number="mean_C" unit="degC" />
                  </td>,
                  <td key={`${place}-hottest`}>
                    <Quantity value={side.steps.hottest_C[i]} unit="degC" />
                    <HourRange option={option} place={place} hour={hour} number="hottest_C" unit="degC" />
                  </td>,
                ])}
              </tr>
            ),
          )}
        </tbody>
      </table>
    </div>
  );
}
