/** What the canopies measure, as growers take it: one table, an option in each column, behind a summary. */

import { useSignal } from "@preact/signals";
import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import type { Canopy } from "../generated/result.ts";
import { optionHook } from "../hooks.ts";
import { optionName } from "../shown.ts";
import { t, type TextKey } from "../text.ts";
import { Marker } from "./icons.tsx";
import { Quantity } from "./quantity.tsx";

interface Measure {
  label: TextKey;
  unit: string;
  digits?: number;
  hook: string;
  /** Undefined where there is nothing to measure. */
  read: (canopy: Canopy) => number | undefined;
}

/** Areas of a hectare to what their measurement is worth. */
const hundreds = (area: number) => Math.round(area / 100) * 100;

const measures: Measure[] = [
  { label: "canopy.fruitHeight", unit: "m", hook: "fruitHeight", read: (c) => c.fruitHeight_m },
  { label: "canopy.top", unit: "m", hook: "top", read: (c) => c.top_m },
  { label: "canopy.width", unit: "m", hook: "width", read: (c) => c.width_m },
  { label: "canopy.leafArea", unit: "m2/m", hook: "leafArea", read: (c) => c.leafArea_m2_per_m },
  { label: "canopy.leafAreaHa", unit: "m2/ha", hook: "leafAreaHa", read: (c) => hundreds(c.leafArea_m2_per_ha) },
  { label: "canopy.exposed", unit: "m2/ha", hook: "exposed", read: (c) => hundreds(c.exposedLeaf_m2_per_ha) },
  { label: "canopy.layers", unit: "", digits: 1, hook: "layers", read: (c) => c.leafLayers },
  { label: "canopy.gaps", unit: "share", hook: "gaps", read: (c) => c.gaps },
  { label: "canopy.exterior", unit: "share", hook: "exterior", read: (c) => c.exteriorBunches },
  { label: "canopy.heightToGap", unit: "", digits: 2, hook: "heightToGap", read: (c) => c.heightToGap || undefined },
  { label: "canopy.intercepted", unit: "share", hook: "intercepted", read: (c) => c.intercepted },
  { label: "canopy.leafToFruit", unit: "m2/kg", digits: 2, hook: "leafToFruit", read: (c) => c.leafToFruit_m2_per_kg || undefined },
];

export function CanopyTable() {
  const open = useSignal(false);
  return (
    <details class="hours" data-testid="canopy" onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>{t("canopy")}</summary>
      {open.value && <Measures />}
    </details>
  );
}

function Measures() {
  const now = answer.value;
  if (!now) return null;
  return (
    <>
      <div class="table-scroll" role="region" aria-label={t("canopy")} tabIndex={0}>
        <table class="canopy">
          <thead>
            <tr>
              <th scope="col">{t("canopy.measure")}</th>
              {now.day.options.map((_, option) => (
                <th key={option} scope="col">
                  <Marker option={option} /> {letter(option)}
                  <span class="note">{optionName(now.document, option)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {measures.map(({ label, unit, digits, hook, read }) => (
              <tr key={hook}>
                <th scope="row">{t(label)}</th>
                {now.day.options.map(({ canopy }, option) => (
                  <td key={option}>
                    <Quantity value={read(canopy)} unit={unit} follows hook={optionHook(option, `canopy-${hook}`)} {...(digits === undefined ? {} : { digits })} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="small canopy-notes">{t("canopy.notes")}</p>
    </>
  );
}
