import assert from "node:assert/strict";
import { test } from "node:test";
import { axisEnd, type Direction, type DirectionSide, polar, withDirection, worst } from "../src/polar.ts";

const side = (heat: number): DirectionSide => ({
  compass: "west", lit_h: 1, light_MJm2: 6, lightBefore_MJm2: 2, lightAfter_MJm2: 4,
  heatOverWatch_K_h: heat, heatOverHot_K_h: heat / 2, heatOverBurn_K_h: 0, atRisk: 0.1, hottest_C: 45,
});
const row = (azimuth_deg: number, left: number, right: number): Direction => ({ azimuth_deg, sides: [side(left), side(right)], interceptedShare: 0.3 });

test("a direction is told by its worse side", () => {
  assert.equal(worst(row(0, 4, 6), "heatOverWatch_K_h"), 6);
  assert.equal(worst(row(0, 4, 6), "heatOverHot_K_h"), 3);
});

test("a row line stands at both of its ends, north up", () => {
  const places = polar([row(0, 5, 2), row(90, 10, 3), row(180, 1, 1)], "heatOverWatch_K_h", 100, 10).map(([x, y]) => [Math.round(x) + 0, Math.round(y) + 0]);
  assert.deepEqual(places, [[0, -50], [100, 0], [0, 50], [-100, 0]]);
});

test("an axis ends on a round number", () => {
  assert.deepEqual([0, 0.3, 1, 1.1, 4.2, 17, 60].map(axisEnd), [1, 0.5, 1, 2, 5, 20, 100]);
});

test("directions come in any order and stand in that of the compass", () => {
  let rows: Direction[][] = [[], []];
  for (const azimuth of [90, 0, 175]) rows = withDirection(rows, 1, row(azimuth, 1, 2));
  assert.deepEqual(rows.map((of) => of.map(({ azimuth_deg }) => azimuth_deg)), [[], [0, 90, 175]]);
});
