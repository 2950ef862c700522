/** The report for paper: one to two pages of inputs, pictures, results, assumptions, sources and cautions. */

import { signal } from "@preact/signals";
import { render } from "preact";
import { at, effective, effectiveNumber, effectiveText, fieldSchema, formByKey, isObject, type JsonObject, letter, type Path, rawOptions } from "../document.ts";
import { answer, ranges, rangesDrawn } from "../engine.ts";
import { refreshLink } from "../keep/link.ts";
import { paneCanvases } from "../keep/pictures.tsx";
import { fieldLabel } from "../labels.ts";
import { comparisonText, sharedText, verdictText } from "../sentences.ts";
import { compared, limits, optionName, worse, worseBand } from "../shown.ts";
import { instant, step_min, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { clock, formatNumber, rowDirection, show, showPlain, span, text } from "../units.ts";
import { formName, sharedWord } from "../words.ts";
import { DayChart } from "./day-chart.tsx";
import { drawLessonSheet } from "./lesson-sheet.tsx";
import { dayRows } from "./numbers.tsx";
import { Head, PaperFoot, placeAndDay, sourceNote } from "./report-head.tsx";
import { DecisionPaper } from "./weigh-paper.tsx";

/** Addresses of the drawn panes, as they were when the report was asked for, one per option. */
const paneImages = signal<string[]>([]);

/** Waits for the ranges, makes the pictures and the link of the report and hands it to the print dialogue of the browser. */
export async function printReport(): Promise<void> {
  await Promise.all([refreshLink(), rangesDrawn()]);
  const canvases = await paneCanvases();
  const blobs = await Promise.all(canvases.map((canvas) => canvas && new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"))));
  paneImages.value.forEach((address) => URL.revokeObjectURL(address));
  paneImages.value = blobs.map((blob) => (blob ? URL.createObjectURL(blob) : ""));
  drawReport();
  await Promise.all([...document.querySelectorAll<HTMLImageElement>("#report img")].map((image) => image.decode().catch(() => undefined)));
  window.print();
}

/** Waits for the ranges and hands the table of the decision to the print dialogue. */
export async function printDecision(): Promise<void> {
  await Promise.all([refreshLink(), rangesDrawn()]);
  decisionAsked = true;
  drawReport();
  // Not every browser waits here until the paper is printed.
  window.addEventListener("afterprint", () => (decisionAsked = false), { once: true });
  window.print();
}

/** Whether the paper that is asked for is that of the decision. */
let decisionAsked = false;

/** Draws the report, or the paper that was asked for, at once, as a browser that begins to print needs it. */
function drawReport(): void {
  const place = document.getElementById("report");
  if (place && answer.peek() && !drawLessonSheet(place)) render(decisionAsked ? <DecisionPaper /> : <Report />, place);
}

/** Whoever prints by the browser's own command gets the report too. */
export function startReport(): void {
  window.addEventListener("beforeprint", drawReport);
}

function Report() {
  const now = answer.value;
  if (!now) return null;
  const { day, document } = now;
  const options = day.options.map((_, i) => i);
  return (
    <article class="report">
      <header>
        <h1>{t("report.title", { name: day.name })}</h1>
        <p>{placeAndDay(document)}</p>
        <p class="report-note">{sourceNote(document)}</p>
      </header>
      <section class="report-findings">
        {day.comparison.map((sentence, i) => (
          <p key={i} class="report-lead">
            {comparisonText(sentence, options.filter((o) => o !== compared.value)[i] ?? 0, compared.value, units.value)}
          </p>
        ))}
        <div class="report-panes" data-count={options.length}>
          {options.map((i) => (
            <figure key={i}>
              {paneImages.value[i] && <img src={paneImages.value[i]} alt={t("report.pane", { letter: letter(i), hour: clock((instant.value * step_min) / 60) })} />}
              <figcaption>
                <strong>
                  {letter(i)} {optionName(document, i)}
                </strong>
                . {verdictText(day.options[i]?.verdict ?? { code: "" }, units.value)}
              </figcaption>
            </figure>
          ))}
        </div>
        {paneImages.value.some(Boolean) && <p class="report-note">{t("report.panesAt", { hour: clock((instant.value * step_min) / 60) })}</p>}
      </section>
      <Results options={options} />
      {ranges.value && <p class="report-note">{t("report.ranges", { draws: formatNumber(ranges.value.draws, 0), inputs: ranges.value.inputs.map(({ key }) => sharedText(`input.${key}`)).join(", ") })}</p>}
      <figure class="report-chart">
        <DayChart />
        <figcaption>{t("chart.label")}</figcaption>
      </figure>
      <Inputs document={document} options={options} />
      <SharedInputs document={document} />
      <section class="report-small">
        <h2>{t("report.assumptions")}</h2>
        <p>
          {limits.value.map(({ key, temperature_C }) => t("limit.line", { limit: text(show(temperature_C, "degC", units.value, 0)), name: t(`limit.${key}`) })).join("; ")}.{" "}
          {t("report.limits")}
        </p>
        <p>{t("reading.over")} {t("reading.hottest")}</p>
        <h2>{t("report.sources")}</h2>
        <p>{t("report.sourcesText")}</p>
        <h2>{t("cautions")}</h2>
        <p>
          {t("caution.scope")} {t("caution.people")} {t("caution.limits")} {t("caution.leaves")} {t("caution.trellis")}
        </p>
      </section>
      <PaperFoot />
    </article>
  );
}

function Results({ options }: { options: number[] }) {
  return (
    <table class="report-results">
      <caption>{t("report.results")}</caption>
      <Head options={options} />
      <tbody>
        {dayRows().map(({ full, number, unit }) => (
          <tr key={number}>
            <th scope="row">{full}</th>
            {options.map((i) => {
              const found = worse(answer.value?.day.options[i], number);
              const band = worseBand(i, number);
              return (
                <td key={i}>
                  {found && `${text(show(found.value, unit, units.value))}, ${sharedWord(found.side.compass)}`}
                  {band && <span class="report-note"> ({span(band.low, band.high, unit, units.value)})</span>}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What every reader looks for first; then whatever an option says of its own. */
const always = ["rows/azimuth_deg", "rows/rowSpacing_m", "rows/vineSpacing_m", "leaves/area_m2_per_m"];

function Inputs({ document, options }: { document: JsonObject; options: number[] }) {
  const own = rawOptions(document).flatMap((option) => leaves(option, [], ["options", 0]));
  const rows = [...new Set([...always, ...own])].map((row) => row.split("/").map((step) => (/^\d+$/.test(step) ? Number(step) : step)));
  return (
    <table class="report-inputs">
      <caption>{t("report.inputs")}</caption>
      <Head options={options} />
      <tbody>
        <tr>
          <th scope="row">{t("report.form")}</th>
          {options.map((i) => (
            <td key={i}>{formWord(effectiveText(document, ["options", i, "form"]))}</td>
          ))}
        </tr>
        <tr>
          <th scope="row">{t("field.wires")}</th>
          {options.map((i) => (
            <td key={i}>{wiresText(document, i)}</td>
          ))}
        </tr>
        {rows.map((row) => (
          <tr key={row.join("/")}>
            <th scope="row">{fieldLabel(["options", 0, ...row])}</th>
            {options.map((i) => (
              <td key={i}>{inputText(document, ["options", i, ...row])}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The wires of an option from above: how many do what at which height. */
function wiresText(document: JsonObject, option: number): string {
  const list: Path = ["options", option, "trellis", "wires"];
  const wires = effective(document, list);
  const lines = new Map<string, { height_m: number; role: string; count: number }>();
  for (const i of Array.isArray(wires) ? wires.keys() : []) {
    const line = { height_m: effectiveNumber(document, [...list, i, "height_m"]), role: effectiveText(document, [...list, i, "role"]), count: 1 };
    const key = `${line.height_m} ${line.role}`;
    lines.set(key, { ...line, count: (lines.get(key)?.count ?? 0) + 1 });
  }
  return [...lines.values()]
    .sort((a, b) => b.height_m - a.height_m)
    .map(({ height_m, role, count }) =>
      t(count > 1 ? "report.wires" : "report.wire", { height: text(show(height_m, "m", units.value, 2)), count, role: tOr(`role.${role}`, role).toLocaleLowerCase() }),
    )
    .join("; ");
}

/** What stands in the head of the report already, is no input of the day, or is not for reading. */
const toldElsewhere = ["schemaVersion", "name", "note", "seed", "compare", "options", "weights", "frost", "crop"];
const inHead = ["latitude_deg", "longitude_deg", "elevation_m", "utcOffset_h", "date", "airMax_C", "airMin_C", "wind_ms", "source"];

/** What the scenario gives itself of site, weather, fruit and limits, beside what the head tells. */
function SharedInputs({ document }: { document: JsonObject }) {
  const given = leaves(document, [], [])
    .map((path) => path.split("/"))
    .filter((path) => !toldElsewhere.includes(path[0] ?? "") && !inHead.includes(path.at(-1) ?? ""))
    .map((path) => t("report.given", { field: fieldLabel(path), value: inputText(document, path) }));
  return given.length > 0 ? <p class="report-note">{t("report.shared", { inputs: given.join("; ") })}</p> : null;
}

/** The fields that a part of the document gives itself, as paths within it; those of lists are told in their own way. */
function leaves(value: JsonObject, path: string[], base: Path): string[] {
  return Object.entries(value).flatMap(([key, part]) => {
    const below = [...path, key];
    if (isObject(part)) return leaves(part, below, base);
    const known = fieldSchema([...base, ...below]);
    return Array.isArray(part) || !known || key === "form" || key === "name" ? [] : [below.join("/")];
  });
}

function inputText(document: JsonObject, path: Path): string {
  const value = effective(document, path) ?? at(document, path);
  if (typeof value === "string") return tOr(`${path.at(-1)}.${value}`, tOr(`cloth.${value}`, value));
  if (typeof value !== "number") return "";
  const written = text(showPlain(value, fieldSchema(path)?.["x-unit"] ?? "", units.value));
  return path.at(-1) === "azimuth_deg" ? `${written} (${rowDirection(value)})` : written;
}

function formWord(key: string): string {
  const form = formByKey(key);
  return form ? formName(form) : "";
}
