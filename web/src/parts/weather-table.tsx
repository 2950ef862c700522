/** How a logger's table is to be read: guessed by the engine, confirmed or changed here before it is. */

import type { TableColumn, TableMapping, WeatherTable } from "../messages.ts";
import { sharedText } from "../sentences.ts";
import { t, type TextKey } from "../text.ts";
import { changeMapping, leaveTable, openTable, partTable, reading, readTable } from "../weather-file.ts";
import { Button } from "./button.tsx";

export function TableForm() {
  const now = openTable.value;
  if (!now) return null;
  const { table, mapping } = now;
  const windless = !mapping.columns.some(({ quantity }) => quantity === "wind");
  return (
    <section class="mapping" aria-labelledby="mapping-title" aria-busy={reading.value !== null} data-testid="mapping">
      <h3 id="mapping-title">{t("mapping.title", { name: table.name })}</h3>
      <p class="small">{t("mapping.intro")}</p>
      <ColumnTable table={table} mapping={mapping} />
      <div class="mapping-fields">
        <Choice field="clock" values={["standard", "daylight", "changing", "utc"]} mapping={mapping} />
        <NumberBox field="utcOffset_h" unit="h" step={0.25} mapping={mapping} />
        <Choice field="stamp" values={["start", "middle", "end"]} mapping={mapping} />
        <NumberBox field="step_min" unit="min" step={1} mapping={mapping} />
        <Choice field="dateOrder" values={["ymd", "dmy", "mdy"]} mapping={mapping} />
        {windless ? <NumberBox field="wind_ms" unit="m/s" step={0.1} mapping={mapping} /> : <NumberBox field="windHeight_m" unit="m" step={0.5} mapping={mapping} />}
      </div>
      <details>
        <summary>{t("mapping.text")}</summary>
        <div class="mapping-fields">
          <Choice field="separator" values={[",", ";", "\t", "|"]} mapping={mapping} choose={partTable} />
          <label class="day-select">
            <span class="field-label">{t("mapping.decimal")}</span>
            <select class="select" value={mapping.decimalComma ? "comma" : "point"} onChange={(event) => changeMapping({ decimalComma: event.currentTarget.value === "comma" })}>
              <option value="point">{t("mapping.decimal.point")}</option>
              <option value="comma">{t("mapping.decimal.comma")}</option>
            </select>
          </label>
          <Choice field="encoding" values={["utf-8", "utf-16le", "utf-16be", "windows-1252"]} mapping={mapping} />
          <NumberBox field="firstLine" unit="" step={1} mapping={mapping} />
        </div>
      </details>
      <div class="mapping-tools">
        <Button label={t("mapping.read")} onPress={readTable} hook="mapping-read" />
        <Button label={t("mapping.leave")} onPress={leaveTable} class="quiet" hook="mapping-leave" />
      </div>
    </section>
  );
}

/** Every column with its first values, what it holds and in what unit. */
function ColumnTable({ table, mapping }: { table: WeatherTable; mapping: TableMapping }) {
  return (
    <div class="mapping-columns">
      <table>
        <thead>
          <tr>
            <th scope="col">{t("mapping.column")}</th>
            <th scope="col">{t("mapping.holds")}</th>
          </tr>
        </thead>
        <tbody>
          {table.names.map((name, i) => (
            <tr key={i}>
              <th scope="row">
                <span class="mapping-name">{name || t("mapping.unnamed", { number: i + 1 })}</span>
                <span class="small">{table.rows.slice(0, 2).map((row) => row[i]).join(" · ")}</span>
              </th>
              <td>
                <ColumnChoice number={i + 1} name={name} table={table} mapping={mapping} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface ColumnChoiceProps {
  number: number;
  name: string;
  table: WeatherTable;
  mapping: TableMapping;
}

function ColumnChoice({ number, name, table, mapping }: ColumnChoiceProps) {
  const own = mapping.columns.find(({ column }) => column === number);
  const unitsOf = (quantity: string) => table.quantities.find((one) => one.name === quantity)?.units ?? [];
  const choices = unitsOf(own?.quantity ?? "");
  const called = name || t("mapping.unnamed", { number });
  const put = (next: TableColumn | null) =>
    changeMapping({ columns: [...mapping.columns.filter(({ column }) => column !== number), ...(next ? [next] : [])].sort((a, b) => a.column - b.column) });
  return (
    <>
      <select
        class="select"
        aria-label={t("mapping.holds.label", { name: called })}
        value={own?.quantity ?? ""}
        data-testid={`mapping-column-${number}`}
        onChange={(event) => {
          const quantity = event.currentTarget.value;
          const [unit] = unitsOf(quantity);
          put(quantity ? { column: number, name, quantity, ...(unit && { unit }) } : null);
        }}
      >
        <option value="">{t("mapping.nothing")}</option>
        {table.quantities.map((quantity) => (
          <option key={quantity.name} value={quantity.name}>
            {sharedText(`word.${quantity.name}`)}
          </option>
        ))}
      </select>
      {own && choices.length > 1 && (
        <select
          class="select"
          aria-label={t("mapping.unit.label", { name: called })}
          value={own.unit ?? choices[0] ?? ""}
          data-testid={`mapping-unit-${number}`}
          onChange={(event) => put({ ...own, unit: event.currentTarget.value })}
        >
          {choices.map((unit) => (
            <option key={unit} value={unit}>
              {unit}
            </option>
          ))}
        </select>
      )}
    </>
  );
}

type TextField = "clock" | "stamp" | "dateOrder" | "separator" | "encoding";

interface ChoiceProps {
  field: TextField;
  values: readonly string[];
  mapping: TableMapping;
  /** Instead of changing the field of the mapping alone. */
  choose?: (value: string) => void;
}

function Choice({ field, values, mapping, choose = (value) => changeMapping({ [field]: value }) }: ChoiceProps) {
  return (
    <label class="day-select">
      <span class="field-label">{t(`mapping.${field}`)}</span>
      <select class="select" value={mapping[field]} data-testid={`mapping-${field}`} onChange={(event) => choose(event.currentTarget.value)}>
        {values.map((value) => (
          <option key={value} value={value}>
            {t(`mapping.${field}.${value === "\t" ? "tab" : value}` as TextKey)}
          </option>
        ))}
      </select>
    </label>
  );
}

type NumberField = "utcOffset_h" | "step_min" | "wind_ms" | "windHeight_m" | "firstLine";

interface NumberBoxProps {
  field: NumberField;
  unit: string;
  step: number;
  mapping: TableMapping;
}

/** A number of the mapping, in the units of the file. */
function NumberBox({ field, unit, step, mapping }: NumberBoxProps) {
  return (
    <label class="day-select">
      <span class="field-label">{t(`mapping.${field}`)}</span>
      <span class="box">
        <input
          type="number"
          step={step}
          value={mapping[field]}
          data-testid={`mapping-${field}`}
          onChange={(event) => {
            const value = event.currentTarget.valueAsNumber;
            if (Number.isFinite(value)) changeMapping({ [field]: value });
          }}
        />
        <span class="unit">{unit}</span>
      </span>
    </label>
  );
}
