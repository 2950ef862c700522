import assert from "node:assert/strict";
import { test } from "node:test";
import { at, edited, effective, effectiveNumber, fieldSchema, type JsonObject, layered, pointer, withForm } from "../src/document.ts";

const sparse: JsonObject = {
  name: "Test block",
  fromElsewhere: { kept: true },
  options: [{ form: "vsp-spurs", rows: { azimuth_deg: 45 }, alsoKept: 1 }, { form: "double-curtain" }],
};

test("what the document leaves out comes from the form, then from the schema", () => {
  assert.equal(effectiveNumber(sparse, ["options", 0, "rows", "azimuth_deg"]), 45);
  assert.equal(effectiveNumber(sparse, ["options", 1, "training", "armsPerVine"]), 4);
  assert.equal(effectiveNumber(sparse, ["weather", "airMax_C"]), fieldSchema(["weather", "airMax_C"])?.default);
  assert.ok(Number.isNaN(effectiveNumber(sparse, ["options", 0, "nothing"])));
});

test("an edit keeps fields that the page does not know, and leaves the old document alone", () => {
  const next = edited(sparse, ["options", 0, "rows", "azimuth_deg"], 90);
  assert.equal(at(next, ["options", 0, "alsoKept"]), 1);
  assert.equal(at(next, ["fromElsewhere", "kept"]), true);
  assert.equal(at(sparse, ["options", 0, "rows", "azimuth_deg"]), 45);
  assert.equal(at(next, ["options", 0, "rows", "azimuth_deg"]), 90);
});

test("an edit inside a list that the form gives writes out the whole list", () => {
  const wires = effective(sparse, ["options", 0, "trellis", "wires"]) as JsonObject[];
  const next = edited(sparse, ["options", 0, "trellis", "wires", 2, "height_m"], 1.4);
  const written = at(next, ["options", 0, "trellis", "wires"]) as JsonObject[];
  assert.equal(written.length, wires.length);
  assert.deepEqual(written[1], wires[1]);
  assert.equal(written[2]?.["height_m"], 1.4);
  assert.equal(written[2]?.["role"], wires[2]?.["role"]);
});

test("every number that the sheets edit has a range and a step in the schema", () => {
  for (const path of [["options", 0, "rows", "azimuth_deg"], ["options", 0, "leaves", "removedAfternoon"], ["options", 0, "trellis", "wires", 0, "height_m"], ["limits", "burn_C"], ["weather", "wind_ms"]]) {
    const field = fieldSchema(path);
    assert.equal(typeof field?.minimum, "number", pointer(path));
    assert.equal(typeof field?.maximum, "number", pointer(path));
    assert.equal(typeof field?.["x-step"], "number", pointer(path));
  }
});

test("lists replace, objects merge", () => {
  assert.deepEqual(layered({ a: 1, b: { c: [1, 2] } }, { b: { c: [3], d: 4 } }), { a: 1, b: { c: [3], d: 4 } });
});

test("a pointer escapes as RFC 6901 says", () => {
  assert.equal(pointer(["options", 1, "a/b", "m~n"]), "/options/1/a~1b/m~0n");
});

test("another form keeps the direction, shade, water and costs of an option, and no size of the old form", () => {
  const option: JsonObject = {
    form: "vsp-spurs", rows: { azimuth_deg: 45, rowSpacing_m: 2.4 }, leaves: { area_m2_per_m: 3, water: "short" },
    shade: { netSides: "afternoon", netFrom_m: 0.8, netTo_m: 1.2, film: "full" }, cost: { year_per_ha: 900 },
  };
  assert.deepEqual(withForm(option, "sprawl"), {
    form: "sprawl", rows: { azimuth_deg: 45 }, leaves: { water: "short" },
    shade: { netSides: "afternoon", film: "full" }, cost: { year_per_ha: 900 },
  });
  assert.deepEqual(withForm({ form: "lyre" }, "goblet"), { form: "goblet", rows: {} });
});
