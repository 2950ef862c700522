import assert from "node:assert/strict";
import { test } from "node:test";
import { at, type JsonObject } from "../src/document.ts";
import { designDay, isMeasured, withDesignDay, withMeasuredDay } from "../src/measured-day.ts";

const mine: JsonObject = {
  name: "Mine",
  fromElsewhere: 1,
  site: { latitude_deg: 36.4, slope_deg: 8, alsoKept: true },
  weather: { date: "2026-07-18", airMax_C: 41, water_cm: 2 },
  options: [{ form: "vsp-spurs" }],
};

const day: JsonObject = {
  site: { latitude_deg: -34.3, longitude_deg: 140.4, elevation_m: 60, utcOffset_h: 9.5 },
  weather: { date: "1994-01-30", airMax_C: 43, airMin_C: 20, dewPoint_C: 9, wind_ms: 3, windFrom_deg: 30, hours: [{ air_C: 20 }], source: "a.csv, There" },
};

test("a measured day brings place, clock and hours, and leaves everything else", () => {
  const measured = withMeasuredDay(mine, day);
  assert.ok(isMeasured(measured) && !isMeasured(mine));
  assert.deepEqual(measured["site"], { latitude_deg: -34.3, longitude_deg: 140.4, elevation_m: 60, utcOffset_h: 9.5, slope_deg: 8, alsoKept: true });
  assert.equal(at(measured, ["weather", "water_cm"]), 2);
  assert.equal(at(measured, ["weather", "hours", 0, "air_C"]), 20);
  assert.deepEqual([measured["name"], measured["fromElsewhere"], measured["options"]], [mine["name"], 1, mine["options"]]);
});

test("back to the design day is the document as it was, with what was changed meanwhile", () => {
  const before = designDay(mine);
  const measured = withMeasuredDay(mine, day);
  assert.deepEqual(withDesignDay(measured, before), mine);
  const other = { ...measured, name: "Other", site: { ...(measured["site"] as JsonObject), slope_deg: 12 } };
  const back = withDesignDay(other, before);
  assert.deepEqual([back["name"], at(back, ["site", "slope_deg"])], ["Other", 12]);
  assert.deepEqual([at(back, ["site", "latitude_deg"]), at(back, ["site", "longitude_deg"])], [36.4, undefined]);
});

test("a document that left its whole design day out leaves it out again", () => {
  const sparse: JsonObject = { options: [{}] };
  const back = withDesignDay(withMeasuredDay(sparse, day), designDay(sparse));
  assert.deepEqual(back, { options: [{}], site: {}, weather: {} });
});

test("without a design day to go back to, the numbers of the measured day become one", () => {
  const back = withDesignDay(withMeasuredDay(mine, day), null);
  assert.ok(!isMeasured(back));
  assert.deepEqual([at(back, ["weather", "airMax_C"]), at(back, ["weather", "source"]), at(back, ["site", "latitude_deg"])], [43, undefined, -34.3]);
});
