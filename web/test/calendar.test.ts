import assert from "node:assert/strict";
import { test } from "node:test";
import { changedDays, type Season, type SideDay, withPart } from "../src/calendar.ts";

const day = (hottest_C: number): SideDay => ({ overHot_h: 0, overBurn_h: 0, heat_K_h: 0, atRisk: 0, hottest_C, hottestAt_h: 15, hourly_C: [] });

test("a part fills its days of its option and leaves the others as they are", () => {
  const none = [undefined, undefined, undefined];
  const before: Season = { days: [], calendar: [[none, none], [none, none]] };
  const sides: [{ days: SideDay[] }, { days: SideDay[] }] = [{ days: [day(41), day(42)] }, { days: [day(31), day(32)] }];
  const after = withPart(before, { option: 1, from: 1, sides });
  const known = after.calendar.map((of) => of.map((days) => days.map((one) => one?.hottest_C)));
  assert.deepEqual(known, [[none, none], [[undefined, 41, 42], [undefined, 31, 32]]]);
  assert.equal(before.calendar[1]?.[0][1], undefined);
});

test("a changed day is drawn with its neighbours, all days with other limits or another number of them", () => {
  const days = Array.from({ length: 7 }, (_, i) => day(30 + i));
  const before = { days, hot: 40, burn: 45 };
  assert.deepEqual(changedDays({ ...before, days: [...days] }, before), []);
  assert.deepEqual(changedDays({ ...before, days: days.with(3, day(50)) }, before), [2, 3, 4]);
  assert.deepEqual(changedDays({ ...before, days: days.with(0, day(50)) }, before), [0, 1]);
  const all = [0, 1, 2, 3, 4, 5, 6];
  assert.deepEqual(changedDays({ ...before, hot: 41 }, before), all);
  assert.deepEqual(changedDays({ ...before, burn: 46 }, before), all);
  assert.deepEqual(changedDays({ ...before, days: days.slice(1) }, before), all.slice(1).map((i) => i - 1));
});
