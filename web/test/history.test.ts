import assert from "node:assert/strict";
import { test } from "node:test";
import { maxSteps, record, redo, seal, startHistory, undo } from "../src/history.ts";

test("fifty changes are undone one by one and redone", () => {
  let h = startHistory(0);
  for (let i = 1; i <= 50; i++) h = record(h, i);
  for (let i = 49; i >= 0; i--) {
    h = undo(h);
    assert.equal(h.present, i);
  }
  assert.equal(undo(h).present, 0);
  for (let i = 1; i <= 50; i++) h = redo(h);
  assert.equal(h.present, 50);
});

test("a drag is one step, the next drag of the same slider another", () => {
  let h = startHistory(0);
  for (const value of [1, 2, 3]) h = record(h, value, "slide azimuth");
  h = seal(h);
  for (const value of [4, 5]) h = record(h, value, "slide azimuth");
  assert.equal(undo(h).present, 3);
  assert.equal(undo(undo(h)).present, 0);
});

test("a change after an undo forgets what was undone, and no change is no step", () => {
  let h = record(record(startHistory("a"), "b"), "c");
  h = record(undo(h), "d");
  assert.equal(redo(h).present, "d");
  assert.equal(record(h, "d"), h);
});

test("an undo ends the gesture", () => {
  const h = undo(record(startHistory(0), 1, "slide"));
  assert.equal(undo(record(h, 2, "slide")).present, 0);
});

test("old steps are forgotten, not the newest", () => {
  let h = startHistory(0);
  for (let i = 1; i <= maxSteps + 10; i++) h = record(h, i);
  assert.equal(h.past.length, maxSteps);
  assert.equal(undo(h).present, maxSteps + 9);
});
