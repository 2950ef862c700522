import assert from "node:assert/strict";
import { test } from "node:test";
import { afterTurn, compassFrom, type Home, orbit, zoom } from "../src/camera.ts";

const home: Home = { turn_deg: -36, elevation_deg: 8, distance_m: 3.2, front_deg: 270 };

test("the eye stands where the front of the row and the turn say", () => {
  assert.equal(compassFrom(home, home), 234);
  assert.equal(compassFrom({ ...home, turn_deg: 120 }, home), 30);
});

test("one looks from all sides, above the ground and near the row", () => {
  assert.equal(orbit({ ...home, turn_deg: 350 }, 20, 0).turn_deg, 10);
  assert.ok(orbit(home, 0, -90).elevation_deg > 0);
  assert.ok(orbit(home, 0, 180).elevation_deg < 90);
  let look = { ...home };
  for (let i = 0; i < 100; i++) look = { ...home, ...zoom(look, 1.5) };
  assert.ok(look.distance_m <= 40);
});

test("a turn of the row leaves the picture as it is, unless one has chosen where to stand alone", () => {
  const turned: Home = { ...home, front_deg: 315 };
  const chosen = { turn_deg: 20, elevation_deg: 30, distance_m: 5 };
  assert.equal(afterTurn(null, home, turned, false), null);
  assert.equal(afterTurn(chosen, home, turned, true), chosen);
  const kept = afterTurn(chosen, home, turned, false);
  assert.ok(kept);
  assert.equal(compassFrom(kept, turned), compassFrom(chosen, home));
  assert.deepEqual({ ...kept, turn_deg: 0 }, { ...chosen, turn_deg: 0 });
  assert.equal(afterTurn(chosen, undefined, turned, false), chosen);
});
