import assert from "node:assert/strict";
import { test } from "node:test";
import words from "../../sim/words/en.json" with { type: "json" };
import { comparisonText, faultText, sentenceText, verdictText } from "../src/sentences.ts";

test("a verdict is written with its side, its hour and its cause", () => {
  const verdict = { code: "verdict.burns", words: { side: "west", cause: "cause-open" }, values: { from: 15.167, limit: 45 } };
  assert.equal(verdictText(verdict, "metric"), "The west side burns from 15:10 (hottest fruit over 45.0\u00a0°C): no leaves between it and the sun.");
});

test("a difference of temperatures in a sentence has no offset in °F", () => {
  const sentence = { code: "compare.cooler-shorter", words: { name: "Sprawl", base: "VSP" }, values: { delta: 10, hours: 2.4, limit: 45 } };
  const us = comparisonText(sentence, 1, 0, "us");
  assert.match(us, /18\.0\u00a0°F cooler/);
  assert.match(us, /over 113\.0\u00a0°F/);
});

test("two options of one name are called by their letters", () => {
  const sentence = { code: "compare.longer", words: { name: "VSP", base: "VSP" }, values: { hours: 1, limit: 40 } };
  assert.match(comparisonText(sentence, 2, 0, "metric"), /“C”.*“A”/);
});

test("each option is called by its letter too, as on its column and its card", () => {
  const sentence = { code: "compare.longer", words: { name: "Sprawl", base: "VSP" }, values: { hours: 1, limit: 40 } };
  assert.match(comparisonText(sentence, 2, 0, "metric"), /“C: Sprawl”.*“A: VSP”/);
  assert.match(comparisonText(sentence, 1, 0, "metric"), /“B: Sprawl”.*“A: VSP”/);
});

test("a fault names its field as the page calls it", () => {
  const fault = { code: "fault.range", path: "/options/1/rows/rowSpacing_m", values: { value: 9, min: 1, max: 6, unit: "m" } };
  assert.match(faultText(fault, "metric"), /^Option B, row spacing: 9\u00a0m is outside 1\u00a0m to 6\u00a0m/);
});

test("no text of the shared catalogue keeps a tag that the page does not know", () => {
  const known = new Set(["word", "temperature", "temperatureDifference", "clock", "hours", "percent", "height", "prunings", "leafToFruit", "degreeHours", "count", "number", "measure", "list"]);
  for (const [code, template] of Object.entries(words)) {
    for (const [, tag] of template.matchAll(/\{\w+:(\w+)\}/g)) assert.ok(known.has(tag as string), `${code}: ${tag}`);
  }
});

test("a code without a text is shown as it is", () => {
  assert.equal(sentenceText("verdict.unheard-of", {}, "metric"), "verdict.unheard-of");
});
