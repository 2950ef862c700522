/** The temperature scale, the same in every picture and strip, with the limits as lines and words. */

import { colourLine, type Limit, onScale, temperatureScale } from "../scales.ts";
import { limits } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { show, text } from "../units.ts";
import { useEffect, useRef } from "preact/hooks";

const steps = 64;
const marks_C = [20, 30, 40, 50];
const marks_F = [60, 80, 100, 120];

/** The colours of the scale, from its coolest to its hottest. */
function ScaleColours() {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const { min_C, max_C } = temperatureScale;
    const line = Array.from({ length: steps }, (_, i) => min_C + ((max_C - min_C) * i) / (steps - 1));
    canvas.current?.getContext("2d")?.putImageData(colourLine(line), 0, 0);
  }, []);
  return <canvas ref={canvas} class="legend-colour" width={steps} height={1} aria-hidden="true" />;
}

/** Under each picture: what the colour of the fruit says. */
export function FruitKey() {
  const end = (temperature_C: number) => text(show(temperature_C, "degC", units.value, 0));
  return (
    <p class="fruit-key">
      {t("fruitKey")}{" "}
      <span class="fruit-scale">
        <span>{end(temperatureScale.min_C)}</span> <ScaleColours /> <span>{end(temperatureScale.max_C)}</span>
      </span>
    </p>
  );
}

export function Legend() {
  const marks = units.value === "us" ? marks_F.map((f) => (f - 32) / 1.8) : marks_C;
  return (
    <figure class="legend">
      <figcaption>{t("legend")}</figcaption>
      <div class="legend-scale">
        <ScaleColours />
        {limits.value.map(({ key, temperature_C }) => (
          <span key={key} class={`legend-limit limit-${key}`} style={{ left: `${100 * onScale(temperature_C)}%` }} aria-hidden="true" />
        ))}
        <div class="legend-marks" aria-hidden="true">
          {marks.map((mark) => (
            <span key={mark} style={{ left: `${100 * onScale(mark)}%` }}>
              {text(show(mark, "degC", units.value, 0))}
            </span>
          ))}
        </div>
      </div>
      <ul class="legend-limits" aria-label={t("legend.limits")}>
        {limits.value.map((limit) => (
          <li key={limit.key}>
            <span class={`sample over-${limit.key}`} aria-hidden="true">
              <span class="spell" />
            </span>
            {limitWords(limit)}
          </li>
        ))}
      </ul>
    </figure>
  );
}

function limitWords({ key, temperature_C }: Limit): string {
  return t("limit.line", { limit: text(show(temperature_C, "degC", units.value, 0)), name: t(`limit.${key}`) });
}
