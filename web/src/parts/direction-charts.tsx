/** The charts of row directions: a compass of heat on the worse side, and the same along a line. */

import { effectiveNumber, letter } from "../document.ts";
import { axisEnd, type Direction, type HeatOver, polar, worst } from "../polar.ts";
import { scenario, units } from "../store.ts";
import { t } from "../text.ts";
import { show, text } from "../units.ts";
import { Marker } from "./icons.tsx";

interface ChartProps {
  rows: Direction[][];
  number: HeatOver;
}

const points = (places: readonly [number, number][]) => places.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" ");

const own = (option: number) => effectiveNumber(scenario.value, ["options", option, "rows", "azimuth_deg"]);

const most = ({ rows, number }: ChartProps) => axisEnd(Math.max(0, ...rows.flat().map((row) => worst(row, number))));

const heat = (value: number) => text(show(value, "K h", units.value, value < 1 ? 1 : 0));

const radius = 100;

/** North is up; a row line has two ends, so each value stands at both. */
export function DirectionPolar(props: ChartProps) {
  const end = most(props);
  return (
    <figure class="direction-chart">
      <figcaption>{t("directions.polar")}</figcaption>
      <svg viewBox="-130 -124 260 248" role="img" aria-label={t("directions.polar")}>
        {[0.5, 1].map((share) => (
          <circle key={share} class="chart-grid" r={radius * share} />
        ))}
        {[0, 45, 90, 135].map((azimuth) => (
          <line key={azimuth} class="chart-grid" y1={-radius} y2={radius} transform={`rotate(${azimuth})`} />
        ))}
        {(["N", "E", "S", "W"] as const).map((point, i) => (
          <text key={point} class="chart-label" text-anchor="middle" x={114 * Math.sin((i * Math.PI) / 2)} y={4 - 114 * Math.cos((i * Math.PI) / 2)}>
            {t(`point.${point}`)}
          </text>
        ))}
        {props.rows.map((rows, option) => (
          <g key={option}>
            <polygon class={`chart-line chart-line-${option}`} points={points(polar(rows, props.number, radius, end))} />
            <line class={`chart-own chart-line-${option}`} y1={-radius} y2={radius} transform={`rotate(${own(option)})`} />
          </g>
        ))}
        <text class="chart-label" x="3" y={-radius + 12}>
          {heat(end)}
        </text>
        <text class="chart-label" x="3" y={-radius / 2 + 12}>
          {heat(end / 2)}
        </text>
      </svg>
    </figure>
  );
}

/** Row directions in letters, from north–south through east–west and back. */
function shortDirections(): string[] {
  const [n, e, s, w] = (["N", "E", "S", "W"] as const).map((point) => t(`point.${point}`));
  return [`${n}–${s}`, `${n}${e}–${s}${w}`, `${e}–${w}`, `${n}${w}–${s}${e}`, `${n}–${s}`];
}

const width = 360;
const height = 200;

/** The worse side along the azimuths, with a mark where each option's rows are planned. */
export function DirectionCurve(props: ChartProps) {
  const end = most(props);
  const place = (azimuth: number, value: number): [number, number] => [(width * azimuth) / 180, height * (1 - value / end)];
  return (
    <figure class="direction-chart">
      <figcaption>{t("directions.curve")}</figcaption>
      <svg viewBox={`-50 -14 ${width + 80} ${height + 44}`} role="img" aria-label={t("directions.curve")}>
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <line class="chart-grid" x2={width} y1={height * share} y2={height * share} />
            <text class="chart-label" text-anchor="end" x="-6" y={height * share + 4}>
              {heat(end * (1 - share))}
            </text>
          </g>
        ))}
        {[0, 45, 90, 135, 180].map((azimuth, i) => (
          <text key={azimuth} class="chart-label" text-anchor="middle" x={(width * azimuth) / 180} y={height + 20}>
            {shortDirections()[i]}
          </text>
        ))}
        {props.rows.map((rows, option) => {
          const line = rows.map((row) => place(row.azimuth_deg, worst(row, props.number)));
          const [first] = rows;
          if (first?.azimuth_deg === 0) line.push(place(180, worst(first, props.number))); // the same row from its other end
          const planned = rows.find((row) => row.azimuth_deg === own(option));
          const [x, y] = planned ? place(planned.azimuth_deg, worst(planned, props.number)) : [0, 0];
          return (
            <g key={option}>
              <polyline class={`chart-line chart-line-${option}`} points={points(line)} />
              {planned && (
                <svg x={x - 7} y={y - 7} width="14" height="14" class="chart-mark">
                  <title>{t("directions.planned", { letter: letter(option) })}</title>
                  <Marker option={option} />
                </svg>
              )}
            </g>
          );
        })}
      </svg>
      <ul class="chart-key">
        {props.rows.map((_, option) => (
          <li key={option}>
            <svg viewBox="0 0 28 10" width="28" height="10" aria-hidden="true">
              <line class={`chart-line chart-line-${option}`} x2="28" y1="5" y2="5" />
            </svg>{" "}
            {letter(option)} <Marker option={option} />
          </li>
        ))}
        <li class="note">{t("directions.key")}</li>
      </ul>
    </figure>
  );
}
