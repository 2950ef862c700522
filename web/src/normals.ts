/** Monthly normals as they are typed, in the units of the page, and as the text of a file that the engine reads. */

import { fromBox, type UnitSystem } from "./units.ts";

/** The columns of such a file, with the units of what stands in them. */
export const normalsColumns = [
  { key: "airMax_C", unit: "degC" },
  { key: "airMin_C", unit: "degC" },
  { key: "dewPoint_C", unit: "degC" },
  { key: "light_MJm2", unit: "MJ/m2" },
  { key: "wind_ms", unit: "m/s" },
] as const;

/** The months of a year, from January; one without any number is left out. What is no number stays, for its fault to be told. */
export function normalsText(months: readonly (readonly string[])[], system: UnitSystem): string {
  const lines = months.flatMap((fields, i) => {
    const numbers = normalsColumns.map(({ unit }, k) => metric(fields[k]?.trim() ?? "", unit, system));
    return numbers.some((number) => number) ? [[i + 1, ...numbers].join(",")] : [];
  });
  return `${[["month", ...normalsColumns.map(({ key }) => key)].join(","), ...lines].join("\n")}\n`;
}

/** A typed number, with a point or a comma, in the unit of the file. */
function metric(typed: string, unit: string, system: UnitSystem): string {
  const number = Number(typed.replace(",", "."));
  return typed === "" || !Number.isFinite(number) ? typed.replaceAll(",", " ") : String(fromBox(number, unit, system));
}
