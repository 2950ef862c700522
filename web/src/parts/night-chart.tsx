/** The air of the night by height, between the weakest and the strongest published inversion, with the buds in it. */

import { letter } from "../document.ts";
import { weighing } from "../engine.ts";
import type { Night } from "../generated/result.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { show, text, unitName } from "../units.ts";
import { Marker } from "./icons.tsx";

/** Heights of the lines and of the table behind the picture [m]. */
const lines_m = [0.5, 1, 1.5, 2, 2.5];
const table_m = [0.3, 0.5, 1, 1.5, 2, 2.5, 3];

interface Axes {
  /** Where a temperature lies from the left, and a height from the top, in hundredths. */
  x: (celsius: number) => number;
  y: (metres: number) => number;
  ticks_C: number[];
}

function axes(night: Night): Axes {
  const every = [...night.air_C, ...night.weak_C, ...night.strong_C, night.kill10_C, night.kill90_C, night.lowest_C];
  const [from, to] = [Math.floor(Math.min(...every)), Math.ceil(Math.max(...every))];
  const top = night.height_m.at(-1) ?? 1;
  const step = to - from > 8 ? 2 : 1;
  const ticks_C = Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
  return { x: (celsius) => (100 * (celsius - from)) / (to - from), y: (metres) => 100 * (1 - metres / top), ticks_C };
}

export function NightChart() {
  const now = weighing.value;
  if (!now) return null;
  const { night, options } = now;
  const { x, y, ticks_C } = axes(night);
  const at = (celsius: number, digits?: number) => text(show(celsius, "degC", units.value, digits));
  const point = (course: number[]) => (i: number) => `${x(course[i] as number)} ${y(night.height_m[i] as number)}`;
  const order = night.height_m.map((_, i) => i);
  const course = (values: number[]) => `M${order.map(point(values)).join("L")}`;
  const reach = `M${order.map(point(night.weak_C)).join("L")}L${[...order].reverse().map(point(night.strong_C)).join("L")}Z`;
  const kills = [
    { key: "10", celsius: night.kill10_C },
    { key: "50", celsius: night.kill50_C },
    { key: "90", celsius: night.kill90_C },
  ] as const;
  return (
    <figure class="night">
      <figcaption class="small">{t("night.chart", { unit: unitName("degC", units.value) })}</figcaption>
      <div class="night-plot" aria-hidden="true">
        <svg viewBox="0 0 100 100" preserveAspectRatio="none">
          {lines_m.map((metres) => (
            <path key={metres} class="night-line" d={`M0 ${y(metres)}H100`} />
          ))}
          <path class="night-reach" d={reach} />
          <path class="night-windy" d={`M${x(night.lowest_C)} 0V100`} />
          {kills.map(({ key, celsius }) => (
            <path key={key} class={`night-kill night-kill-${key}`} d={`M${x(celsius)} 0V100`} />
          ))}
          <path class="night-course" d={course(night.air_C)} />
        </svg>
        {lines_m.map((metres) => (
          <span key={metres} class="night-height" style={{ top: `${y(metres)}%` }}>
            {text(show(metres, "m", units.value, 1))}
          </span>
        ))}
        {kills.map(({ key, celsius }) => (
          <span key={key} class="night-mark" style={{ left: `${x(celsius)}%` }}>
            {t("night.kill", { share: key })}
          </span>
        ))}
        {options.map(({ frost }, option) => (
          <span key={option} class="night-buds" style={{ left: `${x(frost.air_C.value)}%`, top: `${y(frost.buds_m)}%` }}>
            <Marker option={option} />
            <span class={`night-letter ${option % 2 ? "beyond" : ""}`}>{letter(option)}</span>
          </span>
        ))}
      </div>
      <div class="night-axis" aria-hidden="true">
        {ticks_C.map((celsius) => (
          <span key={celsius} style={{ left: `${x(celsius)}%` }}>
            {show(celsius, "degC", units.value, 0).value}
          </span>
        ))}
      </div>
      <Key options={options.length} />
      <details>
        <summary>{t("night.table")}</summary>
        <div class="table-scroll" role="region" aria-label={t("night.table")} tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">{t("night.height")}</th>
                <th scope="col">{t("night.air")}</th>
                <th scope="col">{t("night.weak")}</th>
                <th scope="col">{t("night.strong")}</th>
              </tr>
            </thead>
            <tbody>
              {table_m.map((metres) => {
                const i = night.height_m.findIndex((height) => Math.abs(height - metres) < 1e-6);
                return (
                  <tr key={metres}>
                    <th scope="row">{text(show(metres, "m", units.value, 1))}</th>
                    {[night.air_C, night.weak_C, night.strong_C].map((values, column) => (
                      <td key={column}>{at(values[i] ?? Number.NaN)}</td>
                    ))}
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      </details>
    </figure>
  );
}

/** What the lines of the chart are, each beside a piece of it. */
function Key({ options }: { options: number }) {
  const line = (kind: string) => (
    <svg class="night-sample" viewBox="0 0 32 12" aria-hidden="true">
      {kind === "reach" ? <rect class="night-reach" width="32" height="12" /> : <path class={kind} d="M0 6H32" />}
    </svg>
  );
  return (
    <ul class="night-key small">
      <li>
        {line("night-course")} {t("night.key.described")}
      </li>
      <li>
        {line("reach")} {t("night.key.calm")}
      </li>
      <li>
        {line("night-windy")} {t("night.key.wind")}
      </li>
      <li>
        {line("night-kill night-kill-10")} {line("night-kill")} {line("night-kill night-kill-90")} {t("night.key.kills")}
      </li>
      <li>
        {Array.from({ length: options }, (_, option) => (
          <Marker key={option} option={option} />
        ))}{" "}
        {t("night.key.buds")}
      </li>
    </ul>
  );
}
