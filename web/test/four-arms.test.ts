import assert from "node:assert/strict";
import { test } from "node:test";
import { at, effectiveNumber, type JsonObject } from "../src/document.ts";
import { fourArmed } from "../src/four-arms.ts";

const vineyard: JsonObject = { options: [{ form: "vsp-spurs", rows: { azimuth_deg: 30, rowSpacing_m: 2.5 }, shoots: { perMetre: 16 }, bunches: { mass_g: 120 } }] };

test("four arms keep nodes in all or on each arm, and the vine its place and fruit", () => {
  for (const [nodes, perMetre] of [["same", 8], ["twice", 16]] as const) {
    const option = fourArmed(vineyard, 0, nodes, "Four arms");
    const read = (part: string, key: string) => at({ options: [option] }, ["options", 0, part, key]);
    assert.equal(option["form"], "quadrilateral");
    assert.equal(effectiveNumber({ options: [option] }, ["options", 0, "training", "armsPerVine"]), 4);
    assert.equal(read("shoots", "perMetre"), perMetre);
    assert.equal(read("leaves", "area_m2_per_m"), effectiveNumber(vineyard, ["options", 0, "leaves", "area_m2_per_m"]) * (perMetre / 16));
    assert.deepEqual([read("rows", "azimuth_deg"), read("rows", "rowSpacing_m"), read("bunches", "mass_g")], [30, 2.5, 120]);
  }
});
