/** The charts of the day: each drawn for every option on one scale, with its names and its numbers as a table. */

import { effect, signal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type * as Drawing from "../charts/charts.ts";
import { askForFlows, type ChartKind, chartKinds, chartUnits, coursesOf, flowsOf, type NamedCourse } from "../day-courses.ts";
import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import { limits, optionName } from "../shown.ts";
import { lastInstant, playing, projected, scenario, setInstant, step_min, units } from "../store.ts";
import { t } from "../text.ts";
import { clock, formatNumber, inUnit, show, text, unitName } from "../units.ts";
import { sharedWord } from "../words.ts";
import { HourLine } from "./hour-line.tsx";
import { Marker } from "./icons.tsx";
import { Quantity } from "./quantity.tsx";

/** The script that draws, once it has come; null before, false where it cannot be loaded. */
const drawing = signal<typeof Drawing | null | false>(null);
const open = signal(false);

async function fetchDrawing(): Promise<void> {
  if (drawing.peek()) return;
  // The address is no literal, so that the bundler leaves the script on its own.
  const script: string = "./charts.js";
  try {
    drawing.value = (await import(script)) as typeof Drawing;
  } catch {
    drawing.value = false;
  }
}

// The flows of single berries are worked out only while somebody looks.
effect(() => {
  if (open.value && answer.value) askForFlows();
});

export function DayCharts() {
  const toggle = (isOpen: boolean) => {
    open.value = isOpen;
    if (isOpen) void fetchDrawing();
  };
  return (
    <details class="day-charts" data-testid="day-charts" onToggle={(event) => toggle(event.currentTarget.open)}>
      <summary>{t("charts")}</summary>
      {open.value && drawing.value === false && <p role="alert">{t("charts.failed")}</p>}
      {open.value && drawing.value && answer.value && chartKinds.map((kind) => <ChartRow key={kind} kind={kind} />)}
    </details>
  );
}

function ChartRow({ kind }: { kind: ChartKind }) {
  const unit = chartUnits[kind];
  const options = (answer.value?.day.options ?? []).map((_, option) => coursesOf(kind, option, letter(option)));
  const [low, high] = scaleOf(kind, options);
  return (
    <section class="day-chart-row" aria-labelledby={`chart-${kind}`} data-testid={`chart-${kind}`}>
      <h3 id={`chart-${kind}`}>
        {t(`charts.${kind}`)} <span class="unit">[{unitName(unit, units.value)}]</span>
      </h3>
      <p class="small">{t(`charts.${kind}.says`)}</p>
      <div class="day-chart-plots">
        {options.map((courses, option) => (
          <figure key={option} aria-label={t("charts.figure", { chart: t(`charts.${kind}`), letter: letter(option) })}>
            <figcaption>
              <Marker option={option} /> <strong>{letter(option)}</strong> {optionName(scenario.value, option)}
              {kind === "flows" && <FlowsOf option={option} />}
            </figcaption>
            <ul class="day-chart-key">
              {courses.map((course) => (
                <li key={course.name}>
                  <Sample course={course} /> {course.name}
                </li>
              ))}
            </ul>
            <PlotPlace kind={kind} courses={courses} low={low} high={high} />
          </figure>
        ))}
      </div>
      <ChartTable kind={kind} options={options} />
    </section>
  );
}

/** Whose flows are drawn. */
function FlowsOf({ option }: { option: number }) {
  const of = flowsOf(letter(option));
  return <span class="small"> {of ? t("charts.bunch", { side: sharedWord(of.side), bunch: of.bunch, bunches: of.bunches }) : t("charts.waiting")}</span>;
}

/** The ends of the scale that all options share, in shown units. */
function scaleOf(kind: ChartKind, options: readonly NamedCourse[][]): [number, number] {
  const at = (value: number) => inUnit(value, chartUnits[kind], units.value);
  if (kind === "lit") return [0, 100];
  const all = options.flat().flatMap(({ values }) => [...values]);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  if (!Number.isFinite(least)) return [0, 1];
  const room = kind === "temperature" ? 2 : (most - least) * 0.04;
  const floor = kind === "light" ? 0 : least - room;
  return [at(floor), at(Math.max(most, kind === "temperature" ? limits.value[2].temperature_C : most) + room)];
}

function Sample({ course }: { course: NamedCourse }) {
  return (
    <svg class="day-chart-sample" viewBox="0 0 40 8" width="40" height="8" aria-hidden="true">
      <line x1="0" x2="40" y1="4" y2="4" class={course.thin ? "thin" : ""} stroke={course.colour ?? "var(--ink)"} stroke-dasharray={course.dash || "none"} />
    </svg>
  );
}

interface PlotProps {
  kind: ChartKind;
  courses: readonly NamedCourse[];
  low: number;
  high: number;
}

/** A plot as wide as its place, with the line of the hour over it. A press or a drag on it chooses the hour. */
function PlotPlace({ kind, courses, low, high }: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useSignal(0);
  useEffect(() => {
    const element = place.current;
    if (!element) return undefined;
    const observer = new ResizeObserver(() => (width.value = element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const size_px = textSize();
  const margins = { left: 3.25 * size_px, right: 1.75 * size_px, top: size_px, bottom: 1.75 * size_px };
  const look = projected.value;
  useEffect(() => {
    const draw = drawing.value;
    if (!draw || !width.value) return;
    const svg = draw.draw({ ...chartOf(kind, courses, low, high, width.value < narrow * size_px), width: width.value, height: 15 * size_px, text: size_px, stroke: look ? 4 : 2, grid: look ? 3 : 1, margins });
    place.current?.replaceChildren(svg);
  }, [drawing.value, kind, courses, low, high, width.value, size_px, look]);
  return (
    <div class="day-chart-place">
      <div ref={place} aria-hidden="true" class="day-chart-plot" />
      <div class="day-chart-hours" style={{ left: `${margins.left}px`, right: `${margins.right}px`, top: `${margins.top}px`, bottom: `${margins.bottom}px` }} onPointerDown={takeHour} onPointerMove={(event) => event.buttons && takeHour(event)}>
        <HourLine />
      </div>
    </div>
  );
}

function takeHour(event: PointerEvent): void {
  const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
  playing.value = false;
  setInstant((lastInstant * (event.clientX - box.left)) / box.width);
}

/** The size of small text in the look that is on [px]. */
function textSize(): number {
  return Number.parseFloat(getComputedStyle(document.documentElement).fontSize) * (projected.value ? 1 : 0.8125);
}

/** In plots narrower than this many times the text size limits are named without their numbers. */
const narrow = 26;

function chartOf(kind: ChartKind, courses: readonly NamedCourse[], low: number, high: number, short: boolean) {
  const unit = chartUnits[kind];
  const at = (value: number) => inUnit(value, unit, units.value);
  const [watch, hot, burn] = limits.value;
  const named = (limit: typeof watch | typeof hot | typeof burn, to: number) => ({
    from: at(limit.temperature_C),
    to,
    name: short ? t(`limit.${limit.key}`) : t("limit.line", { limit: text(show(limit.temperature_C, "degC", units.value, 0)), name: t(`limit.${limit.key}`) }),
  });
  return {
    hour: answer.value?.day.hour ?? [],
    courses: courses.map((course) => ({ ...course, values: course.values.map(at) })),
    bands: kind === "temperature" ? [named(watch, at(hot.temperature_C)), named(hot, at(burn.temperature_C)), named(burn, high)] : [],
    low,
    high,
    value: (value: number) => formatNumber(value, 0),
    clock: (hour: number) => clock(hour),
  };
}

const instantsPerHour = 60 / step_min;

/** The same numbers, hour by hour. */
function ChartTable({ kind, options }: { kind: ChartKind; options: readonly NamedCourse[][] }) {
  const shown = useSignal(false);
  const caption = t("charts.table", { chart: t(`charts.${kind}`) });
  const columns = options.flatMap((courses, option) => courses.map((course) => ({ ...course, option })));
  return (
    <details data-testid={`chart-${kind}-table`} onToggle={(event) => (shown.value = event.currentTarget.open)}>
      <summary>{caption}</summary>
      {shown.value && (
        <div class="table-scroll" role="region" aria-label={caption} tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">{t("table.hour")}</th>
                {columns.map(({ option, name }) => (
                  <th key={`${option}-${name}`} scope="col">
                    {letter(option)}: {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {(answer.value?.day.hour ?? []).map((hour, i) =>
                i % instantsPerHour ? null : (
                  <tr key={i}>
                    <th scope="row">{clock(hour)}</th>
                    {columns.map(({ option, name, values }) => (
                      <td key={`${option}-${name}`}>
                        <Quantity value={values[i]} unit={chartUnits[kind]} />
                      </td>
                    ))}
                  </tr>
                ),
              )}
            </tbody>
          </table>
        </div>
      )}
    </details>
  );
}
