import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { drawingWords, phrases } from "../src/drawing-words.ts";
import { language } from "../src/language.ts";

test("the words within drawings are said in the language of the page, with its decimal mark", () => {
  assert.equal(drawingWords("1.65 m 2 × catch wire"), "1.65 m 2 × catch wire");
  assert.equal(drawingWords("rows 2.5 m, vines 1.5 m"), "rows 2.5 m, vines 1.5 m");
  language.value = "es";
  try {
    assert.equal(drawingWords("1.65 m 2 × catch wire, foliage wire"), "1,65 m 2 × alambre móvil, alambre de follaje");
    assert.equal(drawingWords("1.00–1.20 m fruit"), "1,00–1,20 m fruta");
    assert.equal(drawingWords("rows 2.5 m, vines 1.5 m"), "hileras 2,5 m, vides 1,5 m");
    assert.equal(drawingWords("west side of the row"), "lado oeste");
    assert.equal(drawingWords("looking south-west"), "hacia el suroeste");
    assert.equal(drawingWords("W"), "O");
    assert.equal(drawingWords("12:00"), "12:00");
  } finally {
    language.value = "en";
  }
});

test("the phrases are those that the view writes", () => {
  const view = ["crosssectionlabel", "label"].map((name) => readFileSync(`../render/${name}.go`, "utf8")).join("");
  for (const phrase of phrases) assert.ok(view.includes(`"${phrase}"`) || phrase === "catch wire", phrase);
  for (const form of ['"looking "', '" side"', '" side of the row"']) assert.ok(view.includes(form), form);
  assert.ok(readFileSync("../render/crosssectionsvg.go", "utf8").includes(">rows %s%s, vines %s%s<"));
});
