/**
 * The drawing of the charts of the day, a script of its own that is fetched when the charts are opened: the plotting
 * library is larger than the page. It knows nothing of the page; colours are those of its styles.
 */

import { axisX, axisY, gridX, gridY, line, plot, rect, ruleY, text } from "@observablehq/plot";

/** One line over the day, a value per hour of the chart. */
export interface Course {
  values: readonly number[];
  /** Lengths of dashes and gaps, as of an SVG stroke; empty for a whole line. */
  dash: string;
  /** A colour of the page; the ink without one. */
  colour?: string;
  /** Thinner than the others. */
  thin?: boolean;
}

/** A range of values that means something, with its name. */
export interface Band {
  from: number;
  to: number;
  name: string;
}

export interface Chart {
  width: number;
  height: number;
  /** Size of text and width of lines, of those of the grid too [px]. */
  text: number;
  stroke: number;
  grid: number;
  margins: Margins;
  hour: readonly number[];
  courses: readonly Course[];
  bands: readonly Band[];
  low: number;
  high: number;
  /** How a value of the axis is written, and an hour. */
  value: (value: number) => string;
  clock: (hour: number) => string;
}

/** Room around the plot [px]. */
export interface Margins {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Draws a chart. The library's own style block is taken out: the page's policy allows none within a document. */
export function draw(chart: Chart): SVGSVGElement {
  const { bands, low, high, margins, stroke } = chart;
  const inside = bands.map(({ from, to, name }) => ({ from: Math.max(from, low), to: Math.min(to, high), name })).filter(({ from, to }) => to > from);
  const points = (course: Course) => chart.hour.map((hour, i) => ({ hour, value: course.values[i] ?? Number.NaN }));
  const svg = plot({
    width: chart.width,
    height: chart.height,
    marginLeft: margins.left,
    marginRight: margins.right,
    marginTop: margins.top,
    marginBottom: margins.bottom,
    x: { domain: [0, 24], label: null },
    y: { domain: [low, high], label: null },
    marks: [
      ...inside.map((band, i) => rect([band], { x1: 0, x2: 24, y1: "from", y2: "to", fill: "var(--sun)", fillOpacity: 0.1 + 0.1 * i })),
      gridY({ stroke: "var(--line)", strokeOpacity: 1, strokeWidth: chart.grid, ticks: 5 }),
      gridX({ stroke: "var(--line)", strokeOpacity: 1, strokeWidth: chart.grid, ticks: [0, 6, 12, 18, 24] }),
      low < 0 && high > 0 ? ruleY([0], { stroke: "var(--edge)", strokeWidth: stroke }) : null,
      axisX({ ticks: [0, 6, 12, 18, 24], tickSize: 0, tickFormat: chart.clock, label: null, fontSize: chart.text, fill: "var(--muted)" }),
      axisY({ ticks: 5, tickSize: 0, tickFormat: chart.value, label: null, fontSize: chart.text, fill: "var(--muted)" }),
      ...chart.courses.map((course) =>
        line(points(course), { x: "hour", y: "value", stroke: course.colour ?? "var(--ink)", strokeWidth: course.thin ? stroke * 0.75 : stroke * 1.25, strokeDasharray: course.dash || "none", strokeLinecap: "butt" }),
      ),
      text(inside, { x: 0, y: "from", text: "name", textAnchor: "start", lineAnchor: "bottom", dx: 4, dy: -2, fontSize: chart.text, fill: "var(--ink)", stroke: "var(--ground)", strokeWidth: 3 }),
    ],
  }) as SVGSVGElement;
  for (const style of svg.querySelectorAll("style")) style.remove();
  return svg;
}
