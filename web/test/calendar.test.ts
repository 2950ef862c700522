import assert from "node:assert/strict";
import { test } from "node:test";
import { type Season, type SideDay, withPart } from "../src/calendar.ts";

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
