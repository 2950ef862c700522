import assert from "node:assert/strict";
import { test } from "node:test";
import { clock, compassPoint, coordinate, formatNumber, fromBox, hourOf, rowDirection, show, showDifference, span, text, toBox } from "../src/units.ts";

test("a temperature has an offset in °F, a difference of temperatures has none", () => {
  // Definition of the scales: t/°F = 1.8 t/°C + 32.
  assert.equal(text(show(100, "degC", "us")), "212.0\u00a0°F");
  assert.equal(text(show(-40, "degC", "us")), "\u221240.0\u00a0°F");
  assert.equal(text(showDifference(12, "K", "us")), "+21.6\u00a0°F");
  assert.equal(text(showDifference(-5.7, "K", "metric")), "\u22125.7\u00a0°C");
});

test("lengths, speeds and densities by their exact definitions", () => {
  assert.equal(text(show(0.3048, "m", "us")), "1.00\u00a0ft");
  assert.equal(text(show(0.44704, "m/s", "us")), "1.0\u00a0mph");
  assert.equal(text(show(2.54, "cm", "us")), "1.00\u00a0in");
  assert.equal(text(show(25.4, "mm/h", "us")), "1.000\u00a0in/h");
  // 3 to 5 shoots per foot are 10 to 16 per metre.
  assert.equal(show(10, "1/m", "us").value, "3.05");
  assert.equal(show(0.255, "share", "metric").value, "26");
});

test("a range names its unit once", () => {
  assert.equal(span(46.94, 52, "degC", "metric"), "46.9 to 52.0\u00a0°C");
  assert.equal(span(0.1, 0.25, "share", "us"), "10 to 25\u00a0%");
});

test("a difference that rounds to nothing has no sign", () => {
  assert.equal(showDifference(-0.004, "h", "metric").value, "0.0");
  assert.equal(formatNumber(-0.04, 1), "0.0");
});

test("a value typed in US units returns to the same stored value", () => {
  for (const [unit, value] of [["degC", 41], ["m", 2.7], ["1/m", 14], ["g", 130]] as const) {
    const shown = toBox(value, unit, "us");
    const back = toBox(fromBox(shown, unit, "us"), unit, "us");
    assert.equal(back, shown, unit);
  }
  assert.equal(fromBox(106, "degC", "us"), 41.111111111);
});

test("clock hours run to the end of the day", () => {
  assert.deepEqual([0, 9.25, 15.5, 24].map(clock), ["00:00", "09:15", "15:30", "24:00"]);
});

test("directions are called by the compass", () => {
  assert.equal(compassPoint(225), "south-west");
  assert.equal(compassPoint(-11), "north");
  assert.equal(rowDirection(0), "north–south");
  assert.equal(rowDirection(180), "north–south");
  assert.equal(rowDirection(90), "east–west");
  assert.equal(rowDirection(45), "north-east to south-west");
  assert.equal(coordinate(-34.2, "latitude"), "34.2° S");
});

test("a typed time is read in the ways people write it", () => {
  assert.deepEqual(["15:30", " 7:05 ", "15h", "24", "15,5", "0"].map(hourOf), [15.5, 7 + 5 / 60, 15, 24, 15.5, 0]);
  assert.ok(["", "noon", "25", "12:7", "-1"].map(hourOf).every(Number.isNaN));
});
