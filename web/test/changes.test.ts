import assert from "node:assert/strict";
import { test } from "node:test";
import { likeness } from "../src/changes.ts";
import { edited, type JsonObject } from "../src/document.ts";

const two: JsonObject = { options: [{ form: "vsp-spurs" }, { form: "vsp-spurs", name: "B", fromElsewhere: 1 }] };

test("a copy is like its original, whatever it is called", () => {
  assert.deepEqual(likeness(two, 1), { like: 0, changes: [] });
  assert.equal(likeness(two, 0), null);
});

test("one change is told with both values, also where the form gave the first", () => {
  const changed = edited(two, ["options", 1, "shade", "netSides"], "both");
  assert.deepEqual(likeness(changed, 1), { like: 0, changes: [{ path: ["options", 1, "shade", "netSides"], from: "none", to: "both" }] });
});

test("wires differ as a whole; another form is an option of its own", () => {
  const wired = edited(two, ["options", 1, "trellis", "wires", 0, "height_m"], 1.2);
  assert.deepEqual(likeness(wired, 1)?.changes.map(({ path }) => path.at(-1)), ["wires"]);
  assert.equal(likeness(edited(two, ["options", 1, "form"], "sprawl"), 1), null);
});

test("of several options the one with fewest changes counts, and four changes are too many", () => {
  const turned = (azimuth: number) => ({ form: "vsp-spurs", rows: { azimuth_deg: azimuth } });
  const three: JsonObject = { options: [turned(0), turned(45), { ...turned(0), shade: { film: "full" } }] };
  assert.equal(likeness(three, 2)?.like, 0);
  const far: JsonObject = { options: [turned(0), { form: "vsp-spurs", rows: { azimuth_deg: 90, rowSpacing_m: 3.1 }, shade: { film: "full", birdNet: "draped" } }] };
  assert.equal(likeness(far, 1), null);
});
