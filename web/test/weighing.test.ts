import assert from "node:assert/strict";
import { test } from "node:test";
import { isWeighed, rows, scaleFor, weightShares } from "../src/weighing.ts";
import { toWholeRow } from "../src/whole-rows.ts";
import en from "../src/text/en.json" with { type: "json" };
import es from "../src/text/es.json" with { type: "json" };
import sharedEn from "../../sim/words/en.json" with { type: "json" };
import sharedEs from "../../sim/words/es.json" with { type: "json" };

test("every row of the decision says what it holds, which way is better, and names its source or an assumption", () => {
  for (const [page, shared, named] of [
    [en, sharedEn, /\b(19|20)\d\d\b|assumption/],
    [es, sharedEs, /\b(19|20)\d\d\b|supuesto/],
  ] as [Record<string, string>, Record<string, string>, RegExp][]) {
    for (const row of rows) {
      assert.ok(shared[`weigh.${row.key}`], `${row.key} has no name`);
      assert.ok(shared[`weigh.${row.key}.says`], `${row.key} does not say what it holds`);
      assert.match(shared[`weigh.${row.key}.source`] ?? "", named, `${row.key} names neither source nor assumption`);
      const better = row.key === "light" ? ["lightWish.more", "lightWish.less"] : [`weigh.better.${row.key}`];
      for (const key of better) assert.ok(page[key], `${key} is missing`);
    }
  }
});

test("a scale holds its numbers between round ends", () => {
  assert.deepEqual(scaleFor([48.7, 55.8], false), { from: 48, to: 56, digits: 0 });
  assert.deepEqual(scaleFor([5.1, 8.9], true), { from: 0, to: 10, digits: 0 });
  assert.deepEqual(scaleFor([59, 94.6], true), { from: 0, to: 100, digits: 0 });
  assert.deepEqual(scaleFor([0.02, 0.31], true), { from: 0, to: 0.4, digits: 1 });
  assert.deepEqual(scaleFor([30, 30], false), { from: 30, to: 31, digits: 0 });
  assert.deepEqual(scaleFor([0, 0], true), { from: 0, to: 1, digits: 0 });
  for (const [from, numbers] of [[true, [0.004]], [false, [-3.2, 17]], [false, [119.7, 132.4]], [true, [136, 191]]] as [boolean, number[]][]) {
    const scale = scaleFor(numbers, from);
    for (const number of numbers) assert.ok(scale.from <= number && number <= scale.to, `${number} is not on ${JSON.stringify(scale)}`);
  }
});

test("weights are named by their share of all, the heaviest first, and none where all are nothing", () => {
  const given: Record<string, number> = { heat: 0.3, frost: 0.9, water: 5 };
  assert.deepEqual(weightShares((key) => given[key] ?? 0), [{ key: "frost", share: 0.75 }, { key: "heat", share: 0.25 }]);
  assert.deepEqual(weightShares(() => 0), []);
  assert.equal(rows.filter(isWeighed).length, 5);
});

test("a row across the edge is brought out or put away, the shorter way", () => {
  const rows = [[0, 100], [100, 200], [200, 600]] as const;
  assert.equal(toWholeRow(rows, 180, 300), 20);
  assert.equal(toWholeRow(rows, 130, 300), -30);
  assert.equal(toWholeRow(rows, 200, 300), 0);
  assert.equal(toWholeRow(rows, 400, 300), 0);
  assert.equal(toWholeRow(rows, 900, 300), 0);
});
