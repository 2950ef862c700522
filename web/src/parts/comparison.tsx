/** What the options come to beside each other, in one sentence each, announced at most once a second. */

import { effect, signal } from "@preact/signals";
import { letter } from "../document.ts";
import { answer, behind, engineState, pending, preview, progress } from "../engine.ts";
import { comparisonText } from "../sentences.ts";
import { compared } from "../shown.ts";
import { copyOption, edit, maxOptions, optionCount, units } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber } from "../units.ts";
import { throttled } from "../throttle.ts";
import { Button } from "./button.tsx";
import { Odds } from "./range.tsx";
import { PeopleCaution } from "./sureness.tsx";

const announceEvery_ms = 1000;

function sentences(): string[] {
  const day = answer.value?.day;
  if (!day) return [];
  if (day.options.length === 1) return [t("comparison.one")];
  const others = day.options.map((_, i) => i).filter((i) => i !== compared.value);
  return day.comparison.map((sentence, i) => comparisonText(sentence, others[i] ?? 0, compared.value, units.value));
}

/** What the live region says, one sentence a line; it follows the sentences at a calm pace. */
const announced = signal("");
const announce = throttled((text: string) => (announced.value = text), announceEvery_ms);
effect(() => announce(sentences().join("\n")));

export function Comparison() {
  return (
    <section class="comparison" aria-label={t("comparison")}>
      <div class="compared">
        <div class="sentences follows" aria-live="polite" data-testid="comparison">
          {announced.value.split("\n").map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
        <Odds />
        <PeopleCaution />
      </div>
      <div class="comparison-tools">
        <CalculationState />
        {optionCount.value > 1 && (
          <label class="compare-with">
            {t("option.compare")}{" "}
            <select class="select" value={compared.value} onChange={(event) => edit(["compare"], Number(event.currentTarget.value))} data-testid="compare">
              {Array.from({ length: optionCount.value }, (_, i) => (
                <option key={i} value={i}>
                  {letter(i)}
                </option>
              ))}
            </select>
          </label>
        )}
        {optionCount.value < maxOptions && <Button label={t("option.add")} onPress={() => copyOption(optionCount.value - 1)} hook="add-option" />}
      </div>
    </section>
  );
}

/** Whether the numbers are those of the set-up shown: in words, and as a line along the top of the window. */
export function CalculationState() {
  const phase = engineState.value.phase;
  const busy = behind.value && phase === "running";
  return (
    <>
      <p class="calculation" data-testid="calculation" data-phase={phase} data-pending={String(pending.value)} data-generation={answer.value?.generation ?? 0} data-preview={preview.value?.generation}>
        {busy ? t("computing", { percent: `${formatNumber(100 * progress.value, 0)}\u00a0%` }) : answer.value ? t("computed") : ""}
      </p>
      {busy && <div class="calculation-line" style={{ transform: `scaleX(${progress.value})` }} aria-hidden="true" />}
    </>
  );
}
