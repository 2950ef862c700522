/** What all papers begin and end with: place and day, the letters of the options, how it was made. */

import { effectiveNumber, effectiveText, type JsonObject, letter, type Path } from "../document.ts";
import { answer } from "../engine.ts";
import { link } from "../keep/link.ts";
import { isMeasured } from "../measured-day.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";
import { clockName, coordinate, longDate, moment, show, text } from "../units.ts";

export function placeAndDay(document: JsonObject): string {
  const of = (path: Path, unit: string, digits?: number) => text(show(effectiveNumber(document, path), unit, units.value, digits));
  const place = t("place", {
    latitude: coordinate(effectiveNumber(document, ["site", "latitude_deg"]), "latitude"),
    longitude: coordinate(effectiveNumber(document, ["site", "longitude_deg"]), "longitude"),
  });
  return [
    place,
    of(["site", "elevation_m"], "m", 0),
    t(isMeasured(document) ? "date.measured" : "date.design", { date: longDate(effectiveText(document, ["weather", "date"])) }),
    t("report.air", { low: of(["weather", "airMin_C"], "degC", 0), high: of(["weather", "airMax_C"], "degC", 0) }),
    t("report.wind", { wind: of(["weather", "wind_ms"], "m/s") }),
    t("hour.clock", { clock: clockName(effectiveNumber(document, ["site", "utcOffset_h"])) }),
  ].join(" · ");
}

export function Head({ options }: { options: number[] }) {
  return (
    <thead>
      <tr>
        <td />
        {options.map((i) => (
          <th key={i} scope="col">
            {letter(i)}
          </th>
        ))}
      </tr>
    </thead>
  );
}

/** Where the scenario comes from, in its own words; of a measured day its file. */
export function sourceNote(document: JsonObject): string {
  return isMeasured(document) ? t("measured.source", { source: effectiveText(document, ["weather", "source"]) }) : effectiveText(document, ["note"]);
}

/** When and with what it was made, and the address that opens it again. */
export function PaperFoot() {
  return (
    <footer>
      <p>{t("report.made", { moment: moment(Date.now()), version: answer.value?.day.modelVersion ?? "" })}</p>
      {link.value && (
        <p class="report-link">
          <a href={link.value}>{link.value}</a>
        </p>
      )}
    </footer>
  );
}
