/** The day of the scenario: a design day by its numbers, or a measured day of a weather file. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { effectiveNumber, effectiveText } from "../document.ts";
import { isMeasured } from "../measured-day.ts";
import type { Fault, WeatherContents, WeatherDay } from "../messages.ts";
import { faultText } from "../sentences.ts";
import { backToDesignDay, fileHovers, scenario, sealGesture, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { clockName, compassPoint, coordinate, dayMonth, formatNumber, longDate, monthYear, show, text } from "../units.ts";
import { openFile, openWeatherFile, reading, refused, takeDayOfFile, takenDay } from "../weather-file.ts";
import { Button } from "./button.tsx";
import { DateField } from "./choice.tsx";
import { NumberField } from "./field.tsx";
import { Group, Rows } from "./group.tsx";
import { NormalsForm } from "./weather-normals.tsx";
import { Preview } from "./weather-preview.tsx";
import { TableForm } from "./weather-table.tsx";

export function WeatherGroups() {
  return (
    <>
      {isMeasured(scenario.value) ? <MeasuredDay /> : <DesignDay />}
      <WeatherFile />
    </>
  );
}

function DesignDay() {
  return (
    <Group title="group.day">
      <DateField path={["weather", "date"]} />
      <Rows base={["weather"]} rows={[["airMax_C"], ["airMin_C"], ["dewPoint_C"], ["wind_ms"]]} />
      <NumberField path={["weather", "windFrom_deg"]} words={compassPoint} />
    </Group>
  );
}

/** A measured day is told, not edited: its hours are what the file has. */
function MeasuredDay() {
  const document = scenario.value;
  const [date, source] = [effectiveText(document, ["weather", "date"]), effectiveText(document, ["weather", "source"])];
  const temperature = (field: string) => text(show(effectiveNumber(document, ["weather", field]), "degC", units.value));
  const taken = takenDay.value;
  return (
    <Group title="group.measured">
      <p data-testid="measured-day">
        {t("measured.day", {
          date: longDate(date),
          low: temperature("airMin_C"),
          high: temperature("airMax_C"),
          wind: text(show(effectiveNumber(document, ["weather", "wind_ms"]), "m/s", units.value)),
          direction: compassPoint(effectiveNumber(document, ["weather", "windFrom_deg"])),
        })}
      </p>
      <p>{t("measured.source", { source })}</p>
      {taken?.date === date && taken.source === source && <Notices notices={taken.notices} hook="day-notices" />}
      <div>
        <Button
          label={t("measured.back")}
          onPress={() => {
            backToDesignDay();
            focusLater("field-weather-date"); // what had the focus is gone
          }}
          hook="measured-back"
        />
      </div>
    </Group>
  );
}

function focusLater(id: string): void {
  requestAnimationFrame(() => document.getElementById(id)?.focus({ preventScroll: true }));
}

function WeatherFile() {
  const file = openFile.value;
  return (
    <Group title="group.weatherFile">
      <FileChoice />
      <Refusal />
      <TableForm />
      <p class="status" role="status" data-testid="weather-status">
        {reading.value ? t("file.reading", { name: reading.value }) : file ? t(file.contents.place ? "file.open" : "file.open.nowhere", { name: file.contents.name, place: file.contents.place }) : ""}
      </p>
      {file && (
        <>
          <p class="small" data-testid="weather-summary">
            {placeWords(file.contents)} {spanWords(file.contents)}
          </p>
          <Notices notices={file.notices} hook="weather-notices" />
          <Preview contents={file.contents} />
          <DayChoice contents={file.contents} key={file.contents.name} />
        </>
      )}
      <NormalsForm />
    </Group>
  );
}

/** A button and a place to drop a file on; the whole page takes a dropped file as well. */
function FileChoice() {
  return (
    <div class={`drop ${fileHovers.value ? "hovered" : ""}`}>
      <label class="button file">
        {t(openFile.value ? "file.other" : "file.choose")}
        <input
          class="visually-hidden"
          type="file"
          accept=".epw,.csv,.tmy3,.txt,.dat,.tsv,text/csv,text/plain"
          aria-describedby="weather-file-note"
          data-testid="weather-file"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file) openWeatherFile(file);
            event.currentTarget.value = ""; // the same file can be chosen again once it is mended
          }}
        />
      </label>
      <span class="drop-words">{t("file.drop")}</span>
      <p class="small" id="weather-file-note">
        {t("file.note")}
      </p>
    </div>
  );
}

/** What was refused and why; everything else stays as it was. */
function Refusal() {
  const now = refused.value;
  if (!now) return null;
  return (
    <div class="notice faults" role="alert" data-testid="weather-faults">
      <p>{t(now.what === "file" ? "file.refused" : "day.refused", { name: now.name })}</p>
      {now.reason ? <p class="fault">{t("file.unreadable", { reason: now.reason })}</p> : <FaultList faults={now.faults} />}
      <p class="small">{t("file.kept")}</p>
    </div>
  );
}

