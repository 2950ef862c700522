/**
 * The hottest fruit of every option over the day, as one drawing for paper and files. It carries all its looks in
 * itself, since a file has no style sheet; options differ by dash and letter, not by colour.
 */

import { letter } from "../document.ts";
import { answer } from "../engine.ts";
import { limits, optionName } from "../shown.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { clock, longDate, show, text } from "../units.ts";

const size = { width: 720, height: 300, left: 48, right: 40, top: 16, bottom: 36 };
const ink = "#1e2a20";
const muted = "#566052";
const sun = "#b36b00";
const dashes = ["", "7 3", "2 3", "9 3 2 3"];

/** Room between the lowest and highest value and the ends of the scale [K]. */
const room_K = 2;

export function DayChart({ titled }: { titled?: boolean }) {
  const now = answer.value;
  if (!now) return null;
  const { day } = now;
  const courses = day.options.map(({ sides }) => day.hour.map((_, i) => Math.max(...sides.map((side) => side.steps.hottest_C[i] as number))));
  const all = [...courses.flat(), ...day.air.temperature_C];
  const [low, high] = [Math.min(...all) - room_K, Math.max(...all, limits.value[2].temperature_C) + room_K];
  const head = titled ? 24 * (2 + Math.ceil(day.options.length / 2)) : 0;
  const x = (hour: number) => size.left + ((size.width - size.left - size.right) * hour) / 24;
  const y = (value: number) => head + size.top + ((size.height - size.top - size.bottom) * (high - value)) / (high - low);
  const line = (course: readonly number[]) => course.map((value, i) => `${i ? "L" : "M"}${x(day.hour[i] as number).toFixed(1)} ${y(value).toFixed(1)}`).join("");
  const temperature = (value: number) => text(show(value, "degC", units.value, 0));
  const marks = Array.from({ length: Math.floor(high / 10) - Math.ceil(low / 10) + 1 }, (_, i) => 10 * (Math.ceil(low / 10) + i));
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class="day-chart"
      width={size.width}
      height={size.height + head}
      viewBox={`0 0 ${size.width} ${size.height + head}`}
      role="img"
      aria-label={t("chart.label")}
      font-family="Liberation Sans, Helvetica Neue, Arial, sans-serif"
      font-size="12"
      fill={ink}
    >
      {titled && <Title name={day.name} date={day.date} options={day.options.map((_, i) => `${letter(i)}: ${optionName(now.document, i)}`)} />}
      {marks.map((mark) => (
        <g key={mark}>
          <line x1={size.left} x2={size.width - size.right} y1={y(mark)} y2={y(mark)} stroke="#dedacd" />
          <text x={size.left - 6} y={y(mark) + 4} text-anchor="end" fill={muted}>
            {temperature(mark)}
          </text>
        </g>
      ))}
      {[0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour) => (
        <text key={hour} x={x(hour)} y={head + size.height - size.bottom + 16} text-anchor="middle" fill={muted}>
          {clock(hour)}
        </text>
      ))}
      <text x={x(12)} y={head + size.height - 4} text-anchor="middle" fill={muted}>
        {t("chart.hours")}
      </text>
      {limits.value.map(({ key, temperature_C }) => (
        <g key={key}>
          <line x1={x(0)} x2={x(24)} y1={y(temperature_C)} y2={y(temperature_C)} stroke={muted} stroke-width="0.75" stroke-dasharray="1 2" />
          <text x={x(0) + 4} y={y(temperature_C) - 3} fill={muted}>
            {t("limit.line", { limit: temperature(temperature_C), name: t(`limit.${key}`) })}
          </text>
        </g>
      ))}
      <path d={line(day.air.temperature_C)} fill="none" stroke={sun} stroke-width="1.5" />
      <text x={x(24) + 4} y={y(day.air.temperature_C.at(-1) as number) + 12} fill={sun}>
        {t("chart.air")}
      </text>
      {courses.map((course, i) => {
        const peak = course.indexOf(Math.max(...course));
        return (
          <g key={i}>
            <path d={line(course)} fill="none" stroke={ink} stroke-width="1.75" stroke-dasharray={dashes[i]} />
            <text x={x(day.hour[peak] as number)} y={y(course[peak] as number) - 4} text-anchor="middle" font-weight="600">
              {letter(i)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

function Title({ name, date, options }: { name: string; date: string; options: string[] }) {
  return (
    <g>
      <text x={size.left} y={20} font-size="16" font-weight="600">
        {t("chart.title", { name, date: longDate(date) })}
      </text>
      {options.map((option, i) => (
        <g key={option}>
          <line x1={size.left + 320 * (i % 2)} x2={size.left + 320 * (i % 2) + 28} y1={40 + 20 * (i >> 1)} y2={40 + 20 * (i >> 1)} stroke={ink} stroke-width="1.75" stroke-dasharray={dashes[i]} />
          <text x={size.left + 320 * (i % 2) + 36} y={44 + 20 * (i >> 1)}>
            {option}
          </text>
        </g>
      ))}
    </g>
  );
}
