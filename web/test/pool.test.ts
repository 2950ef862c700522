import assert from "node:assert/strict";
import { test } from "node:test";
import { poolSize, Shares } from "../src/pool.ts";

test("a device has a helper to each core and GB, at least one and at most eight", () => {
  assert.deepEqual([poolSize(2, 4), poolSize(8, 4), poolSize(1, 0.5), poolSize(64, 64), poolSize(4, 1.9)], [2, 4, 1, 8, 1]);
});

/** So many parts of as many days. */
const parts = (count: number, days: number) => Array.from({ length: count }, () => days);

test("every part is done once, neighbours by one helper, and whoever is through helps", () => {
  const shares = new Shares(parts(7, 20), 2);
  const taken: number[][] = [[], []];
  const take = (helper: number) => {
    const part = shares.take(helper);
    if (part !== undefined) taken[helper]?.push(part);
    return part;
  };
  take(1);
  take(1);
  while (take(1) !== undefined);
  assert.deepEqual(taken, [[], [3, 4, 5, 6, 2]]);
  while (take(0) !== undefined);
  assert.deepEqual(taken, [[0, 1], [3, 4, 5, 6, 2]]);
});

test("nobody makes vines for a few days that another has left", () => {
  const shares = new Shares(parts(36, 1), 2);
  for (let k = 0; k < 18; k++) assert.equal(shares.take(0), k);
  assert.equal(shares.take(0), undefined);
  assert.equal(shares.take(1), 18);
});

test("fewer parts than helpers", () => {
  const [one, none] = [new Shares([6], 3), new Shares([], 2)];
  assert.deepEqual([0, 1, 2].map((helper) => one.take(helper)).filter((part) => part !== undefined), [0]);
  assert.equal(none.take(1), undefined);
});
