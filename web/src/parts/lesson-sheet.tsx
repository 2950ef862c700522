/** A lesson on one page of paper: the question, the vote, numbers to write down, lines to answer on, and its address. */

import { signal } from "@preact/signals";
import { render } from "preact";
import { type Lesson, stageAt } from "../lessons/catalogue.ts";
import { lesson, lessonAddress } from "../lessons/lesson.ts";
import { columnName, guessText, lessonText, rowName } from "../lessons/words.ts";
import { t, type TextKey } from "../text.ts";

type QR = typeof import("../qr.ts");
type Code = ReturnType<QR["codeOf"]>;

/** The code of the address; null where the script that makes it could not be had. The address alone does then. */
const code = signal<Code | null>(null);

/** Makes the code and hands the sheet to the print dialogue of the browser. */
export async function printLesson(): Promise<void> {
  const now = lesson.peek();
  if (!now) return;
  try {
    const qr = (await import(new URL("qr.js", document.baseURI).href)) as QR;
    code.value = qr.codeOf(lessonAddress(now.key));
  } catch {
    code.value = null;
  }
  window.print();
}

/** Draws the sheet of the open lesson where reports are printed from; false where none is open. */
export function drawLessonSheet(place: HTMLElement): boolean {
  const now = lesson.peek();
  if (now) render(<LessonSheet of={now} />, place);
  return now !== null;
}

const lines = (count: number) => Array.from({ length: count }, (_, i) => <div key={i} class="sheet-line" />);

function LessonSheet({ of }: { of: Lesson }) {
  // It may break before the #, and nowhere within the name.
  const [place, name] = lessonAddress(of.key).split("#");
  return (
    <article class="report lesson-paper">
      <header>
        <div>
          <p class="report-note">{t("lesson.sheet")}</p>
          <h1>{lessonText(of, "title")}</h1>
          <p class="sheet-name">
            <span>{t("lesson.sheet.name")}</span>
            <span>{t("lesson.sheet.date")}</span>
          </p>
        </div>
        <div class="sheet-address">
          {code.value && (
            <svg viewBox={`0 0 ${code.value.size} ${code.value.size}`} role="img" aria-label={t("lesson.sheet.code")}>
              <path d={code.value.path} />
            </svg>
          )}
          <p>
            {place}
            <wbr />#{name}
          </p>
        </div>
      </header>
      <p class="report-lead">{lessonText(of, "question")}</p>
      <section>
        <h2>{t("lesson.stage.predict")}</h2>
        <p>{lessonText(of, "predict")}</p>
        <ul class="sheet-votes">
          {of.guesses.map((one) => (
            <li key={one}>
              <span class="sheet-box" /> {guessText(of, one)}
            </li>
          ))}
        </ul>
        <p class="sheet-because">{t("lesson.sheet.because")}</p>
        {lines(1)}
      </section>
      <section>
        <h2>{t("lesson.sheet.read")}</h2>
        {of.stages.map((stage, i) => stage.rows && stage.key !== "mind" && <Blanks key={stage.key} of={of} index={i} />)}
      </section>
      <section>
        <h2>{t("lesson.sheet.explain")}</h2>
        {lines(3)}
        <h2>{t("lesson.stage.mind")}</h2>
        <p>{lessonText(of, "mind")}</p>
        {lines(2)}
      </section>
      <footer>
        <p>{[...of.cautions, "caution.scope"].map((caution) => t(caution as TextKey)).join(" ")}</p>
        <p>
          {t("lesson.sources")}: {lessonText(of, "sources")} {t("lesson.invented")}
        </p>
      </footer>
    </article>
  );
}

/** The table of a stage with empty cells; a row that an earlier stage had is not asked for again. */
function Blanks({ of, index }: { of: Lesson; index: number }) {
  const { columns = [], hours = [], rows: all = [] } = stageAt(of, index);
  const before = new Set(of.stages.slice(0, index).flatMap(({ rows = [] }) => rows.map((row) => row.join())));
  const rows = all.filter((row) => !before.has(row.join()));
  if (!rows.length) return null;
  return (
    <table class="sheet-blanks">
      <thead>
        <tr>
          <td />
          {columns.map((column, i) => (
            <th key={column} scope="col">
              {columnName(of, column, columns.length === hours.length ? hours[i] : undefined)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([row = "", ...names]) => (
          <tr key={row}>
            <th scope="row">{rowName(of, row)}</th>
            {names.map((name) => (
              <td key={name} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
