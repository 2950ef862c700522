/** The sun ribbon: the height of the sun and the air over the day, with the hour as a slider on it. */

import { compassPoint, clock, clockName, formatNumber, hourOf, show, text } from "../units.ts";
import { effectiveNumber } from "../document.ts";
import { answer } from "../engine.ts";
import type { Day } from "../generated/result.ts";
import { instant, lastInstant, playing, scenario, setInstant, step_min, units } from "../store.ts";
import { t } from "../text.ts";
import { togglePlay } from "../play.ts";
import { Button } from "./button.tsx";
import { PauseIcon, PlayIcon } from "./icons.tsx";
import { HourLine, hourPlace } from "./hour-line.tsx";
import { HourAxis } from "./strip.tsx";

const hourInSteps = 60 / step_min;
/** The drawing's own units: one per instant across, so that an instant is a place. */
const height = 100;

/** The air is named over its first hours, where the courses lie low. */
const quietHours = 6 * hourInSteps;

/** Place of a sun height from the top; below the horizon it runs along the bottom. */
const sunY = (elevation_deg: number) => height - (Math.max(0, elevation_deg) / 90) * (height - 8);

export function SunRibbon() {
  const day = answer.value?.day;
  return (
    <section class="ribbon" aria-label={t("ribbon")} data-testid="ribbon">
      <ChosenHour />
      <div class="ribbon-track">
        <div class="ribbon-plot">
          {day && <Courses day={day} />}
          <HourLine />
          <HourSun />
        </div>
        <HourSlider />
        <HourAxis every={3} />
      </div>
    </section>
  );
}

// What follows the hour is kept apart from the courses, which are drawn once per answer.

function ChosenHour() {
  const day = answer.value?.day;
  const i = instant.value;
  return (
    <div class="ribbon-time">
      <Button label={t(playing.value ? "pause" : "play")} onPress={togglePlay} hook="play" class="play">
        {playing.value ? <PauseIcon /> : <PlayIcon />}
      </Button>
      <div>
        <input
          class="hour"
          type="text"
          inputMode="numeric"
          autoComplete="off"
          aria-label={t("hour.typed")}
          value={clock((i * step_min) / 60)}
          data-testid="hour"
          data-value={String((i * step_min) / 60)}
          onChange={(event) => {
            const hour = hourOf(event.currentTarget.value);
            playing.value = false;
            if (Number.isFinite(hour)) setInstant(hour * hourInSteps);
            event.currentTarget.value = clock((instant.peek() * step_min) / 60);
          }}
        />
        <p class="hour-note">{t("hour.clock", { clock: clockName(effectiveNumber(scenario.value, ["site", "utcOffset_h"])) })}</p>
      </div>
      <p class="hour-facts">
        {day && <span>{sunWords(day, i)}</span>}
        {day && <span>{airWords(day, i)}</span>}
        {day && <span class="air-today">{airToday(day)}</span>}
      </p>
    </div>
  );
}

function HourSun() {
  const elevation = answer.value?.day.sun.elevation_deg[instant.value];
  if (elevation === undefined) return null;
  return <span class="hour-sun" aria-hidden="true" style={{ left: hourPlace(), top: `${sunY(elevation)}%` }} />;
}

function HourSlider() {
  const day = answer.value?.day;
  const i = instant.value;
  const hour = clock((i * step_min) / 60);
  return (
    <input
      class="hour-slider"
      type="range"
      min={0}
      max={lastInstant}
      step={1}
      value={i}
      aria-label={t("hour")}
      aria-valuetext={day ? t("hour.text", { hour, sun: sunWords(day, i), air: airWords(day, i) }) : hour}
      data-testid="hour-slider"
      onInput={(event) => {
        playing.value = false;
        setInstant(Number(event.currentTarget.value));
      }}
      onKeyDown={(event) => {
        const to = keyTarget(event.key, day, i);
        if (to === undefined) return;
        event.preventDefault();
        playing.value = false;
        setInstant(to);
      }}
    />
  );
}

/** Page keys move by an hour, Home and End to sunrise and sunset; the arrows are the slider's own. */
function keyTarget(key: string, day: Day | undefined, i: number): number | undefined {
  const polar = !day || day.sun.polar;
  switch (key) {
    case "PageUp":
      return i + hourInSteps;
    case "PageDown":
      return i - hourInSteps;
    case "Home":
      return polar ? 0 : day.sun.rise_h * hourInSteps;
    case "End":
      return polar ? lastInstant : day.sun.set_h * hourInSteps;
  }
  return undefined;
}

function sunWords(day: Day, i: number): string {
  const elevation = day.sun.elevation_deg[i] ?? 0;
  if (elevation <= 0) return t("hour.night");
  return t("hour.sun", { elevation: `${formatNumber(elevation, 0)}°`, direction: compassPoint(day.sun.azimuth_deg[i] ?? 0) });
}

function airWords(day: Day, i: number): string {
  return t("hour.air", { air: text(show(day.air.temperature_C[i] ?? 0, "degC", units.value)) });
}

/** The lowest and the highest air of the day, where they find no room beside the course. */
function airToday({ air: { temperature_C } }: Day): string {
  const end = (value: number) => show(value, "degC", units.value, 0);
  return t("ribbon.today", { span: t("span", { low: end(Math.min(...temperature_C)).value, high: text(end(Math.max(...temperature_C))) }) });
}

/** Both courses. The air has its own scale: from its lowest at the bottom to its highest near the top. */
function Courses({ day }: { day: Day }) {
  const air = day.air.temperature_C;
  const [low, high] = [Math.min(...air), Math.max(...air)];
  const airY = (value: number) => height - 12 - ((value - low) / Math.max(high - low, 1)) * (height - 32);
  const line = (y: (i: number) => number) => air.map((_, i) => `${i ? "L" : "M"}${i} ${y(i).toFixed(2)}`).join("");
  const sun = line((i) => sunY(day.sun.elevation_deg[i] ?? -1));
  const noon = day.sun.elevation_deg.indexOf(Math.max(...day.sun.elevation_deg));
  return (
    <>
      <svg class="courses" viewBox={`0 0 ${lastInstant} ${height}`} preserveAspectRatio="none" aria-hidden="true">
        <path class="sun-area" d={`${sun}L${lastInstant} ${height}L0 ${height}Z`} />
        <path class="sun-course" d={sun} />
        <path class="air-course" d={line((i) => airY(air[i] as number))} />
      </svg>
      <span class="course-label sun-label" aria-hidden="true" style={{ left: `${(100 * noon) / lastInstant}%`, top: `${sunY(day.sun.elevation_deg[noon] ?? 0)}%` }}>
        {t("ribbon.sun", { elevation: `${formatNumber(day.sun.elevation_deg[noon] ?? 0, 0)}°` })}
      </span>
      <span class="course-label air-label" aria-hidden="true" style={{ top: `${Math.min(...air.slice(0, quietHours).map(airY))}%` }}>
        {t("ribbon.air")}{" "}
        <span class="air-reach">{t("span", { low: text(show(low, "degC", units.value, 0)), high: text(show(high, "degC", units.value, 0)) })}</span>
      </span>
      {day.sun.polar && <p class="polar">{t(day.sun.polar === "day" ? "ribbon.polarDay" : "ribbon.polarNight")}</p>}
    </>
  );
}
