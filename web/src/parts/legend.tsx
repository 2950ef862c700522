/** The temperature scale, the same in every picture and strip, with the limits as lines and words. */

import { brightest_Wm2, colourLine, lightColour, type Limit, onScale, temperatureColour, temperatureScale } from "../scales.ts";
import { limits } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { show, text } from "../units.ts";
import { way } from "../ways.ts";
import { useEffect, useRef } from "preact/hooks";

const steps = 64;
const marks_C = [20, 30, 40, 50];
const marks_F = [60, 80, 100, 120];

/** The colours of a scale, from its lowest value to its highest. */
function ScaleColours({ low, high, colour }: { low: number; high: number; colour: (value: number) => [number, number, number] }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const line = Array.from({ length: steps }, (_, i) => low + ((high - low) * i) / (steps - 1));
    canvas.current?.getContext("2d")?.putImageData(colourLine(line, colour), 0, 0);
  }, [low, high, colour]);
  return <canvas ref={canvas} class="legend-colour" width={steps} height={1} aria-hidden="true" />;
}

const TemperatureColours = () => <ScaleColours low={temperatureScale.min_C} high={temperatureScale.max_C} colour={temperatureColour} />;

/** Under each picture: what its colours say. */
export function FruitKey() {
  const now = way.value;
  if (now === "outlook") return <p class="fruit-key">{t("outlookKey")}</p>;
  const light = now === "light" || now === "slice";
  const end = (temperature_C: number) => text(show(temperature_C, "degC", units.value, 0));
  return (
    <p class="fruit-key">
      {t(now === "light" ? "lightKey" : now === "slice" ? "fieldKey" : "fruitKey")}{" "}
      <span class="fruit-scale">
        <span>{light ? "0" : end(temperatureScale.min_C)}</span>{" "}
        {light ? <ScaleColours low={0} high={brightest_Wm2} colour={lightColour} /> : <TemperatureColours />}{" "}
        <span>{light ? text(show(brightest_Wm2, "W/m2", units.value, 0)) : end(temperatureScale.max_C)}</span>
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
        <TemperatureColours />
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
