/** The pictures of the page as files and for the report: those of the options, and the course of the day. */

import { render } from "preact";
import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import { DayChart } from "../parts/day-chart.tsx";
import { temperatureColour, temperatureScale } from "../scales.ts";
import { verdictText } from "../sentences.ts";
import { limits, optionName, optionResult } from "../shown.ts";
import { instant, scenario, step_min, theme, units } from "../store.ts";
import { t } from "../text.ts";
import { clock, longDate, show, text } from "../units.ts";
import { panes, viewFrame } from "../view.ts";
import { download, fileName } from "./files.ts";

/** Frames in which the view is given the time to draw. */
const mostFrames = 120;

/**
 * The drawn panes as canvases, one per option; none where nothing is drawn. A drawn frame can be read only before
 * the browser has shown it, so the view is asked to draw and read within the same frame.
 */
export async function paneCanvases(): Promise<(HTMLCanvasElement | null)[]> {
  const frame = viewFrame();
  const [view, source] = [frame?.rowlightView, frame?.document.querySelector("canvas")];
  if (!frame || !view || !source) return [];
  const before = view.frames();
  view.setTheme(theme.peek());
  for (let i = 0; i < mostFrames; i++) {
    await nextFrame(frame);
    if (view.frames() > before && !view.busy()) {
      const cut = panes.peek().map((pane) => cutOut(source, pane, frame.innerWidth));
      if (cut.some((canvas) => canvas && !isBlank(canvas))) return cut;
      view.setTheme(theme.peek());
    }
  }
  return [];
}

/** A call behind that of the view within a frame: the view has asked for its own before. */
function nextFrame(frame: Window): Promise<void> {
  return new Promise((done) => setTimeout(() => frame.requestAnimationFrame(() => done()), 0));
}

function cutOut(source: HTMLCanvasElement, pane: { x: number; y: number; width: number; height: number }, frameWidth: number): HTMLCanvasElement | null {
  if (pane.width <= 0 || pane.height <= 0) return null;
  const ratio = source.width / frameWidth;
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(pane.width * ratio);
  canvas.height = Math.round(pane.height * ratio);
  const place = [pane.x * ratio, pane.y * ratio, pane.width * ratio, pane.height * ratio] as const;
  canvas.getContext("2d")?.drawImage(source, ...place, 0, 0, canvas.width, canvas.height);
  return canvas;
}

function isBlank(canvas: HTMLCanvasElement): boolean {
  const pixels = canvas.getContext("2d")?.getImageData(canvas.width >> 1, canvas.height >> 1, 1, 1).data;
  return !pixels || pixels[3] === 0;
}

/** Saves every picture as PNG, and the course of the day as SVG besides. */
export async function savePictures(): Promise<void> {
  const canvases = await paneCanvases();
  for (const [option, pane] of canvases.entries()) {
    const blob = pane && (await toBlob(withLegend(pane, option)));
    if (blob) download(fileName(scenario.peek(), `-${letter(option).toLowerCase()}.png`), blob);
  }
  const svg = chartText();
  download(fileName(scenario.peek(), "-day.svg"), new Blob([svg], { type: "image/svg+xml" }));
  const chart = await toBlob(await drawn(svg));
  if (chart) download(fileName(scenario.peek(), "-day.png"), chart);
}

function toBlob(canvas: HTMLCanvasElement): Promise<Blob | null> {
  return new Promise((done) => canvas.toBlob(done, "image/png"));
}

// Sizes of a saved picture, in parts of its unit: twice a CSS pixel.
const unit = 2;
const margin = 16 * unit;
const headHeight = 56 * unit;
const footHeight = 60 * unit;
const paper = "#ffffff";
const ink = "#1e2a20";

/** A pane under its title and over the key of its colours. */
export function withLegend(pane: HTMLCanvasElement, option: number): HTMLCanvasElement {
  const canvas = document.createElement("canvas");
  const width = Math.max(pane.width, 480 * unit);
  const height = (pane.height * width) / pane.width;
  canvas.width = width + 2 * margin;
  canvas.height = Math.round(height + headHeight + footHeight + margin);
  const g = canvas.getContext("2d");
  if (!g) return canvas;
  g.fillStyle = paper;
  g.fillRect(0, 0, canvas.width, canvas.height);
  g.drawImage(pane, margin, headHeight, width, height);
  g.fillStyle = ink;
  writeHead(g, option, width);
  drawKey(g, headHeight + height + 12 * unit, width);
  return canvas;
}

const font = (size: number, weight = 400) => `${weight} ${size * unit}px "Liberation Sans", "Helvetica Neue", Arial, sans-serif`;

function writeHead(g: CanvasRenderingContext2D, option: number, width: number): void {
  const day = answer.peek();
  const result = optionResult(option);
  const hour = clock((instant.peek() * step_min) / 60);
  g.font = font(16, 600);
  const name = day ? optionName(day.document, option) : "";
  g.fillText(t("picture.title", { letter: letter(option), name, site: day?.day.name ?? "" }), margin, 24 * unit, width);
  g.font = font(12);
  const when = t("picture.when", { date: longDate(day?.day.date ?? ""), hour });
  g.fillText(result ? `${when} ${verdictText(result.verdict, units.peek())}` : when, margin, 44 * unit, width);
}

/** The scale of fruit temperatures with its unit and the limits. */
function drawKey(g: CanvasRenderingContext2D, top: number, width: number): void {
  const { min_C, max_C } = temperatureScale;
  g.font = font(12);
  g.fillText(`${t("legend")} · ${t("brand")}`, margin, top + 8 * unit, width);
  const bar = top + 14 * unit;
  const place = (temperature_C: number) => margin + (width * (temperature_C - min_C)) / (max_C - min_C);
  for (let x = 0; x < width; x++) {
    g.fillStyle = `rgb(${temperatureColour(min_C + ((max_C - min_C) * x) / width).join(" ")})`;
    g.fillRect(margin + x, bar, 1, 10 * unit);
  }
  g.fillStyle = ink;
  const marks = [min_C, ...limits.peek().map((limit) => limit.temperature_C), max_C];
  marks.forEach((mark, i) => {
    g.textAlign = i === 0 ? "left" : i === marks.length - 1 ? "right" : "center";
    g.fillText(text(show(mark, "degC", units.peek(), 0)), place(mark), bar + 24 * unit);
    if (i > 0 && i < marks.length - 1) g.fillRect(place(mark) - unit / 2, bar - 2 * unit, unit, 14 * unit);
  });
}

/** The course of the day as the text of an SVG file. */
export function chartText(): string {
  const holder = document.createElement("div");
  render(<DayChart titled />, holder);
  const svg = holder.querySelector("svg");
  const written = svg ? new XMLSerializer().serializeToString(svg) : "";
  render(null, holder);
  return written;
}

/** Draws an SVG text at twice its size. */
async function drawn(svg: string): Promise<HTMLCanvasElement> {
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = image.naturalWidth * unit;
  canvas.height = image.naturalHeight * unit;
  const g = canvas.getContext("2d");
  if (g) {
    g.fillStyle = paper;
    g.fillRect(0, 0, canvas.width, canvas.height);
    g.drawImage(image, 0, 0, canvas.width, canvas.height);
  }
  URL.revokeObjectURL(image.src);
  return canvas;
}
