/** What the colours of pictures and strips say: scales with ticks, that of temperature with the limits as lines and words. */

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
const marks_Wm2 = [0, 500, 1000];

/** The colours of a scale, from its lowest value to its highest. */
function ScaleColours({ low, high, colour }: { low: number; high: number; colour: (value: number) => [number, number, number] }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const line = Array.from({ length: steps }, (_, i) => low + ((high - low) * i) / (steps - 1));
    canvas.current?.getContext("2d")?.putImageData(colourLine(line, colour), 0, 0);
  }, [low, high, colour]);
  return <canvas ref={canvas} class="legend-colour" width={steps} height={1} aria-hidden="true" />;
}

/** Ticks under a scale, each with its number. */
function ScaleMarks({ marks }: { marks: readonly { at: number; name: string }[] }) {
  return (
    <div class="legend-marks" aria-hidden="true">
      {marks.map(({ at, name }) => (
        <span key={name} style={{ left: `${100 * at}%` }}>
          {name}
        </span>
      ))}
    </div>
  );
}

/** Whether the fruit shows its temperature in the way of looking that is on. */
const showsHeat = () => way.value === "natural" || way.value === "heat";

/** Under each picture: what its colours say. */
export function FruitKey() {
  if (showsHeat()) return <TemperatureKey caption={t("fruitKey")} />;
  if (way.value === "outlook") return <p class="fruit-key">{t("outlookKey")}</p>;
  return (
    <figure class="legend">
      <figcaption>{t(way.value === "light" ? "lightKey" : "fieldKey")}</figcaption>
      <div class="legend-scale">
        <ScaleColours low={0} high={brightest_Wm2} colour={lightColour} />
        <ScaleMarks marks={marks_Wm2.map((mark) => ({ at: mark / brightest_Wm2, name: text(show(mark, "W/m2", units.value, 0)) }))} />
      </div>
    </figure>
  );
}

/** The temperature scale below the strips, where the pictures show something else. */
export function Legend() {
  return showsHeat() ? null : <TemperatureKey caption={t("legend")} />;
}

function TemperatureKey({ caption }: { caption: string }) {
  const marks = units.value === "us" ? marks_F.map((f) => (f - 32) / 1.8) : marks_C;
  return (
    <figure class="legend">
      <figcaption>{caption}</figcaption>
      <div class="legend-scale">
        <ScaleColours low={temperatureScale.min_C} high={temperatureScale.max_C} colour={temperatureColour} />
        {limits.value.map(({ key, temperature_C }) => (
          <span key={key} class={`legend-limit limit-${key}`} style={{ left: `${100 * onScale(temperature_C)}%` }} aria-hidden="true" />
        ))}
        <ScaleMarks marks={marks.map((mark) => ({ at: onScale(mark), name: text(show(mark, "degC", units.value, 0)) }))} />
      </div>
      <ul class="legend-limits" aria-label={t("legend.limits")}>
        {[...limits.value].reverse().map((limit) => (
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
