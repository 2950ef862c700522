import assert from "node:assert/strict";
import { test } from "node:test";
import { orbit } from "../src/camera.ts";
import { chosenLook, linkLooks, lookOf, moveLook, orderLooks, seenFrom, setLook, takeHomes } from "../src/looks.ts";

const first = { turn_deg: -36, elevation_deg: 8, distance_m: 3.2 };
const north = { ...first, front_deg: 270 };
const east = { ...first, front_deg: 180 };

test("looks start at home, move together, part, follow their options and come home", () => {
  moveLook(0, (look) => orbit(look, 10, 0));
  assert.equal(lookOf(0), undefined);
  takeHomes([north, east]);
  assert.deepEqual([seenFrom(0), seenFrom(1)], [234, 144]);

  // Together: rows of other directions are seen alike.
  moveLook(0, (look) => orbit(look, 36, 10));
  assert.deepEqual([seenFrom(0), seenFrom(1)], [270, 180]);
  takeHomes([north, { ...east, front_deg: 200 }]);
  assert.deepEqual([seenFrom(0), seenFrom(1)], [270, 200]);

  // Each by itself: who has chosen a place keeps it when the row turns.
  linkLooks(false, 0);
  moveLook(1, (look) => orbit(look, 5, 0));
  takeHomes([north, { ...east, front_deg: 160 }]);
  assert.deepEqual([seenFrom(0), seenFrom(1)], [270, 205]);

  // A copy is seen as its source; what stays after a removal keeps its look.
  orderLooks([0, 1, 1]);
  takeHomes([north, { ...east, front_deg: 160 }, { ...east, front_deg: 160 }]);
  assert.equal(seenFrom(2), 205);
  orderLooks([1, 2]);
  takeHomes([{ ...east, front_deg: 160 }, { ...east, front_deg: 160 }]);
  assert.equal(seenFrom(0), 205);

  setLook(0, null);
  assert.equal(chosenLook(0), null);
  assert.deepEqual([seenFrom(0), seenFrom(1)], [124, 205]);
  linkLooks(true, 0);
  assert.deepEqual([seenFrom(0), seenFrom(1)], [124, 124]);
});
