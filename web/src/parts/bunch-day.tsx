/** The day of the bunch that was tapped: both sides as lines over the hours with the limits, and in words. */

import { bunchDay, type FaceDay, hoursOver } from "../bunch.ts";
import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import { optionHook } from "../hooks.ts";
import { onScale } from "../scales.ts";
import { limits, optionResult } from "../shown.ts";
import { instant, lastInstant, units } from "../store.ts";
import { t } from "../text.ts";
import { clock, formatNumber, show, text } from "../units.ts";
import { sharedWord } from "../words.ts";
import { tapBunch, tapped, way } from "../ways.ts";
import { Button } from "./button.tsx";

const width = 288;
const height = 96;

export function BunchDay({ option }: { option: number }) {
  const chosen = tapped.value;
  const hour = answer.value?.day.hour;
  const result = optionResult(option);
  if (chosen?.option !== option || !hour || !result) return null;
  const faces = answer.value?.faces[option];
  const count = faces ? faces.surface.length / hour.length / 2 : 0;
  const day = bunchDay(faces, hour, chosen.bunch);
  if (!day) return null;
  const step = (by: number) => tapBunch(option, (chosen.bunch + by + count) % count);
  const title = t("bunch", { number: chosen.bunch + 1, count });
  return (
    <section class="bunch-day" aria-label={t("bunch.label", { letter: letter(option) })} data-testid={optionHook(option, "bunch")}>
      <div class="bunch-head">
        <strong aria-live="polite">{title}</strong>
        <Button label={t("bunch.before")} class="quiet" onPress={() => step(-1)} />
        <Button label={t("bunch.next")} class="quiet" onPress={() => step(1)} hook={optionHook(option, "bunch-next")} />
        {way.value !== "outlook" && <Button label={t("bunch.outlook")} class="quiet" onPress={() => (way.value = "outlook")} />}
        <Button label={t("bunch.close")} class="quiet" onPress={() => tapBunch(option, -1)} />
      </div>
      <Courses day={day} />
      <ul class="bunch-words">
        {day.map((face, i) => (
          <li key={i}>
            <svg class="bunch-sample" viewBox="0 0 24 6" aria-hidden="true">
              <path class={`course course-${i}`} d="M0 3H24" />
            </svg>
            {faceWords(face, sharedWord(result.sides[i]?.compass ?? ""), hour)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function faceWords(face: FaceDay, compass: string, hour: readonly number[]): string {
  const system = units.value;
  const burn = limits.value[2];
  const degrees = (value: number) => text(show(value, "degC", system, 1));
  return t("bunch.face", {
    side: compass,
    now: degrees(face.course[instant.value] ?? Number.NaN),
    sun: face.lit[instant.value] ? t("bunch.lit") : t("bunch.shaded"),
    hottest: degrees(face.hottest_C),
    at: clock(face.hottestAt_h),
    lit: formatNumber(face.lit_h, 1),
    over: formatNumber(hoursOver(hour, face.course, burn.temperature_C), 1),
    limit: text(show(burn.temperature_C, "degC", system, 0)),
  });
}

/** Both courses over the day; the words below say the same. */
function Courses({ day }: { day: readonly FaceDay[] }) {
  const y = (temperature_C: number) => height * (1 - onScale(temperature_C));
  const x = (i: number) => (width * i) / lastInstant;
  return (
    <svg class="bunch-courses" viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
      {limits.value.map(({ key, temperature_C }) => (
        <line key={key} class={`course-limit limit-${key}`} x1={0} x2={width} y1={y(temperature_C)} y2={y(temperature_C)} />
      ))}
      {day.map(({ course }, i) => (
        <polyline key={i} class={`course course-${i}`} points={course.map((value, k) => `${x(k).toFixed(1)},${y(value).toFixed(1)}`).join(" ")} />
      ))}
      <line class="course-now" x1={x(instant.value)} x2={x(instant.value)} y1={0} y2={height} />
    </svg>
  );
}
