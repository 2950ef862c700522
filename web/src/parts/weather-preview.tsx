/** One clear day of the open weather file, to judge it by before a day is used, and what the light says of its clock. */

import type { WeatherContents, WeatherPreview } from "../messages.ts";
import { faultText } from "../sentences.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { clock, dayMonth, show, text } from "../units.ts";

const size = { width: 320, height: 132, left: 4, right: 4, top: 8, bottom: 20 };

export function Preview({ contents }: { contents: WeatherContents }) {
  const { preview, clock: verdict, shifted } = contents;
  if (!preview && shifted) return null;
  return (
    <figure class="preview" data-testid="weather-preview">
      {preview && <Drawing preview={preview} />}
      <figcaption>
        {preview && <Words preview={preview} />}
        {/* A clock that is off stands among the notices above. */}
        {!shifted && <p data-testid="weather-clock">{faultText(verdict, units.value)}</p>}
      </figcaption>
    </figure>
  );
}

/** The same in words and numbers, with the mark of each line. */
function Words({ preview }: { preview: WeatherPreview }) {
  const { day, air_C, ghi_Wm2, elevation_deg } = preview;
  const noon = highest(elevation_deg);
  const temperature = (value: number) => text(show(value, "degC", units.value));
  return (
    <>
      <p>{t("preview.day", { day: dayMonth(day.month, day.day), noon: clock(preview.hour_h[noon] ?? 12) })}</p>
      <ul class="preview-key">
        <li class="light">{t("preview.light", { most: text(show(Math.max(...ghi_Wm2), "W/m2", units.value, 0)) })}</li>
        <li class="air">{t("preview.air", { low: temperature(Math.min(...air_C)), high: temperature(Math.max(...air_C)) })}</li>
        <li class="sun">{t("preview.sun", { most: text(show(elevation_deg[noon] ?? 0, "deg", units.value, 0)) })}</li>
      </ul>
    </>
  );
}

function highest(values: readonly number[]): number {
  return values.indexOf(Math.max(...values));
}

/** Light as an area, air and the sun's height as lines, each from its own lowest to its highest. */
function Drawing({ preview }: { preview: WeatherPreview }) {
  const { hour_h, air_C, ghi_Wm2, elevation_deg } = preview;
  const x = (hour: number) => size.left + ((size.width - size.left - size.right) * hour) / 24;
  const base = size.height - size.bottom;
  const y = (share: number) => base - (base - size.top) * share;
  const line = (share: (i: number) => number) => hour_h.map((hour, i) => `${i ? "L" : "M"}${x(hour).toFixed(1)} ${y(share(i)).toFixed(1)}`).join("");
  const [coolest, warmest] = [Math.min(...air_C), Math.max(...air_C)];
  const [light, sun] = [Math.max(...ghi_Wm2, 1), Math.max(...elevation_deg, 1)];
  const noon = x(hour_h[highest(elevation_deg)] ?? 12);
  return (
    <svg viewBox={`0 0 ${size.width} ${size.height}`} role="img" aria-label={t("preview.label")}>
      <path class="light" d={`${line((i) => (ghi_Wm2[i] ?? 0) / light)}L${x(24)} ${base}L${x(0)} ${base}Z`} />
      <line class="noon" x1={noon} x2={noon} y1={size.top} y2={base} />
      <path class="sun" d={line((i) => Math.max(elevation_deg[i] ?? 0, 0) / sun)} />
      <path class="air" d={line((i) => 0.08 + (0.84 * ((air_C[i] ?? 0) - coolest)) / Math.max(warmest - coolest, 1))} />
      <line class="base" x1={x(0)} x2={x(24)} y1={base} y2={base} />
      {[0, 6, 12, 18, 24].map((hour) => (
        <text key={hour} x={x(hour)} y={size.height - 5} text-anchor={hour === 0 ? "start" : hour === 24 ? "end" : "middle"}>
          {clock(hour)}
        </text>
      ))}
    </svg>
  );
}
