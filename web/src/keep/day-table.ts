/**
 * The day as a table of comma-separated values (RFC 4180): one line per interval of the simulation, with its
 * start and end (RFC 3339) and the means over it. Columns that the CF conventions have a standard name for carry it.
 */

import { letter } from "../document.ts";
import type { Day, OptionResult, Side } from "../generated/result.ts";

interface Column {
  name: string;
  course: readonly number[];
  /** A direction goes round: its mean lies on the shorter way between both ends. */
  round?: boolean;
}

/** The whole table; a line ends with CRLF. */
export function dayTable(day: Day): string {
  const columns = [...dayColumns(day), ...day.options.flatMap(optionColumns)];
  const lines = [["start", "end", ...columns.map(({ name }) => name)]];
  for (let i = 0; i + 1 < day.hour.length; i++) {
    const [from, to] = [day.hour[i] as number, day.hour[i + 1] as number];
    lines.push([stamp(day, from), stamp(day, to), ...columns.map((column) => String(mean(column, i)))]);
  }
  return lines.map((cells) => cells.map(quoted).join(",") + "\r\n").join("");
}

/** Sun and weather, by their standard names of the CF conventions. */
function dayColumns({ sun, air }: Day): Column[] {
  return [
    { name: "solar_elevation_angle [degree]", course: sun.elevation_deg },
    { name: "solar_azimuth_angle [degree]", course: sun.azimuth_deg, round: true },
    { name: "air_temperature [degree_Celsius]", course: air.temperature_C },
    { name: "dew_point_temperature [degree_Celsius]", course: air.dewPoint_C },
    { name: "wind_speed [m s-1]", course: air.wind_ms },
    { name: "surface_downwelling_shortwave_flux_in_air [W m-2]", course: air.ghi_Wm2 },
    { name: "surface_direct_along_beam_shortwave_flux_in_air [W m-2]", course: air.dni_Wm2 },
    { name: "surface_diffuse_downwelling_shortwave_flux_in_air [W m-2]", course: air.dhi_Wm2 },
  ];
}

function optionColumns(option: OptionResult, index: number): Column[] {
  return option.sides.flatMap((side) => sideColumns(`${letter(index)}_${side.compass.replaceAll("-", "_")}`, side));
}

/** The fruit of one side; no standard names exist for it. */
function sideColumns(of: string, { steps }: Side): Column[] {
  return [
    { name: `${of}_fruit_in_direct_sun [1]`, course: steps.litShare },
    { name: `${of}_sunlight_on_fruit [W m-2]`, course: steps.light_Wm2 },
    { name: `${of}_fruit_surface_mean [degree_Celsius]`, course: steps.mean_C },
    { name: `${of}_fruit_surface_hottest_tenth [degree_Celsius]`, course: steps.hottest_C },
    { name: `${of}_fruit_surface_coolest_tenth [degree_Celsius]`, course: steps.coolest_C },
    { name: `${of}_whole_berry_mean [degree_Celsius]`, course: steps.berry_C },
    { name: `${of}_air_at_fruit [degree_Celsius]`, course: steps.airNear_C },
    { name: `${of}_wind_at_fruit [m s-1]`, course: steps.windNear_ms },
  ];
}

/** The mean over an interval of a course that is straight between its instants. */
function mean({ course, round }: Column, i: number): number {
  const [from, to] = [course[i] as number, course[i + 1] as number];
  if (!round) return (from + to) / 2;
  const turn = ((((to - from) % 360) + 540) % 360) - 180;
  return (from + turn / 2 + 360) % 360;
}

/** An instant of the day in the clock of the site: 2026-07-18T13:05:00-08:00. */
export function stamp({ date, utcOffset_h }: Pick<Day, "date" | "utcOffset_h">, hour: number): string {
  const minutes = Math.round(hour * 60);
  const clock = new Date(Date.parse(`${date}T00:00:00Z`) + minutes * 60_000).toISOString().slice(0, 19);
  const offset = Math.round(Math.abs(utcOffset_h) * 60);
  const two = (n: number) => String(n).padStart(2, "0");
  return `${clock}${utcOffset_h < 0 ? "-" : "+"}${two(Math.floor(offset / 60))}:${two(offset % 60)}`;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
