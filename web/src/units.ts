/**
 * The one formatter of quantities. Everything is stored in SI (°C, hours, degrees); this file alone
 * knows how a quantity reads in metric or US units. A stored value is never converted back, except
 * where a person types one.
 */

import { locale } from "./language.ts";
import { t } from "./text.ts";
import { sharedWord } from "./words.ts";

export type UnitSystem = "metric" | "us";

/** A quantity as it is shown: the number alone and its unit, so that a table can align them. */
export interface Shown {
  value: string;
  unit: string;
}

/** How one unit of the scenario reads in one system: shown = stored · factor + offset. */
interface Reading {
  unit: string;
  factor: number;
  offset: number;
  digits: number;
}

const same = (unit: string, digits: number): Reading => ({ unit, factor: 1, offset: 0, digits });
const times = (unit: string, factor: number, digits: number): Reading => ({ unit, factor, offset: 0, digits });

// Exact by definition: 1 ft = 0.3048 m, 1 in = 2.54 cm, 1 mile = 1609.344 m, 1 lb = 453.59237 g.
const feetPerMetre = 1 / 0.3048;
const inchesPerCentimetre = 1 / 2.54;
const mphPerMetrePerSecond = 3600 / 1609.344;
const ouncesPerGram = 16 / 453.59237;
const poundsPerKilogram = 1 / 0.45359237;
const acresPerHectare = 10000 / 4046.8564224;

/** Readings by the `x-unit` of the scenario's schema. */
const readings: Record<string, { metric: Reading; us: Reading }> = {
  degC: { metric: same("°C", 1), us: { unit: "°F", factor: 1.8, offset: 32, digits: 1 } },
  K: { metric: same("°C", 1), us: times("°F", 1.8, 1) },
  "K h": { metric: same("°C h", 1), us: times("°F h", 1.8, 1) },
  m: { metric: same("m", 2), us: times("ft", feetPerMetre, 2) },
  cm: { metric: same("cm", 1), us: times("in", inchesPerCentimetre, 2) },
  mm: { metric: same("mm", 1), us: times("in", inchesPerCentimetre / 10, 2) },
  cm2: { metric: same("cm²", 0), us: times("in²", inchesPerCentimetre ** 2, 1) },
  "1/m": { metric: same("per m", 1), us: times("per ft", 1 / feetPerMetre, 2) },
  "m2/m": { metric: same("m²/m", 1), us: times("ft²/ft", feetPerMetre, 1) },
  "m/s": { metric: same("m/s", 1), us: times("mph", mphPerMetrePerSecond, 1) },
  g: { metric: same("g", 0), us: times("oz", ouncesPerGram, 1) },
  kg: { metric: same("kg", 1), us: times("lb", poundsPerKilogram, 1) },
  "kg/m": { metric: same("kg/m", 2), us: times("lb/ft", poundsPerKilogram / feetPerMetre, 2) },
  "t/ha": { metric: same("t/ha", 1), us: times("ton/acre", poundsPerKilogram / 2 / acresPerHectare, 1) },
  "m2/ha": { metric: same("m²/ha", 0), us: times("ft²/acre", feetPerMetre ** 2 / acresPerHectare, 0) },
  "m2/kg": { metric: same("m²/kg", 1), us: times("ft²/lb", feetPerMetre ** 2 / poundsPerKilogram, 1) },
  "h/ha": { metric: same("h/ha", 0), us: times("h/acre", 1 / acresPerHectare, 0) },
  "MJ/m2": { metric: same("MJ/m²", 1), us: same("MJ/m²", 1) },
  s: { metric: same("s", 0), us: same("s", 0) },
  count: { metric: same("", 1), us: same("", 1) },
  nodes: { metric: same("", 0), us: same("", 0) },
  "per t": { metric: same("", 0), us: same("", 0) },
  "per ha": { metric: same("", 0), us: same("", 0) },
  deg: { metric: same("°", 1), us: same("°", 1) },
  h: { metric: same("h", 1), us: same("h", 1) },
  "mm/h": { metric: same("mm/h", 1), us: times("in/h", inchesPerCentimetre / 10, 3) },
  "W/m2/K": { metric: same("W/m² per °C", 1), us: times("W/m² per °F", 1 / 1.8, 1) },
  "W/m2": { metric: same("W/m²", 0), us: same("W/m²", 0) },
  "1": { metric: times("%", 100, 0), us: times("%", 100, 0) },
  share: { metric: times("%", 100, 0), us: times("%", 100, 0) },
};

