/** The calendar of one side of an option: days across, hours down, coloured by the hottest fruit, with limits as outlines. */

import { useEffect, useRef } from "preact/hooks";
import { changedDays, type Drawn, type Season, type SideDay } from "../calendar.ts";
import { letter } from "../document.ts";
import { temperatureColour } from "../scales.ts";
import { limits, optionResult } from "../shown.ts";
import { units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { monthShort, show, text } from "../units.ts";
import { Quantity } from "./quantity.tsx";
import { dayWords } from "./season.tsx";

/** Size of a cell of the canvas, which the page stretches [pixels]: an outline is then about as wide as it is high. */
const cellOf = (days: number) => ({ width: Math.max(6, Math.round(640 / Math.max(days, 1))), height: 6 });

interface CalendarProps {
  known: Season;
  option: number;
  side: 0 | 1;
}

export function Calendar({ known, option, side }: CalendarProps) {
  const days = known.calendar[option]?.[side] ?? [];
  const sums = known.whole?.options[option]?.[side];
  const compass = sums?.compass ?? optionResult(option)?.sides[side]?.compass ?? "";
  const hook = `season-${letter(option)}-${side ? "right" : "left"}`;
  const place = (day: number) => ({ left: `${(100 * day) / days.length}%` });
  return (
    <figure class="calendar" data-testid={hook} data-days={days.filter(Boolean).length}>
      <figcaption>
        <span>{t("season.side", { compass })}</span>
        {sums && (
          <span class="calendar-sums">
            {t("season.over", { limit: text(show(limits.value[1].temperature_C, "degC", units.value, 0)) })} <Quantity value={sums.overHot_h} unit="h" hook={`${hook}-overHot`} /> · {t("season.heat")}{" "}
            <Quantity value={sums.heat_K_h} unit="K h" digits={0} hook={`${hook}-heat`} /> · {t("season.risk")} <Quantity value={sums.atRisk} unit="share" hook={`${hook}-risk`} />
          </span>
        )}
      </figcaption>
      <div class="calendar-plot">
        <div class="calendar-hours" aria-hidden="true">
          {[0, 6, 12, 18, 24].map((hour) => (
            <span key={hour} style={{ top: `${(100 * hour) / 24}%` }}>
              {hour}
            </span>
          ))}
        </div>
        <div class="calendar-field">
          <div class="calendar-marks" aria-hidden="true">
            {known.whole?.waves.map((wave) => {
              const from = known.days.findIndex(({ date }) => date === wave.from);
              return <span key={wave.from} class="calendar-wave" style={{ ...place(from), width: `${(100 * wave.days) / days.length}%` }} />;
            })}
            {sums?.worst.map((day) => (
              <span key={day} class="calendar-worst" style={place(day + 0.5)}>
                ▾
              </span>
            ))}
          </div>
          <Cells days={days} label={t("season.calendar", { letter: letter(option), compass })} />
          <Runs names={known.days.map(({ date }) => monthShort(Number(date.slice(5, 7))))} />
          <Runs names={known.days.map(({ stage }) => tOr(`season.stage.${stage}`, stage))} />
        </div>
      </div>
      {sums && <p class="note">{sums.worst.length ? t("season.worst", { days: sums.worst.map((day) => dayWords(known.days[day]?.date ?? "")).join(", ") }) : t("season.noWorst")}</p>}
    </figure>
  );
}

/** Runs of days of one name under the days, such as months. */
function Runs({ names }: { names: readonly string[] }) {
  const begins = names.flatMap((name, day) => (name === names[day - 1] ? [] : [day]));
  const share = (days: number) => `${(100 * days) / names.length}%`;
  return (
    <div class="calendar-dates">
      {begins.map((day, i) => (
        <span key={day} style={{ left: share(day), width: share((begins[i + 1] ?? names.length) - day) }}>
          {names[day]}
        </span>
      ))}
    </div>
  );
}

function Cells({ days, label }: { days: readonly (SideDay | undefined)[]; label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const drawn = useRef<Drawn>({ days: [], hot: Number.NaN, burn: Number.NaN });
  const cell = cellOf(days.length);
  const [, hot = 0, burn = 0] = limits.value.map(({ temperature_C }) => temperature_C);
  useEffect(() => {
    const pen = canvas.current?.getContext("2d");
    if (!pen) return;
    changedDays({ days, hot, burn }, drawn.current).forEach((day) => drawDay(pen, days, day, [hot, burn]));
    drawn.current = { days, hot, burn };
  }, [days, hot, burn]);
  return <canvas ref={canvas} class="calendar-cells" width={days.length * cell.width} height={24 * cell.height} role="img" aria-label={label} />;
}

/** Colours the hours of a day, and outlines those over the hot limit in white and over the burn limit in black. */
function drawDay(pen: CanvasRenderingContext2D, days: readonly (SideDay | undefined)[], day: number, over: readonly [number, number]): void {
  const cell = cellOf(days.length);
  const at = (day: number, hour: number) => days[day]?.hourly_C[hour] ?? -Infinity;
  const x = day * cell.width;
  pen.clearRect(x, 0, cell.width, pen.canvas.height);
  days[day]?.hourly_C.forEach((temperature, hour) => {
    pen.fillStyle = `rgb(${temperatureColour(temperature).join()})`;
    pen.fillRect(x, hour * cell.height, cell.width, cell.height);
  });
  over.forEach((limit, i) => {
    pen.fillStyle = i === 0 ? "#fff" : "#000";
    for (let hour = 0; hour < 24; hour++) {
      if (at(day, hour) <= limit) continue;
      const y = hour * cell.height;
      if (at(day - 1, hour) <= limit) pen.fillRect(x, y, 1, cell.height);
      if (at(day + 1, hour) <= limit) pen.fillRect(x + cell.width - 1, y, 1, cell.height);
      if (at(day, hour - 1) <= limit) pen.fillRect(x, y, cell.width, 1);
      if (at(day, hour + 1) <= limit) pen.fillRect(x, y + cell.height - 1, cell.width, 1);
    }
  });
}
