/** Row directions as numbers and as places on a chart. */

/** One side of the rows at one azimuth, means per day. */
export interface DirectionSide {
  compass: string;
  lit_h: number;
  light_MJm2: number;
  lightBefore_MJm2: number;
  lightAfter_MJm2: number;
  heatOverWatch_K_h: number;
  heatOverHot_K_h: number;
  heatOverBurn_K_h: number;
  atRisk: number;
  hottest_C: number;
}

/** An option with its rows at one azimuth. */
export interface Direction {
  azimuth_deg: number;
  sides: [DirectionSide, DirectionSide];
  interceptedShare: number;
}

/** The numbers that the charts can show. */
export type HeatOver = "heatOverWatch_K_h" | "heatOverHot_K_h" | "heatOverBurn_K_h";

/** The number on the worse side. */
export function worst(row: Direction, number: HeatOver): number {
  return Math.max(row.sides[0][number], row.sides[1][number]);
}

/** Places on the polar chart, a row line having two ends: [x, y] with north up, as far from the middle as the value. */
export function polar(rows: readonly Direction[], number: HeatOver, radius: number, most: number): [number, number][] {
  const half = rows.filter((row) => row.azimuth_deg < 180);
  const place = (turn: number) => (row: Direction): [number, number] => {
    const angle = ((row.azimuth_deg + turn) * Math.PI) / 180;
    const distance = most > 0 ? (radius * worst(row, number)) / most : 0;
    return [distance * Math.sin(angle), -distance * Math.cos(angle)];
  };
  return [...half.map(place(0)), ...half.map(place(180))];
}

/** A round number at or above a value, to end an axis on. */
export function axisEnd(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return (([1, 2, 5, 10].find((step) => step * power >= value) ?? 10) * power);
}

/** The directions of every option with one more of one of them, in rising azimuth. */
export function withDirection(before: readonly Direction[][], option: number, direction: Direction): Direction[][] {
  return before.map((of, i) => (i === option ? [...of, direction].sort((a, b) => a.azimuth_deg - b.azimuth_deg) : of));
}