function reading(unit: string, system: UnitSystem): Reading {
  const pair = readings[unit];
  return pair ? pair[system] : same(unit, 2);
}

/** Formats by language and kind: to make one takes longer than to write with it a hundred times. */
const formats = new Map<string, Intl.NumberFormat | Intl.DateTimeFormat>();

function formatOf<F extends Intl.NumberFormat | Intl.DateTimeFormat>(kind: string, make: (language: string) => F): F {
  const key = `${locale()} ${kind}`;
  const known = formats.get(key) as F | undefined;
  if (known) return known;
  const made = make(locale());
  formats.set(key, made);
  return made;
}

function dateFormat(kind: string, parts: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  return formatOf(kind, (language) => new Intl.DateTimeFormat(language, parts));
}

/** A plain number with a real minus sign; signed adds a plus and calls a rounded zero "0.0" without a sign. */
export function formatNumber(value: number, digits: number, signed = false): string {
  const parts = { minimumFractionDigits: digits, maximumFractionDigits: digits, signDisplay: signed ? "exceptZero" : "negative" } as const;
  const format = formatOf(`${digits}${signed}`, (language) => new Intl.NumberFormat(language, parts));
  return format.format(value).replace("-", "\u2212");
}

/** A number with all its digits as the page's language types it, without grouping. */
export function typedNumber(value: number): string {
  return formatOf("typed", (language) => new Intl.NumberFormat(language, { maximumFractionDigits: 20, useGrouping: false })).format(value);
}

/** Shows a stored quantity by its schema unit. */
export function show(value: number, unit: string, system: UnitSystem, digits?: number): Shown {
  const r = reading(unit, system);
  return { value: formatNumber(value * r.factor + r.offset, digits ?? r.digits), unit: r.unit };
}

/** A stored quantity as a plain number in the unit that it is shown in, for drawing. */
export function inUnit(value: number, unit: string, system: UnitSystem): number {
  const r = reading(unit, system);
  return value * r.factor + r.offset;
}

/** Shows a stored quantity with the digits that it has, up to six figures; a share or count stays a plain number. */
export function showPlain(value: number, unit: string, system: UnitSystem): Shown {
  const r = unit === "" || unit === "1" ? same("", 0) : reading(unit, system);
  const shown = Number((value * r.factor + r.offset).toPrecision(6));
  return { value: formatOf("plain", (language) => new Intl.NumberFormat(language, { maximumSignificantDigits: 6, useGrouping: false })).format(shown).replace("-", "\u2212"), unit: r.unit };
}

/** Shows a difference of two stored quantities, signed; a difference of temperatures has no offset. */
export function showDifference(value: number, unit: string, system: UnitSystem, digits?: number): Shown {
  const r = reading(unit, system);
  return { value: formatNumber(value * r.factor, digits ?? r.digits, true), unit: r.unit };
}

/** Value and unit as one text; degrees of angle and percent take no space. */
export function text(shown: Shown): string {
  const space = shown.unit === "°" || shown.unit === "" ? "" : "\u00a0";
  return `${shown.value}${space}${shown.unit}`;
}

/** Two stored quantities as one text with one unit: "46.9 to 52.0 °C". */
export function span(low: number, high: number, unit: string, system: UnitSystem): string {
  return t("span", { low: show(low, unit, system).value, high: text(show(high, unit, system)) });
}

/** The unit alone. */
export function unitName(unit: string, system: UnitSystem): string {
  return reading(unit, system).unit;
}

/** A stored value as a typed box shows it: no grouping, no trailing zeros. */
export function toBox(value: number, unit: string, system: UnitSystem): number {
  const r = reading(unit, system);
  return Number((value * r.factor + r.offset).toFixed(Math.max(r.digits, 2)));
}

/** A typed value back to the stored unit, rounded to 1e-9 so that 3.28 does not gain a tail. */
export function fromBox(value: number, unit: string, system: UnitSystem): number {
  const r = reading(unit, system);
  return Number(((value - r.offset) / r.factor).toFixed(9));
}

