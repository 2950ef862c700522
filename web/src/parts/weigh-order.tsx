/** The options in the order of the weights, said whose and which they are; or that nothing is ranked without them. */

import { effectiveNumber, letter } from "../document.ts";
import { weighing } from "../engine.ts";
import { optionName } from "../shown.ts";
import { openedScenario, scenario } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber } from "../units.ts";
import { type Row, weightShares } from "../weighing.ts";
import { Marker } from "./icons.tsx";
import { columnText } from "./weigh-cells.tsx";

/** Whose weights they are, and what each is of their sum. */
export function weightsText(): string {
  const weight = (key: Row["key"]) => effectiveNumber(scenario.value, ["weights", key]);
  const cameWith = (key: Row["key"]) => effectiveNumber(openedScenario.value, ["weights", key]);
  const shares = weightShares(weight);
  const weights = shares.map(({ key, share }) => t("weigh.share", { row: columnText(key, "").toLowerCase(), share: formatNumber(100 * share, 0) })).join(", ");
  const own = JSON.stringify(shares) !== JSON.stringify(weightShares(cameWith));
  const says = t(own ? "weigh.order" : "weigh.order.came", { weights });
  return shares.length === 1 ? `${says} ${t("weigh.order.alone")}` : says;
}

export function WeighOrder() {
  const order = weighing.value?.order ?? [];
  if (!order.length) {
    return (
      <p class="weigh-order" data-testid="weigh-order">
        {t("weigh.unranked")}
      </p>
    );
  }
  return (
    <div class="weigh-order" role="group" aria-label={t("weigh.order.name")} data-testid="weigh-order">
      <p>
        <span class="weigh-whose">{weightsText()}</span> <span class="small">{t("weigh.order.says")}</span>
      </p>
      <ol>
        {order.map(({ option, score, decided }, place) => (
          <li key={option}>
            <Marker option={option} /> <strong>{letter(option)}</strong> {optionName(scenario.value, option)}
            <span class="small">
              {formatNumber(score.value, 2)}
              {score.high - score.low >= 0.005 && ` ${t("weigh.score", { low: formatNumber(score.low, 2), high: formatNumber(score.high, 2) })}`}
              {place < order.length - 1 && !decided && ` ${t("weigh.undecided")}`}
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}
