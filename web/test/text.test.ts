import assert from "node:assert/strict";
import { test } from "node:test";
import forms from "../../sim/scenario/forms.json" with { type: "json" };
import sharedEn from "../../sim/words/en.json" with { type: "json" };
import sharedEs from "../../sim/words/es.json" with { type: "json" };
import { language } from "../src/language.ts";
import { verdictText } from "../src/sentences.ts";
import en from "../src/text/en.json" with { type: "json" };
import es from "../src/text/es.json" with { type: "json" };
import formsEs from "../src/text/forms.es.json" with { type: "json" };
import { t } from "../src/text.ts";
import { coordinate, rowDirection, show, text } from "../src/units.ts";

const parameters = (template: string) => [...template.matchAll(/\{[^}]+\}/g)].map(([found]) => found).sort();

for (const [name, english, spanish] of [["page", en, es], ["shared", sharedEn, sharedEs]] as [string, Record<string, string>, Record<string, string>][]) {
  test(`the ${name} catalogues have the same keys with the same parameters, each with a text`, () => {
    assert.deepEqual(Object.keys(spanish).sort(), Object.keys(english).sort());
    for (const [key, template] of Object.entries(english)) {
      assert.deepEqual(parameters(spanish[key] ?? ""), parameters(template), key);
      assert.ok(spanish[key]?.trim(), key);
    }
  });
}

test("every training form has a Spanish name", () => {
  assert.deepEqual(Object.keys(formsEs).sort(), forms.map(({ key }) => key).sort());
});

test("another language changes texts, compass, numbers and the engine's sentences, and back", () => {
  language.value = "es";
  try {
    assert.equal(t("undo"), "Deshacer");
    assert.equal(rowDirection(45), "noreste a suroeste");
    assert.equal(rowDirection(175), "norte–sur");
    assert.equal(text(show(41.25, "degC", "metric")), "41,3\u00a0°C");
    assert.equal(coordinate(-119.9, "longitude"), "119,9° O");
    const sentence = { code: "verdict.mild", words: {}, values: { limit: 35, hottest: 31.5, time: 14.5 } };
    assert.equal(verdictText(sentence as never, "metric"), "La fruta queda bajo 35,0\u00a0°C todo el día; fruta más caliente 31,5\u00a0°C a las 14:30.");
  } finally {
    language.value = "en";
  }
  assert.equal(rowDirection(45), "north-east to south-west");
});