/** Clock hours as 15:30; 24 stays 24:00. */
export function clock(hour: number): string {
  const minutes = Math.round(hour * 60);
  const two = (n: number) => String(n).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** A typed time such as 15:30, 15.5 or 7 as an hour of the day; NaN for anything else. */
export function hourOf(typed: string): number {
  const [, hours, minutes] = /^\s*(\d{1,2})[:h](\d{2})?\s*$/.exec(typed) ?? [];
  const hour = hours === undefined ? (typed.trim() === "" ? Number.NaN : Number(typed.trim().replace(",", "."))) : Number(hours) + Number(minutes ?? 0) / 60;
  return hour >= 0 && hour <= 24 ? hour : Number.NaN;
}

const points = [
  "north", "north-north-east", "north-east", "east-north-east",
  "east", "east-south-east", "south-east", "south-south-east",
  "south", "south-south-west", "south-west", "west-south-west",
  "west", "west-north-west", "north-west", "north-north-west",
] as const;

/** The place of an azimuth [deg, clockwise from true north] among the 16 points of the compass. */
const pointAt = (azimuth_deg: number) => Math.round((((azimuth_deg % 360) + 360) % 360) / 22.5) % 16;

/** The compass point of an azimuth, in words. */
export function compassPoint(azimuth_deg: number): string {
  return sharedWord(points[pointAt(azimuth_deg)] as string);
}

/** How a row of this azimuth is called: "north–south", "north-east to south-west". */
export function rowDirection(azimuth_deg: number): string {
  const a = ((azimuth_deg % 180) + 180) % 180;
  const from = pointAt(a) === 8 ? 0 : a;
  return t(pointAt(from) % 4 ? "rows.joined" : "rows.joined.main", { from: compassPoint(from), to: compassPoint(from + 180) });
}

/** A latitude or longitude with its hemisphere: "36.4° N". */
export function coordinate(value: number, axis: "latitude" | "longitude"): string {
  const [positive, negative] = axis === "latitude" ? [t("point.N"), t("point.S")] : [t("point.E"), t("point.W")];
  return `${formatNumber(Math.abs(value), 1)}° ${value < 0 ? negative : positive}`;
}

/** A date of the form 2026-07-18 as "18 July 2026"; anything else as it is. */
export function longDate(date: string): string {
  const parsed = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(parsed.getTime())) return date;
  return dateFormat("date", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" }).format(parsed);
}

/** A moment of the clock on this machine: "18 July 2026, 15:30". */
export function moment(milliseconds: number): string {
  return dateFormat("moment", { day: "numeric", month: "long", year: "numeric", hour: "2-digit", minute: "2-digit" }).format(milliseconds);
}

/** A day of any year: "18 July". */
export function dayMonth(month: number, day: number): string {
  return dateFormat("dayMonth", { day: "numeric", month: "long", timeZone: "UTC" }).format(Date.UTC(leapYear, month - 1, day));
}

/** A month: "July 2019". */
export function monthYear(year: number, month: number): string {
  return dateFormat("monthYear", { month: "long", year: "numeric", timeZone: "UTC" }).format(Date.UTC(year, month - 1, 1));
}

/** A month without a year, from 1: "July". */
export function monthName(month: number): string {
  return dateFormat("month", { month: "long", timeZone: "UTC" }).format(Date.UTC(leapYear, month - 1, 1));
}

/** A month in short: "Jul". */
export function monthShort(month: number): string {
  return dateFormat("monthShort", { month: "short", timeZone: "UTC" }).format(Date.UTC(leapYear, month - 1, 1));
}

/** A year that has every day. */
const leapYear = 2004;

/** Bytes as megabytes for the loading bar. */
export function megabytes(bytes: number): string {
  return `${formatNumber(bytes / 1e6, 1)} MB`;
}

/** The difference of the scenario's clock to universal time: "UTC−8". */
export function clockName(offset_h: number): string {
  const sign = offset_h < 0 ? "\u2212" : "+";
  const minutes = Math.round(Math.abs(offset_h) * 60);
  const rest = minutes % 60;
  return `UTC${sign}${Math.floor(minutes / 60)}${rest ? `:${String(rest).padStart(2, "0")}` : ""}`;
}
