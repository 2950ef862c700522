/** Where an option lies at the edge of what the model knows: said at once, beside the numbers that it concerns. */

import { effective } from "../document.ts";
import { answer } from "../engine.ts";
import { optionHook } from "../hooks.ts";
import { isMeasured } from "../measured-day.ts";
import { optionResult } from "../shown.ts";
import { instant, units } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber, show, text } from "../units.ts";

// Where the model is least sure: assumptions of its authors, after what its parts are published for.
export const stillAir_ms = 0.5;
export const lowSun_deg = 5;
export const denseLayers = 3;
/** Beam below this share of the global light is a sky with clouds, in which measured means say least of a moment. */
const cloudyShare = 0.5;

export function Sureness({ option }: { option: number }) {
  const reasons = reasonsFor(option);
  if (!reasons.length) return null;
  return (
    <p class="small unsure" data-testid={optionHook(option, "unsure")}>
      {t("unsure", { reasons: reasons.join("; ") })}
    </p>
  );
}

function reasonsFor(option: number): string[] {
  const now = answer.value;
  const result = optionResult(option);
  if (!now || !result) return [];
  const i = instant.value;
  const { sun, air } = now.day;
  const reasons: string[] = [];
  const elevation = sun.elevation_deg[i] ?? Number.NaN;
  if (elevation > 0 && elevation < lowSun_deg) reasons.push(t("unsure.sun", { elevation: `${formatNumber(lowSun_deg, 0)}°` }));
  if ((air.wind_ms[i] ?? Number.NaN) < stillAir_ms) reasons.push(t("unsure.wind", { wind: text(show(stillAir_ms, "m/s", units.value)) }));
  const direct = (air.dni_Wm2[i] ?? 0) * Math.sin((elevation * Math.PI) / 180);
  if (elevation >= lowSun_deg && isMeasured(now.document) && direct < cloudyShare * (air.ghi_Wm2[i] ?? 0)) reasons.push(t("unsure.clouds"));
  if (result.canopy.leafLayers > denseLayers) reasons.push(t("unsure.layers", { layers: formatNumber(denseLayers, 0) }));
  if (Number(effective(now.document, ["options", option, "shade", "mistRate_mmh"])) > 0) reasons.push(t("unsure.wet"));
  return reasons;
}

/** Hot fruit means hot people: said under the comparison as long as any fruit passes the first limit. */
export function PeopleCaution() {
  const hot = answer.value?.day.options.some(({ sides }) => sides.some(({ summary }) => summary.overWatch_h > 0));
  return hot ? <p class="small" role="note" data-testid="comparison-notes">{t("caution.people.short")}</p> : null;
}
