/** The compass of a pane, north up as on a map: where one looks from, how the rows run and where the sun stands. */

import { effectiveNumber } from "../document.ts";
import { answer } from "../engine.ts";
import { seenFrom } from "../looks.ts";
import { instant, scenario } from "../store.ts";
import { t } from "../text.ts";
import { compassPoint, formatNumber } from "../units.ts";

const radius = 26;
const letterRadius = 34;

/** A point of the compass in a direction and at a distance from the middle. */
function place(bearing_deg: number, distance: number): { x: number; y: number } {
  const angle = (bearing_deg * Math.PI) / 180;
  return { x: distance * Math.sin(angle), y: -distance * Math.cos(angle) };
}

export function Compass({ option }: { option: number }) {
  const from = seenFrom(option);
  const sun = answer.value?.day.sun;
  if (from === undefined) return null;
  const elevation = sun?.elevation_deg[instant.value] ?? Number.NaN;
  const azimuth = sun?.azimuth_deg[instant.value] ?? Number.NaN;
  const up = elevation > 0;
  const rows = effectiveNumber(scenario.value, ["options", option, "rows", "azimuth_deg"]);
  const north = place(0, letterRadius);
  // The middle is the zenith and the rim the horizon.
  const spot = place(azimuth, radius * (1 - Math.max(0, elevation) / 90));
  const rim = place(azimuth, radius);
  const words = !sun ? "" : up ? t("compass.sun", { direction: compassPoint(azimuth), elevation: `${formatNumber(elevation, 0)}°` }) : t("compass.night");
  return (
    <svg class="compass" viewBox="-40 -40 80 80" role="img" aria-label={t("compass", { direction: compassPoint(from + 180), sun: words })}>
      <circle class="compass-ground" r="40" />
      <circle class="compass-face" r={radius} />
      <g transform={`rotate(${rows})`}>
        <path class="compass-rows" d="M-9-14V14M0-18V18M9-14V14" />
      </g>
      {[90, 180, 270].map((azimuth_deg) => {
        const [a, b] = [place(azimuth_deg, radius), place(azimuth_deg, radius + 4)];
        return <line key={azimuth_deg} class="compass-tick" x1={a.x} y1={a.y} x2={b.x} y2={b.y} />;
      })}
      <text class="compass-north" x={north.x} y={north.y}>
        {t("point.N")}
      </text>
      <path class="compass-eye" transform={`rotate(${from})`} d={`M0-${radius - 13}L-8-${radius + 4}H8z`} />
      {up && <line class="compass-beam" x1={rim.x} y1={rim.y} x2={spot.x} y2={spot.y} />}
      {up && <circle class="compass-sun" cx={spot.x} cy={spot.y} r="5" />}
    </svg>
  );
}
