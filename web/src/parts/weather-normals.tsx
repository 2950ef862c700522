/** Monthly normals typed in: days of a season are made of them as of a weather file. */

import { signal } from "@preact/signals";
import { effectiveNumber } from "../document.ts";
import { normalsColumns, normalsText } from "../normals.ts";
import { scenario, units } from "../store.ts";
import { t } from "../text.ts";
import { monthName, unitName } from "../units.ts";
import { openWeatherFile } from "../weather-file.ts";
import { Button } from "./button.tsx";

/** What is typed, as it is typed, by month. */
const typed = signal<string[][]>(Array.from({ length: 12 }, () => normalsColumns.map(() => "")));

/** Its table is made only while it is open: it would be made anew with every change. */
const open = signal(false);

export function NormalsForm() {
  return (
    <details class="normals" data-testid="normals" onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>{t("normals.title")}</summary>
      {open.value && <Months />}
    </details>
  );
}

function Months() {
  return (
    <>
      <p class="small">{t("normals.intro")}</p>
      <div class="normals-months">
        <table>
          <thead>
            <tr>
              <th scope="col">{t("day.month")}</th>
              {normalsColumns.map(({ key, unit }) => (
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
                {normalsColumns.map(({ key }, k) => (
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
    </>
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
