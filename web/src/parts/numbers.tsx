/** The numbers of an option: both sides at the hour, four of the hottest fruit on the worse side, both sides over the day. */

import { letter } from "../document.ts";
import { optionHook } from "../hooks.ts";
import { atHour, compared, type DayNumber, isNearly, limits, optionResult, optionSoon, type ShownSide, sideName, sidesInOrder, sightedNow, worse } from "../shown.ts";
import type { Limit } from "../scales.ts";
import { explained, instant, optionCount, sheet, step_min, units } from "../store.ts";
import { t } from "../text.ts";
import { clock, show, text } from "../units.ts";
import { sharedWord } from "../words.ts";
import { Button } from "./button.tsx";
import { Quantity } from "./quantity.tsx";
import { DayRange } from "./range.tsx";

export interface DayRow {
  /** Where it is said beside it that the hottest fruit is meant, and where it is not. */
  label: string;
  full: string;
  unit: string;
  number: DayNumber;
  /** The same of the mean fruit. */
  mean: "meanMax_C" | "overBurn_h" | "overHot_h" | "overWatch_h";
  hook: string;
}

/** The four numbers of the hottest fruit, most telling first. */
export function dayRows(): DayRow[] {
  const [watch, hot, burn] = limits.value;
  const over = (limit: Limit, number: DayNumber, mean: DayRow["mean"], hook: string): DayRow => {
    const words = { limit: text(show(limit.temperature_C, "degC", units.value, 0)) };
    return { label: t("over", words), full: t("hottest.over", words), unit: "h", number, mean, hook };
  };
  return [
    { label: t("hottest"), full: t("hottest"), unit: "degC", number: "hottest_C", mean: "meanMax_C", hook: "hottest" },
    over(burn, "hottestOverBurn_h", "overBurn_h", "overBurn"),
    over(hot, "hottestOverHot_h", "overHot_h", "overHot"),
    over(watch, "hottestOverWatch_h", "overWatch_h", "overWatch"),
  ];
}

export function DayNumbers({ option }: { option: number }) {
  const base = compared.value;
  const differs = optionCount.value > 1 && option !== base;
  const side = worse(optionSoon(option), "hottest_C")?.side.compass;
  const baseSide = worse(optionSoon(base), "hottest_C")?.side.compass;
  const to = baseSide === side || !baseSide ? t("numbers.to", { letter: letter(base) }) : t("numbers.toSide", { letter: letter(base), side: sharedWord(baseSide) });
  return (
    <div class="day">
      {side && <p class="small">{t("numbers.worse", { side: sharedWord(side) })}</p>}
      <dl class="numbers">
        {dayRows().map(({ label, full, unit, number, hook }) => {
          const own = worse(optionSoon(option), number);
          const other = differs ? worse(optionSoon(base), number) : undefined;
          return (
            <div key={number} class="tile">
              <dt>
                <WhyButton option={option} number={number} label={label} spoken={full} hook={hook} />
              </dt>
              <dd class="figure">
                <Quantity value={own?.value} unit={unit} hook={optionHook(option, hook)} follows nearly={isNearly(option, number)} />
              </dd>
              {own && <DayRange option={option} number={number} unit={unit} value={own.value} hook={`${hook}-range`} />}
              {own && optionCount.value > 1 && !differs && <dd class="difference" />}
              {own && other && <Difference value={own.value - other.value} unit={unit === "degC" ? "K" : unit} to={to} nearly={isNearly(option, number) || isNearly(base, number)} />}
            </div>
          );
        })}
      </dl>
    </div>
  );
}

/** The two most telling numbers of an option, for where its column is not shown. */
export function DayInShort({ option }: { option: number }) {
  return (
    <span class="day-short follows">
      {dayRows()
        .slice(0, 2)
        .map(({ label, unit, number }) => {
          const own = worse(optionSoon(option), number);
          return (
            own && (
              <span key={number}>
                <span class="note">{label}</span> {isNearly(option, number) && "≈\u202f"}
                {text(show(own.value, unit, units.value))}
              </span>
            )
          );
        })}
    </span>
  );
}

/** The name of a number, which opens how it comes about. */
function WhyButton({ option, number, label, spoken, hook }: { option: number; number: DayNumber; label: string; spoken: string; hook: string }) {
  const open = explained.value?.option === option && explained.value.number === number;
  const press = () => {
    sheet.value = null;
    explained.value = open ? null : { option, number };
  };
  return <Button class="why" label={label} spoken={t("why", { label: spoken, letter: letter(option) })} expanded={open} onPress={press} hook={optionHook(option, `${hook}-why`)} />;
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
function Difference({ value, unit, to, nearly }: { value: number; unit: string; to: string; nearly: boolean }) {
  return (
    <dd class="difference">
      <Quantity value={value} unit={unit} difference follows nearly={nearly} /> <span class="note">{to}</span>
    </dd>
  );
}

/** Both sides at the chosen hour, right under the picture of that hour. */
export function HourNumbers({ option }: { option: number }) {
  const result = sightedNow.value?.faces[option] ? optionSoon(option) : optionResult(option);
  const i = instant.value;
  const row = (shown: ShownSide) => {
    const now = atHour(option, shown);
    const cell = (hook: string, value: number, unit: string) => (
      <td>
        <Quantity value={value} unit={unit} hook={optionHook(option, `${shown.place}-${hook}`)} follows nearly={now.nearly} />
      </td>
    );
    return (
      <tr key={shown.place}>
        <th scope="row">
          <WhyHourButton option={option} shown={shown} />
        </th>
        {cell("lit", now.litShare, "share")}
        {cell("mean", now.mean_C, "degC")}
        {cell("hottest", now.hottest_C, "degC")}
      </tr>
    );
  };
  return (
    <table class="now">
      <caption class="visually-hidden">{t("now", { letter: letter(option) })}</caption>
      <thead>
        <tr>
          <th scope="col">{t("sides.atHour", { hour: clock((i * step_min) / 60) })}</th>
          <th scope="col">{t("lit")}</th>
          <th scope="col">{t("mean")}</th>
          <th scope="col">{t("hottest")}</th>
        </tr>
      </thead>
      <tbody>
        {(result ? sidesInOrder(result) : []).map(row)}
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
        {dayRows().map(({ full, unit, number, mean, hook }) => (
          <tr key={number}>
            <th scope="row">{full}</th>
            {sides.map(({ side, place }) => {
              const own = optionHook(option, `${place}-${hook === "hottest" ? "dayHottest" : hook}`);
              return (
                <td key={place}>
                  <Quantity value={side.summary[number]} unit={unit} hook={own} follows />
                  {number === "hottest_C" && <span class="when"> {t("at", { hour: clock(side.summary.hottestAt_h) })}</span>}
                  <span class="note">
                    {t(unit === "h" ? "mean.hours" : "mean")} <Quantity value={side.summary[mean]} unit={unit} hook={`${own}-mean`} />
                  </span>
                </td>
              );
            })}
          </tr>
        ))}
        <tr>
          <th scope="row">{t("atRisk")}</th>
          {sides.map(({ side, place }) => (
            <td key={place}>
              <Quantity value={side.summary.atRisk} unit="share" hook={optionHook(option, `${place}-atRisk`)} follows />
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  );
}
