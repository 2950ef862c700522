/** The spring night: the air by height with the buds of every option in it, and what the reader says of the night. */

import { effectiveText, letter } from "../document.ts";
import { weighing } from "../engine.ts";
import type { Night } from "../generated/result.ts";
import { sharedText, verdictText } from "../sentences.ts";
import { scenario, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { show, showDifference, text } from "../units.ts";
import { ChoiceField } from "./choice.tsx";
import { NumberField } from "./field.tsx";
import { Group } from "./group.tsx";
import { NightChart } from "./night-chart.tsx";

/** The temperatures that kill buds, and where they are from. */
export function killsText(night: Night): string {
  const at = (celsius: number) => text(show(celsius, "degC", units.value));
  return `${t("night.kills", { tenth: at(night.kill10_C), half: at(night.kill50_C), most: at(night.kill90_C) })} ${sharedText(night.killSource)}`;
}

/** The night in one sentence. */
export function nightText({ lowest_C, screen_m, wind_ms, inversion_K }: Night): string {
  return t("night.words", {
    air: text(show(lowest_C, "degC", units.value)),
    height: text(show(screen_m, "m", units.value, 1)),
    wind: text(show(wind_ms, "m/s", units.value)),
    low: showDifference(inversion_K.low, "K", units.value).value.replace("+", ""),
    high: text(showDifference(inversion_K.high, "K", units.value)).replace("+", ""),
  });
}

export function FrostPart() {
  const now = weighing.value;
  if (!now) return null;
  const typed = effectiveText(scenario.value, ["frost", "lowest"]) !== "weather";
  const { night } = now;
  const at = (celsius: number) => text(show(celsius, "degC", units.value));
  return (
    <section class="weigh-part" aria-labelledby="night" data-testid="night">
      <h3 id="night">{t("night")}</h3>
      <p role="note">{t("caution.frost")}</p>
      <NightChart />
      <ul class="weigh-sentences">
        {now.options.map(({ frost }, option) => (
          <li key={option}>
            <strong>{letter(option)}</strong> {verdictText(frost.verdict, units.value)}
          </li>
        ))}
      </ul>
      <p class="small">
        {killsText(night)} {t("night.floor", { floor: tOr(`floor.${effectiveText(scenario.value, ["site", "floor"])}`, "").toLowerCase() })}
      </p>
      <details>
        <summary>{t("night.edit")}</summary>
        <Group title="night.fields">
          <ChoiceField path={["frost", "lowest"]} words="lowest" />
          {typed ? (
            <>
              <NumberField path={["frost", "airMin_C"]} label={t("night.airMin")} />
              <NumberField path={["frost", "wind_ms"]} label={t("night.wind")} />
            </>
          ) : (
            <p class="small">{t("night.weather", { air: at(night.lowest_C), wind: text(show(night.wind_ms, "m/s", units.value)) })}</p>
          )}
          <NumberField path={["frost", "cloud"]} unit="share" />
          <NumberField path={["frost", "inversion_K"]} />
          <ChoiceField path={["frost", "stage"]} words="stage" />
          <ChoiceField path={["frost", "group"]} words="buds" />
          <NumberField path={["frost", "halfKilled_C"]} />
        </Group>
      </details>
    </section>
  );
}
