import assert from "node:assert/strict";
import { test } from "node:test";
import { bunchDay, hoursOver } from "../src/bunch.ts";

const hour = [0, 1, 2, 3];
/** Four instants of two bunches, so of four faces. */
const faces = {
  surface: Float32Array.from([10, 11, 12, 13, 20, 21, 32, 23, 30, 31, 22, 33, 20, 21, 12, 23]),
  lit: Uint8Array.from([0, 0, 0, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0, 0, 0]),
};

test("the day of a bunch is that of its own faces", () => {
  const [left, right] = bunchDay(faces, hour, 1) ?? [];
  assert.deepEqual(left?.course, [12, 32, 22, 12]);
  assert.deepEqual(right?.course, [13, 23, 33, 23]);
  assert.equal(left?.hottest_C, 32);
  assert.equal(left?.hottestAt_h, 1);
  assert.equal(left?.lit_h, 2);
  assert.equal(right?.lit_h, 0);
});

test("there is no day of a bunch that is not there", () => {
  assert.equal(bunchDay(faces, hour, 2), undefined);
  assert.equal(bunchDay(faces, hour, -1), undefined);
  assert.equal(bunchDay(undefined, hour, 0), undefined);
});

test("hours over a limit run from crossing to crossing", () => {
  assert.equal(hoursOver(hour, [12, 32, 22, 12], 27), 0.25 + 0.5);
});
