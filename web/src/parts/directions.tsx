/** Which way the rows should run: heat on the worse side for every row azimuth, as charts, in words and as a table. */

import { useSignal } from "@preact/signals";
import { type Turned, turned, turnedOver, turning, turnRows } from "../directions.ts";
import { letter } from "../document.ts";
import type { HeatOver } from "../polar.ts";
import { sentenceText } from "../sentences.ts";
import { limits } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { show, text } from "../units.ts";
import { DirectionCurve, DirectionPolar } from "./direction-charts.tsx";
import { DirectionTable } from "./direction-table.tsx";
import { Marker } from "./icons.tsx";
import { SweepProgress } from "./sweep-state.tsx";

const numbers: Record<string, HeatOver> = { watch: "heatOverWatch_K_h", hot: "heatOverHot_K_h", burn: "heatOverBurn_K_h" };

export function Directions() {
  return (
    <details
      class="directions"
      data-testid="directions"
      onToggle={(event) => {
        if (!event.currentTarget.open) turnedOver.value = null;
        else turnedOver.value ??= "day";
      }}
    >
      <summary>{t("directions")}</summary>
      {turnedOver.value && <Body />}
    </details>
  );
}

function Body() {
  const limit = useSignal("hot");
  const known = turned.value;
  const fresh = turning.state.value.phase === "done" || turning.state.value.phase === "running";
  return (
    <div class="directions-body">
      <div class="directions-tools">
        <label>
          {t("directions.over")}{" "}
          <select
            class="select"
            value={turnedOver.value ?? "day"}
            onChange={(event) => {
              const over = event.currentTarget.value;
              turnedOver.value = over === "ripening" || over === "season" ? over : "day";
            }}
            data-testid="directions-over"
          >
            <option value="day">{t("directions.day")}</option>
            <option value="ripening">{t("directions.ripening")}</option>
            <option value="season">{t("directions.season")}</option>
          </select>
        </label>
        <label>
          {t("directions.limit")}{" "}
          <select class="select" value={limit.value} onChange={(event) => (limit.value = event.currentTarget.value)} data-testid="directions-limit">
            {limits.value.map(({ key, temperature_C }) => (
              <option key={key} value={key}>
                {text(show(temperature_C, "degC", units.value, 0))}
              </option>
            ))}
          </select>
        </label>
        <SweepProgress sweep={turning} hook="directions-state" run={turnRows} />
      </div>
      {known && <Known known={known} number={numbers[limit.value] ?? "heatOverHot_K_h"} fresh={fresh} />}
    </div>
  );
}

function Known({ known, number, fresh }: { known: Turned; number: HeatOver; fresh: boolean }) {
  return (
    <>
      {known.whole && (
        <div class={`directions-words ${fresh ? "" : "pending"}`} data-testid="directions-words">
          {known.whole.tradeOffs.map((sentence, option) => (
            <p key={option}>
              <span class="letter">
                <Marker option={option} />
                {letter(option)}
              </span>{" "}
              {sentenceText(sentence.code, { ...sentence.words, ...sentence.values }, units.value)}
            </p>
          ))}
          <p>{sentenceText(known.whole.yours.code, {}, units.value)}</p>
        </div>
      )}
      <div class={`directions-charts ${fresh ? "" : "pending"}`}>
        <DirectionPolar rows={known.rows} number={number} />
        <DirectionCurve rows={known.rows} number={number} />
      </div>
      {known.whole && (
        <p class="note">
          {known.whole.days === 1
            ? t("directions.one", { date: known.whole.from })
            : t("directions.many", { days: known.whole.days, from: known.whole.from, to: known.whole.to })}
        </p>
      )}
      <DirectionTable rows={known.rows} />
    </>
  );
}