function FaultList({ faults }: { faults: readonly Fault[] }) {
  return (
    <ul class="fault-list">
      {faults.map((fault, i) => (
        <li key={i}>{faultText(fault, units.value)}</li>
      ))}
    </ul>
  );
}

/** So many notices stand open; more are counted and open on demand. */
const fewNotices = 3;

function Notices({ notices, hook }: { notices: readonly Fault[]; hook: string }) {
  if (notices.length === 0) return null;
  return (
    <div class="notices" data-testid={hook}>
      <FaultList faults={notices.slice(0, fewNotices)} />
      {notices.length > fewNotices && (
        <details>
          <summary>{t("notices.more", { count: notices.length - fewNotices })}</summary>
          <FaultList faults={notices.slice(fewNotices)} />
        </details>
      )}
    </div>
  );
}

function placeWords(contents: WeatherContents): string {
  return t("file.place", {
    format: tOr(`file.format.${contents.format}`, contents.format),
    latitude: coordinate(contents.latitude_deg, "latitude"),
    longitude: coordinate(contents.longitude_deg, "longitude"),
    elevation: text(show(contents.elevation_m, "m", units.value, 0)),
    clock: clockName(contents.utcOffset_h),
  });
}

function spanWords({ days }: WeatherContents): string {
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return t("file.noDays");
  const years = days.map(({ year }) => year);
  const [oldest, newest] = [Math.min(...years), Math.max(...years)];
  const values = { days: formatNumber(days.length, 0), from: dayMonth(first.month, first.day), to: dayMonth(last.month, last.day) };
  return oldest === newest ? t("file.span", { ...values, year: oldest }) : t("file.span.years", { ...values, oldest, newest });
}

/** A month of the file: a typical year takes each from a year of its own. */
const monthOf = ({ year, month }: WeatherDay) => `${year}-${month}`;

/** The hottest day at a press, or any day of the file; only days that the file has can be chosen. */
function DayChoice({ contents }: { contents: WeatherContents }) {
  const { days, hottest } = contents;
  const used = usedDay(contents);
  const looked = useSignal<string | null>(null);
  const month = looked.value ?? monthOf(used ?? hottest ?? (days[0] as WeatherDay));
  const months = [...new Map(days.map((day) => [monthOf(day), day])).entries()];
  const inMonth = days.filter((day) => monthOf(day) === month);
  if (!days.length) return null;
  return (
    <div class="day-choice">
      {hottest && (
        <Button
          label={t("day.hottest", dayWords(hottest))}
          onPress={() => {
            looked.value = null;
            takeDayOfFile(hottest.month, hottest.day);
          }}
          hook="weather-hottest"
        />
      )}
      <label class="day-select">
        <span class="field-label">{t("day.month")}</span>
        <select class="select" value={month} onChange={(event) => (looked.value = event.currentTarget.value)} data-testid="weather-month">
          {months.map(([key, day]) => (
            <option key={key} value={key}>
              {monthYear(day.year, day.month)}
            </option>
          ))}
        </select>
      </label>
      <DaySelect days={inMonth} used={used && monthOf(used) === month ? used : undefined} />
    </div>
  );
}

/** The days of a month with their highest temperature; going through them is one step. */
function DaySelect({ days, used }: { days: WeatherDay[]; used: WeatherDay | undefined }) {
  const select = useRef<HTMLSelectElement>(null);
  // The options change with the month, and a browser then chooses one of them by itself.
  useEffect(() => {
    if (select.current) select.current.value = used ? String(used.day) : "";
  });
  return (
    <label class="day-select">
      <span class="field-label">{t("day.day")}</span>
      <select
        ref={select}
        class="select"
        onChange={(event) => {
          const day = days.find((one) => String(one.day) === event.currentTarget.value);
          if (day) takeDayOfFile(day.month, day.day, "weather day");
        }}
        onBlur={sealGesture}
        data-testid="weather-day"
      >
        <option value="" disabled>
          {t("day.choose")}
        </option>
        {days.map((day) => (
          <option key={day.day} value={String(day.day)}>
            {dayWords(day).day}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The day of this file that the scenario is computed by, if it is one of them. */
function usedDay({ name, place, days }: WeatherContents): WeatherDay | undefined {
  const source = effectiveText(scenario.value, ["weather", "source"]);
  // A scenario keeps no more than the beginning of a long source.
  if (!isMeasured(scenario.value) || !(place ? `${name}, ${place}` : name).startsWith(source)) return undefined;
  const [year, month, day] = effectiveText(scenario.value, ["weather", "date"]).split("-").map(Number);
  return days.find((one) => one.year === year && one.month === month && one.day === day);
}

function dayWords({ month, day, airMax_C }: WeatherDay): { day: string } {
  const name = dayMonth(month, day);
  return { day: airMax_C === undefined ? name : t("day.words", { day: name, temperature: text(show(airMax_C, "degC", units.value)) }) };
}
