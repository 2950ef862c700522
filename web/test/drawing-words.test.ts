import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { drawingWords } from "../src/drawing-words.ts";
import { language } from "../src/language.ts";

/** What drawings say, shared with the command line, whose test finds every code of the view in it. */
const sayings = JSON.parse(readFileSync("test/sayings.json", "utf8")) as { saying: string; en: string; es: string }[];

test("what a drawing means is said in the language of the page, with its decimal mark", () => {
  try {
    for (const name of ["en", "es"] as const) {
      language.value = name;
      for (const told of sayings) assert.equal(drawingWords(told.saying), told[name]);
    }
    assert.equal(drawingWords("row west"), "lado oeste");
    assert.equal(drawingWords("m"), "m");
  } finally {
    language.value = "en";
  }
});
