/** The options in the order of the reader's weights, or that nothing is ranked without them. */

import { letter } from "../document.ts";
import { weighing } from "../engine.ts";
import { optionName } from "../shown.ts";
import { scenario } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber } from "../units.ts";
import { Marker } from "./icons.tsx";

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
    <div class="weigh-order" role="group" aria-label={t("weigh.order")} data-testid="weigh-order">
      <p class="small">{t("weigh.order.says")}</p>
      <ol>
        {order.map(({ option, score, decided }, place) => (
          <li key={option}>
            <Marker option={option} /> <strong>{letter(option)}</strong> {optionName(scenario.value, option)}
            <span class="weigh-bar" aria-hidden="true">
              <span class="weigh-value" style={{ width: `${100 * score.value}%` }} />
              {score.high > score.low && <span class="weigh-reach" style={{ left: `${100 * score.low}%`, width: `${100 * (score.high - score.low)}%` }} />}
            </span>
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
