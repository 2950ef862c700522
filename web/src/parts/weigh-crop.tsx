/** The crop of every option: its count from nodes to tonnes, whether the vines can carry it, and what it may bring. */

import { letter } from "../document.ts";
import { weighing } from "../engine.ts";
import type { Weighed } from "../generated/result.ts";
import { verdictText } from "../sentences.ts";
import { optionName } from "../shown.ts";
import { scenario, units } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber, show, span, text } from "../units.ts";
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
  const whole = (value: number) => formatNumber(value, 0);
  const yields = (low: number, high: number) => span(low, high, "t/ha", units.value);
  const wood = crop.spurs > 0 ? t("crop.spurs", { count: whole(crop.spurs) }) : t("crop.canes", { count: whole(crop.canes) });
  return (
    <div class="weigh-option">
      <h4>
        <Marker option={index} /> {letter(index)} {optionName(scenario.value, index)}
      </h4>
      <p>
        {t("crop.count", {
          wood,
          nodes: whole(crop.nodesPerVine),
          shoots: whole(crop.shootsPerVine),
          bunches: whole(crop.bunchesPerVine),
          bunch: text(show(crop.bunch_g, "g", units.value)),
          berries: whole(crop.berriesPerBunch),
          vine: span(crop.perVine_kg.low, crop.perVine_kg.high, "kg", units.value),
          hectare: yields(crop.perHa_t.low, crop.perHa_t.high),
          vines: whole(crop.vinesPerHa),
        })}
      </p>
      <p>{verdictText(crop.verdict, units.value)}</p>
      <p>{verdictText(crop.balance, units.value)}</p>
      {crop.fourArms && (
        <p>
          {verdictText(crop.fourArms.verdict, units.value)}{" "}
          {t("crop.fourArms", {
            same: yields(crop.fourArms.sameNodes_t_per_ha.low, crop.fourArms.sameNodes_t_per_ha.high),
            twice: yields(crop.fourArms.twiceNodes_t_per_ha.low, crop.fourArms.twiceNodes_t_per_ha.high),
          })}
        </p>
      )}
      {crop.income && (
        <p>
          {t("crop.income", {
            low: whole(crop.income.perHa.low),
            high: whole(crop.income.perHa.high),
            even: text(show(crop.income.breakEven_t_per_ha, "t/ha", units.value)),
          })}
        </p>
      )}
    </div>
  );
}
