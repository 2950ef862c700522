/** The numbers of an option: both sides at the hour, four for the day on the worse side, both sides over the day. */

import { letter } from "../document.ts";
import { pending } from "../engine.ts";
import { optionHook } from "../hooks.ts";
import { compared, type DayNumber, limits, optionResult, type ShownSide, sideName, sidesInOrder, worse } from "../shown.ts";
import { explained, instant, optionCount, sheet, step_min, units } from "../store.ts";
import { t } from "../text.ts";
import { clock, show, text } from "../units.ts";
import { sharedWord } from "../words.ts";
import { Button } from "./button.tsx";
import { Quantity } from "./quantity.tsx";
import { DayRange } from "./range.tsx";

export interface DayRow {
  label: string;
  unit: string;
  number: DayNumber;
  hook: string;
}

/** The four numbers, most telling first. */
export function dayRows(): DayRow[] {
  const [watch, hot, burn] = limits.value;
  const over = (limit: { temperature_C: number }, number: DayNumber, hook: string): DayRow => ({
    label: t("over", { limit: text(show(limit.temperature_C, "degC", units.value, 0)) }),
    unit: "h",
    number,
    hook,
  });
  return [
    { label: t("hottest"), unit: "degC", number: "hottest_C", hook: "hottest" },
    over(burn, "overBurn_h", "overBurn"),
    over(hot, "overHot_h", "overHot"),
    over(watch, "overWatch_h", "overWatch"),
  ];
}

export function DayNumbers({ option }: { option: number }) {
  const base = compared.value;
  const differs = optionCount.value > 1 && option !== base;
  return (
    <div class="day">
      <p class="small">{t("numbers.worse")}</p>
      <dl class="numbers">
        {dayRows().map(({ label, unit, number, hook }) => {
          const own = worse(optionResult(option), number);
          const other = differs ? worse(optionResult(base), number) : undefined;
          return (
            <div key={number} class="tile">
              <dt>
                <WhyButton option={option} number={number} label={label} hook={hook} />
              </dt>
              <dd class="figure">
                <Quantity value={own?.value} unit={unit} hook={optionHook(option, hook)} pending={pending.value} />
              </dd>
              {own && <DayRange option={option} number={number} unit={unit} value={own.value} hook={`${hook}-range`} />}
              {own && <dd class="where">{own.value > 0 ? sharedWord(own.side.compass) : t("numbers.nowhere")}</dd>}
              {own && optionCount.value > 1 && !differs && <dd class="difference" />}
              {own && other && <Difference value={own.value - other.value} unit={unit === "degC" ? "K" : unit} base={base} />}
            </div>
          );
        })}
      </dl>
    </div>
  );
}

/** The name of a number, which opens how it comes about. */
function WhyButton({ option, number, label, hook }: { option: number; number: DayNumber; label: string; hook: string }) {
  const open = explained.value?.option === option && explained.value.number === number;
  const press = () => {
    sheet.value = null;
    explained.value = open ? null : { option, number };
  };
  return <Button class="why" label={label} spoken={t("why", { label, letter: letter(option) })} expanded={open} onPress={press} hook={optionHook(option, `${hook}-why`)} />;
}

/** The name of a side at the chosen hour, which opens how its numbers come about. */
function WhyHourButton({ option, shown: { side, place } }: { option: number; shown: ShownSide }) {
  const number = `now-${place}`;
  const open = explained.value?.option === option && explained.value.number === number;
  const press = () => {
    sheet.value = null;
    explained.value = open ? null : { option, number };
  };
  const name = sideName(side);
  return <Button class="why" label={name} spoken={t("why.now", { side: name, letter: letter(option) })} expanded={open} onPress={press} hook={optionHook(option, `${place}-why`)} />;
}

/** "−0.8 °C to A". */
function Difference({ value, unit, base }: { value: number; unit: string; base: number }) {
  return (
    <dd class="difference">
      <Quantity value={value} unit={unit} difference pending={pending.value} /> <span class="note">{t("numbers.to", { letter: letter(base) })}</span>
    </dd>
  );
}

/** Both sides at the chosen hour, right under the picture of that hour. */
export function HourNumbers({ option }: { option: number }) {
  const result = optionResult(option);
  const i = instant.value;
  const cell = (side: ShownSide, hook: string, value: number | undefined, unit: string) => (
    <td>
      <Quantity value={value} unit={unit} hook={optionHook(option, `${side.place}-${hook}`)} pending={pending.value} />
    </td>
  );
  return (
    <table class="now">
      <caption class="visually-hidden">{t("now", { letter: letter(option) })}</caption>
      <thead>
        <tr>
          <th scope="col">{t("sides.atHour", { hour: clock((i * step_min) / 60) })}</th>
          <th scope="col">{t("lit")}</th>
          <th scope="col">{t("mean")}</th>
          <th scope="col">{t("hottest.short")}</th>
        </tr>
      </thead>
      <tbody>
        {(result ? sidesInOrder(result) : []).map((shown) => (
          <tr key={shown.place}>
            <th scope="row">
              <WhyHourButton option={option} shown={shown} />
            </th>
            {cell(shown, "lit", shown.side.steps.litShare[i], "share")}
            {cell(shown, "mean", shown.side.steps.mean_C[i], "degC")}
            {cell(shown, "hottest", shown.side.steps.hottest_C[i], "degC")}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function SideNumbers({ option }: { option: number }) {
  const result = optionResult(option);
  const sides = result ? sidesInOrder(result) : [];
  return (
    <table class="sides">
      <caption class="visually-hidden">{t("sides", { letter: letter(option) })}</caption>
      <thead>
        <tr>
          <th scope="col" class="small">
            {t("sides.overDay")}
          </th>
          {sides.map(({ side, place }) => (
            <th key={place} scope="col">
              {sideName(side)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {dayRows().map(({ label, unit, number, hook }) => (
          <SideRow
            key={number}
            option={option}
            sides={sides}
            label={label}
            unit={unit}
            hook={hook === "hottest" ? "dayHottest" : hook}
            read={({ side }) => side.summary[number]}
            {...(number === "hottest_C" ? { note: ({ side }: ShownSide) => t("at", { hour: clock(side.summary.hottestAt_h) }) } : {})}
          />
        ))}
      </tbody>
    </table>
  );
}

interface SideRowProps {
  option: number;
  sides: ShownSide[];
  label: string;
  unit: string;
  hook: string;
  read: (side: ShownSide) => number | undefined;
  note?: (side: ShownSide) => string;
}

function SideRow({ option, sides, label, unit, hook, read, note }: SideRowProps) {
  return (
    <tr>
      <th scope="row">{label}</th>
      {sides.map((side) => (
        <td key={side.place}>
          <Quantity value={read(side)} unit={unit} hook={optionHook(option, `${side.place}-${hook}`)} pending={pending.value} />
          {note && <span class="note"> {note(side)}</span>}
        </td>
      ))}
    </tr>
  );
}
