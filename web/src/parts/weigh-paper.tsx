/** The whole decision for paper: one table, what it means for each option, the cautions, and where each number is from. */

import { effectiveText, letter } from "../document.ts";
import { answer, ranges, weighing } from "../engine.ts";
import { verdictText } from "../sentences.ts";
import { limits, optionName } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber, show, text } from "../units.ts";
import { rows } from "../weighing.ts";
import { PaperFoot, placeAndDay, sourceNote } from "./report-head.tsx";
import { cropSentences } from "./weigh-crop.tsx";
import { nightText } from "./weigh-frost.tsx";
import { columnText, rowSays, rowSource, WeighCells } from "./weigh-cells.tsx";
import { weightsText } from "./weigh-order.tsx";

export function DecisionPaper() {
  const now = weighing.value;
  const document = answer.value?.document;
  if (!now || !document) return null;
  const order = now.order.map(({ option, score, decided }, place) =>
    t("weigh.paper.place", { place: place + 1, letter: letter(option), name: optionName(document, option), score: formatNumber(score.value, 2) }) + (place < now.order.length - 1 && !decided ? ` (${t("weigh.paper.undecided")})` : ""),
  );
  return (
    <article class="report decision-paper">
      <header>
        <h1>{t("weigh.paper", { name: effectiveText(document, ["name"]) })}</h1>
        <p>{placeAndDay(document)}</p>
        <p>{nightText(now.night)}</p>
        <p class="report-note">{sourceNote(document)}</p>
      </header>
      <p class="report-lead">{order.length ? `${weightsText()} ${order.join("; ")}. ${t("weigh.order.says")}` : t("weigh.unranked")}</p>
      <table>
        <thead>
          <tr>
            <td />
            {now.options.map((_, option) => (
              <th key={option} scope="col">
                {letter(option)} {optionName(document, option)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <th scope="row">
                <strong>{columnText(row.key, "")}</strong> <span class="report-note">{rowSays(row.key)}</span>
              </th>
              <WeighCells row={row} options={now.options} />
            </tr>
          ))}
        </tbody>
      </table>
      {ranges.value && <p class="report-note">{t("weigh.paper.ranges", { draws: formatNumber(ranges.value.draws, 0) })}</p>}
      <section class="decision-options">
        {now.options.map((option, i) => (
          <div key={i}>
            <h2>
              {letter(i)} {optionName(document, i)}
            </h2>
            <p>
              {[verdictText(answer.value?.day.options[i]?.verdict ?? { code: "" }, units.value), verdictText(option.frost.verdict, units.value), ...cropSentences(option.crop)].join(" ")}
            </p>
          </div>
        ))}
      </section>
      <section class="report-small">
        <h2>{t("cautions")}</h2>
        <p>
          {t("caution.scope")} {t("weigh.hands")} {t("caution.frost")} {t("caution.money")} {t("caution.spread")} {t("caution.people")} {t("caution.leaves")} {t("caution.trellis")}
        </p>
        <h2>{t("weigh.paper.from")}</h2>
        {rows.map(({ key }) => (
          <p key={key}>
            <strong>{columnText(key, "")}.</strong> {rowSource(key)}
          </p>
        ))}
        <p>
          <strong>{t("report.assumptions")}.</strong>{" "}
          {limits.value.map(({ key, temperature_C }) => t("limit.line", { limit: text(show(temperature_C, "degC", units.value, 0)), name: t(`limit.${key}`) })).join("; ")}. {t("weigh.paper.assumed")}
        </p>
      </section>
      <PaperFoot />
    </article>
  );
}
