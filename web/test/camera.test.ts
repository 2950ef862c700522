import assert from "node:assert/strict";
import { test } from "node:test";
import { defaultCamera, onScreen, orbit, zoom } from "../src/camera.ts";

test("what lies ahead is up on the screen, and east is right of north", () => {
  const fromSouth = { ...defaultCamera, azimuth_deg: 180 };
  assert.equal(onScreen(fromSouth, 0), 0);
  assert.equal(onScreen(fromSouth, 90), 90);
  const fromWest = { ...defaultCamera, azimuth_deg: 270 };
  assert.equal(onScreen(fromWest, 90), 0);
  assert.equal(onScreen(fromWest, 0), 270);
});

test("the camera turns all round and stays above the ground and near the row", () => {
  assert.equal(orbit({ ...defaultCamera, azimuth_deg: 350 }, 20, 0).azimuth_deg, 10);
  assert.ok(orbit(defaultCamera, 0, -90).elevation_deg > 0);
  assert.ok(orbit(defaultCamera, 0, 180).elevation_deg < 90);
  let camera = defaultCamera;
  for (let i = 0; i < 100; i++) camera = zoom(camera, 1.5);
  assert.ok(camera.distance_m <= 40);
});
