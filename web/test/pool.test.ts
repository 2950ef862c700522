import assert from "node:assert/strict";
import { test } from "node:test";
import { poolSize, Shares } from "../src/pool.ts";

test("a device has a helper to each core and GB, at least one and at most eight", () => {
  assert.deepEqual([poolSize(2, 4), poolSize(8, 4), poolSize(1, 0.5), poolSize(64, 64), poolSize(4, 1.9)], [2, 4, 1, 8, 1]);
});

test("every part is done once, neighbours by one helper, and whoever is through helps", () => {
  const shares = new Shares(7, 2);
  const taken: number[][] = [[], []];
  const take = (helper: number) => {
    const part = shares.take(helper);
    if (part !== undefined) taken[helper]?.push(part);
    return part;
  };
  take(0);
  take(1);
  take(1);
  while (take(1) !== undefined);
  assert.equal(take(0), undefined);
  assert.deepEqual(taken, [[0], [3, 4, 5, 6, 2, 1]]);
  assert.deepEqual([new Shares(1, 3).take(0), new Shares(0, 2).take(1)], [0, undefined]);
});
