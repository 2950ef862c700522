/** Monthly normals typed in: days of a season are made of them as of a weather file. */

import { signal } from "@preact/signals";
import { scenario, units } from "../store.ts";
import { t } from "../text.ts";
import { effectiveNumber } from "../document.ts";
import { fromBox, monthName, unitName } from "../units.ts";
import { openWeatherFile } from "../weather-file.ts";
import { Button } from "./button.tsx";

const columns = [
  { key: "airMax_C", unit: "degC" },
  { key: "airMin_C", unit: "degC" },
  { key: "dewPoint_C", unit: "degC" },
  { key: "light_MJm2", unit: "MJ/m2" },
  { key: "wind_ms", unit: "m/s" },
] as const;

/** What is typed, as it is typed, by month. */
const typed = signal<string[][]>(Array.from({ length: 12 }, () => columns.map(() => "")));

/** The typed months as the text of a file of normals: months without any number are left out. */
export function normalsText(months: readonly (readonly string[])[], system: Parameters<typeof fromBox>[2]): string {
  const number = (field: string, unit: string) => (field.trim() === "" || !Number.isFinite(Number(field)) ? field.trim() : String(fromBox(Number(field), unit, system)));
  const lines = months.flatMap((fields, i) => (fields.some((field) => field.trim()) ? [[String(i + 1), ...fields.map((field, k) => number(field.replace(",", "."), columns[k]?.unit ?? ""))].join(",")] : []));
  return `${["month", ...columns.map(({ key }) => key)].join(",")}\n${lines.join("\n")}\n`;
}

export function NormalsForm() {
  return (
    <details class="normals" data-testid="normals">
      <summary>{t("normals.title")}</summary>
      <p class="small">{t("normals.intro")}</p>
      <div class="normals-months">
        <table>
          <thead>
            <tr>
              <th scope="col">{t("day.month")}</th>
              {columns.map(({ key, unit }) => (
                <th scope="col" key={key}>
                  {t(`normals.${key}`)}
                  <span class="small">{unitName(unit, units.value)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {seasonFirst().map((month) => (
              <tr key={month}>
                <th scope="row">{monthName(month + 1)}</th>
                {columns.map(({ key }, k) => (
                  <td key={key}>
                    <input
                      class="text"
                      inputMode="decimal"
                      aria-label={t("normals.box", { month: monthName(month + 1), what: t(`normals.${key}`) })}
                      value={typed.value[month]?.[k]}
                      data-testid={`normals-${month + 1}-${key}`}
                      onInput={(event) => type(month, k, event.currentTarget.value)}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div>
        <Button
          label={t("normals.make")}
          disabled={!typed.value.some((fields) => fields.some((field) => field.trim()))}
          onPress={() => openWeatherFile(new File([normalsText(typed.value, units.value)], t("normals.name")))}
          hook="normals-make"
        />
      </div>
    </details>
  );
}

function type(month: number, column: number, value: string): void {
  typed.value = typed.value.map((fields, m) => (m === month ? fields.map((field, k) => (k === column ? value : field)) : fields));
}

/** The months in the order of the growing season: from April, south of the equator from October. */
function seasonFirst(): number[] {
  const first = effectiveNumber(scenario.value, ["site", "latitude_deg"]) < 0 ? 9 : 3;
  return Array.from({ length: 12 }, (_, i) => (first + i) % 12);
}
