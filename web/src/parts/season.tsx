/** Hot hours over a season, by option and side: calendars of day and hour, worst days, heat waves, and a table of all days. */

import type { Season } from "../calendar.ts";
import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import { runSeason, season, seasonSpan, seasonSweep } from "../season.ts";
import { limits, optionName } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { dayMonth, show, text } from "../units.ts";
import { Button } from "./button.tsx";
import { Marker } from "./icons.tsx";
import { Calendar } from "./season-calendar.tsx";
import { SeasonTable } from "./season-table.tsx";
import { SweepProgress } from "./sweep-state.tsx";

export function SeasonPart() {
  return (
    <details
      class="season"
      data-testid="season"
      onToggle={(event) => {
        if (!event.currentTarget.open) seasonSpan.value = null;
        else seasonSpan.value ??= { from: "", to: "" };
      }}
    >
      <summary>{t("season")}</summary>
      {seasonSpan.value && <Body />}
    </details>
  );
}

function Body() {
  const known = season.value;
  const fresh = seasonSweep.state.value.phase === "running" || seasonSweep.state.value.phase === "done";
  return (
    <div class="season-body">
      <div class="season-tools">
        <Span known={known} />
        <SweepProgress sweep={seasonSweep} hook="season-state" run={runSeason} />
      </div>
      {known && (
        <div class={fresh ? "" : "pending"}>
          <Waves known={known} />
          <Key />
          {known.calendar.map((_, option) => (
            <OptionSeason key={option} known={known} option={option} />
          ))}
          <SeasonTable known={known} />
        </div>
      )}
    </div>
  );
}

/** The first and the last day; a season runs from fruit set to harvest, as far as a weather file has it, unless they say otherwise. */
function Span({ known }: { known: Season | null }) {
  const span = seasonSpan.value ?? { from: "", to: "" };
  const [first, last] = [known?.days[0]?.date ?? "", known?.days.at(-1)?.date ?? ""];
  const end = (key: "from" | "to", date: string) => (
    <label>
      {t(`season.${key}`)}{" "}
      <input
        class="date"
        type="date"
        value={date}
        onChange={(event) => {
          const day = event.currentTarget.value.slice(5);
          if (day) seasonSpan.value = { from: first.slice(5), to: last.slice(5), [key]: day };
        }}
        data-testid={`season-${key}`}
      />
    </label>
  );
  return (
    <>
      {end("from", first)}
      {end("to", last)}
      {(span.from || span.to) && <Button label={t("season.all")} onPress={() => (seasonSpan.value = { from: "", to: "" })} hook="season-all" />}
    </>
  );
}

/** A date, of whatever year, as day and month. */
export function dayWords(date: string): string {
  const [, month, day] = date.split("-").map(Number);
  return dayMonth(month ?? 1, day ?? 1);
}

function Waves({ known: { whole } }: { known: Season }) {
  if (!whole) return null;
  return (
    <ul class="season-waves" data-testid="season-waves">
      {whole.waves.map((wave) => (
        <li key={wave.from}>
          {t("season.wave", { days: wave.days, from: dayWords(wave.from), to: dayWords(wave.to), air: text(show(wave.airMax_C, "degC", units.value)) })}
        </li>
      ))}
      {!whole.waves.length && <li>{t("season.noWave")}</li>}
    </ul>
  );
}

function Key() {
  const [, hot, burn] = limits.value.map((limit) => text(show(limit.temperature_C, "degC", units.value, 0)));
  return <p class="note">{t("season.key", { hot: hot ?? "", burn: burn ?? "" })}</p>;
}

function OptionSeason({ known, option }: { known: Season; option: number }) {
  return (
    <section class="season-option">
      <h3>
        <span class="letter">
          <Marker option={option} />
          {letter(option)}
        </span>{" "}
        {answer.value ? optionName(answer.value.document, option) : ""}
      </h3>
      <Calendar known={known} option={option} side={0} />
      <Calendar known={known} option={option} side={1} />
    </section>
  );
}
