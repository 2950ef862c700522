/** Every day of the season in numbers. */

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Season, SideDay } from "../calendar.ts";
import { letter } from "../document.ts";
import { limits } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { show, text } from "../units.ts";
import { Quantity } from "./quantity.tsx";
import { dayWords } from "./season.tsx";

export function SeasonTable({ known }: { known: Season }) {
  const open = useSignal(false);
  return (
    <details class="direction-table" data-testid="season-table" onToggle={(event) => (open.value = event.currentTarget.open)}>
      <summary>{t("season.table")}</summary>
      {open.value && known.whole && known.calendar.map((_, option) => <OptionDays key={option} known={known} option={option} />)}
    </details>
  );
}

function OptionDays({ known, option }: { known: Season; option: number }) {
  const caption = t("season.table.caption", { letter: letter(option) });
  const sides = known.whole?.options[option] ?? [];
  const [, hot, burn] = limits.value.map((limit) => t("season.over", { limit: text(show(limit.temperature_C, "degC", units.value, 0)) }));
  const heads = [t("season.hottest"), hot ?? "", burn ?? "", t("season.risk")];
  return (
    <div class="table-scroll" role="region" aria-label={caption} tabIndex={0}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col" rowSpan={2}>
              {t("season.day")}
            </th>
            <th scope="col" rowSpan={2}>
              {t("season.air")}
            </th>
            {sides.map(({ compass }, side) => (
              <th key={side} scope="colgroup" colSpan={heads.length}>
                {t("season.side", { compass })}
              </th>
            ))}
          </tr>
          <tr>{sides.map((_, side) => heads.map((head) => <th key={`${side}${head}`} scope="col">{head}</th>))}</tr>
        </thead>
        {known.days.map((_, day) => (day % daysAtOnce ? null : <Days key={day} known={known} option={option} from={day} />))}
      </table>
    </div>
  );
}

/** Rows that are made in one task. */
const daysAtOnce = 20;

/** Some days, made in a task of their own: all at once would keep the page from answering a touch. */
function Days({ known, option, from }: { known: Season; option: number; from: number }) {
  const there = useSignal(false);
  useEffect(() => {
    const soon = setTimeout(() => (there.value = true));
    return () => clearTimeout(soon);
  }, []);
  return (
    <tbody>
      {there.value &&
        known.days.slice(from, from + daysAtOnce).map(({ date }, i) => (
          <tr key={date}>
            <th scope="row">{dayWords(date)}</th>
            <td>
              <Quantity value={known.whole?.airMax_C[from + i]} unit="degC" />
            </td>
            {known.calendar[option]?.map((days, side) => <SideCells key={side} day={days[from + i]} />)}
          </tr>
        ))}
    </tbody>
  );
}

function SideCells({ day }: { day: SideDay | undefined }) {
  const numbers = [
    [day?.hottest_C, "degC"],
    [day?.overHot_h, "h"],
    [day?.overBurn_h, "h"],
    [day?.atRisk, "share"],
  ] as const;
  return (
    <>
      {numbers.map(([value, unit], i) => (
        <td key={i}>
          <Quantity value={value} unit={unit} />
        </td>
      ))}
    </>
  );
}
