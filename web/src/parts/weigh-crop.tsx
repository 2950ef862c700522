/** The crop of every option: its count from nodes to tonnes, whether the vines can carry it, and what it may bring. */

import { letter } from "../document.ts";
import { weighing } from "../engine.ts";
import { fourArmed } from "../four-arms.ts";
import type { OptionCrop as Crop, Weighed } from "../generated/result.ts";
import { verdictText } from "../sentences.ts";
import { optionName } from "../shown.ts";
import { addOption, maxOptions, optionCount, readOnly, scenario, units } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber, show, span, text } from "../units.ts";
import { Button } from "./button.tsx";
import { NumberField } from "./field.tsx";
import { Group, Rows } from "./group.tsx";
import { Marker } from "./icons.tsx";

export function CropPart() {
  const now = weighing.value;
  if (!now) return null;
  return (
    <section class="weigh-part" aria-labelledby="crop" data-testid="crop">
      <h3 id="crop">{t("crop")}</h3>
      <p role="note">{t("caution.money")}</p>
      {now.options.map((option, i) => (
        <OptionCrop key={i} option={option} index={i} />
      ))}
      <details>
        <summary>{t("crop.edit")}</summary>
        <Group title="crop.fields.site">
          <Rows base={["crop"]} rows={[["prunings_kg_per_m"], ["firstNodes"], ["moreNodes"], ["spread", "share"], ["price_per_t"]]} />
        </Group>
        <Group title="crop.fields.cost">
          {now.options.map((_, i) => (
            <NumberField key={i} path={["options", i, "cost", "year_per_ha"]} label={t("crop.cost", { letter: letter(i) })} />
          ))}
        </Group>
        <Group title="crop.fields.work">
          <Rows base={["crop"]} rows={[["spurTime_s"], ["caneTime_s"], ["shootTime_s"], ["leafTime_s"]]} />
        </Group>
      </details>
      <p class="small" role="note">
        {t("caution.spread")}
      </p>
    </section>
  );
}

function OptionCrop({ option: { crop }, index }: { option: Weighed; index: number }) {
  return (
    <div class="weigh-option">
      <h4>
        <Marker option={index} /> {letter(index)} {optionName(scenario.value, index)}
      </h4>
      {cropSentences(crop).map((sentence, i) => (
        <p key={i}>{sentence}</p>
      ))}
      {crop.fourArms && !readOnly && optionCount.value < maxOptions && <FourArms index={index} />}
    </div>
  );
}

/** Puts the vine with four arms beside the others. */
function FourArms({ index }: { index: number }) {
  return (
    <div class="weigh-add" role="group" aria-label={t("crop.fourArms.add")}>
      <span class="small">{t("crop.fourArms.add")}</span>
      {(["same", "twice"] as const).map((nodes) => (
        <Button
          key={nodes}
          label={t(`crop.fourArms.${nodes}`)}
          onPress={() => addOption(fourArmed(scenario.value, index, nodes, t(`crop.fourArms.${nodes}`)), index)}
          hook={`four-arms-${nodes}-${letter(index)}`}
        />
      ))}
    </div>
  );
}

/** The crop of an option in words: its count, its vigour and balance, four arms, income. */
export function cropSentences(crop: Crop): string[] {
  const whole = (value: number) => formatNumber(value, 0);
  const yields = (low: number, high: number) => span(low, high, "t/ha", units.value);
  const sentences = [
    t("crop.count", {
      wood: crop.spurs > 0 ? t("crop.spurs", { count: whole(crop.spurs) }) : t("crop.canes", { count: whole(crop.canes) }),
      nodes: whole(crop.nodesPerVine),
      shoots: whole(crop.shootsPerVine),
      bunches: whole(crop.bunchesPerVine),
      bunch: text(show(crop.bunch_g, "g", units.value)),
      berries: whole(crop.berriesPerBunch),
      vine: span(crop.perVine_kg.low, crop.perVine_kg.high, "kg", units.value),
      hectare: yields(crop.perHa_t.low, crop.perHa_t.high),
      vines: whole(crop.vinesPerHa),
    }),
    verdictText(crop.verdict, units.value),
    t("crop.vigour", {
      shoots: text(show(crop.shootsPerVine / crop.canopy_m, "1/m", units.value)),
      low: formatNumber(crop.yieldToPrunings.low, 1),
      high: formatNumber(crop.yieldToPrunings.high, 1),
    }),
    verdictText(crop.balance, units.value),
  ];
  if (crop.fourArms) {
    const { verdict, sameNodes_t_per_ha: same, twiceNodes_t_per_ha: twice } = crop.fourArms;
    sentences.push(`${verdictText(verdict, units.value)} ${t("crop.fourArms", { same: yields(same.low, same.high), twice: yields(twice.low, twice.high) })}`);
  }
  if (crop.income) {
    const { perHa, breakEven_t_per_ha } = crop.income;
    sentences.push(t("crop.income", { low: whole(perHa.low), high: whole(perHa.high), even: text(show(breakEven_t_per_ha, "t/ha", units.value)) }));
  }
  return sentences;
}
