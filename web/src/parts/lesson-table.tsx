/** The numbers of a stage of a lesson: a row each, with a bar for every column on the scale of the row. */

import { answer } from "../engine.ts";
import { lessonHook } from "../hooks.ts";
import type { Lesson } from "../lessons/catalogue.ts";
import { seen, stage } from "../lessons/lesson.ts";
import { readAt, withDifferences } from "../lessons/readings.ts";
import { columnName, reading, rowName } from "../lessons/words.ts";
import { t } from "../text.ts";

export function LessonTable({ of }: { of: Lesson }) {
  const now = stage.value;
  const columns = now?.columns ?? [];
  if (!now?.rows || !seen.value) return null;
  const live = now.key === "mind" ? liveNumbers(of) : seen.value;
  return (
    <>
      <div class="table-scroll" role="region" aria-label={t("lesson.numbers")} tabIndex={0}>
        <table class="lesson-table follows" data-columns={columns.length}>
          <thead>
            <tr>
              <td />
              {columns.map((column, i) => (
                <th key={column} scope="col">
                  {columnName(of, column, columns.length === (now.hours?.length ?? 0) ? now.hours?.[i] : undefined)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {now.rows.map(([row = "", ...names]) => (
              <Row key={row} of={of} row={row} names={names} live={live} />
            ))}
          </tbody>
        </table>
      </div>
      <p class="small lesson-one-run">{t("lesson.oneRun")}</p>
    </>
  );
}

/** The numbers of the set-up as it stands now, as far as one result holds them. */
function liveNumbers(of: Lesson): Record<string, number> {
  const day = answer.value?.day;
  const own = Object.entries(of.values).filter(([, one]) => one.path && !one.run);
  return withDifferences(of, Object.fromEntries(own.map(([name, one]) => [name, readAt(day, one)])));
}

interface RowProps {
  of: Lesson;
  row: string;
  names: string[];
  live: Readonly<Record<string, number>>;
}

function Row({ of, row, names, live }: RowProps) {
  const values = names.map((name) => live[name] ?? Number.NaN);
  const unit = of.values[names[0] ?? ""]?.unit ?? "";
  // A temperature has no nothing to start from: its bar would say how far it is above the freezing of water.
  const most = unit === "degC" || unit === "clock" ? 0 : Math.max(...values.filter(Number.isFinite), 0);
  return (
    <tr>
      <th scope="row">{rowName(of, row)}</th>
      {names.map((name, i) => (
        <Cell key={name} of={of} name={name} value={values[i] as number} most={most} />
      ))}
    </tr>
  );
}

function Cell({ of, name, value, most }: { of: Lesson; name: string; value: number; most: number }) {
  const one = of.values[name] ?? { unit: "" };
  const before = seen.value?.[name];
  const moved = before !== undefined && reading(one, before) !== reading(one, value);
  return (
    <td>
      <span class="lesson-number" data-testid={lessonHook("value", name)} data-value={String(value)}>
        {reading(one, value)}
      </span>
      {moved && <span class="small lesson-before">{t("lesson.before", { value: reading(one, before) })}</span>}
      {most > 0 && (
        <span class="lesson-bar" aria-hidden="true">
          <span style={{ width: `${Math.max(0, (100 * value) / most)}%` }} />
        </span>
      )}
    </td>
  );
}
