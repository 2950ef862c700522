import assert from "node:assert/strict";
import { test } from "node:test";
import { borneOut, readAt, withDifferences } from "../src/lessons/readings.ts";
import { firstLook, type Lesson, lessonDocument, lessons, stageAt } from "../src/lessons/catalogue.ts";
import en from "../src/text/en.json" with { type: "json" };

const texts: Record<string, string> = en;

/** All texts of a lesson that a reader meets, by their keys. */
function textsOf({ key, stages, guesses, tries }: Lesson): string[] {
  const own = [...stages.map((stage) => stage.key), ...guesses.map((one) => `guess.${one}`), ...tries.map((one) => `try.${one.key}`), "title", "about", "sources"];
  return own.map((part) => `lesson.${key}.${part}`);
}

test("every lesson has its texts, and they name only numbers that it reads", () => {
  for (const lesson of lessons) {
    const rows = lesson.stages.flatMap(({ rows = [] }) => rows.map(([row]) => `lesson.row.${row}`));
    const stages = lesson.stages.map(({ key }) => `lesson.stage.${key}`);
    for (const key of [...textsOf(lesson), ...rows, ...stages, ...lesson.cautions]) {
      assert.ok(texts[key], `${key} is missing`);
      for (const [, name = ""] of (texts[key] ?? "").matchAll(/\{(\w+)\}/g)) assert.ok(lesson.values[name], `${key} names ${name}`);
    }
  }
});

test("every stage with a table has a name for each column and a number in each cell", () => {
  for (const lesson of lessons) {
    for (const { key, columns = [], rows = [] } of lesson.stages) {
      for (const column of columns) assert.ok(texts[`lesson.${lesson.key}.column.${column}`] ?? texts[`lesson.column.${column}`], `${lesson.key} has no column ${column}`);
      for (const [row, ...names] of rows) assert.equal(names.length, columns.length, `${lesson.key}, ${key}, ${row}`);
    }
  }
});

test("a lesson asks first, then runs, and ends with what would change one's mind; read aloud it takes under ten minutes", () => {
  const [wordsPerMinute, thinkingPerStage_min] = [120, 0.6];
  for (const lesson of lessons) {
    const keys = lesson.stages.map(({ key }) => key);
    assert.deepEqual(keys.slice(0, 3), ["question", "predict", "run"]);
    assert.deepEqual(keys.slice(-2), ["explain", "mind"]);
    assert.equal(firstLook(lesson), 3);
    const words = textsOf(lesson).filter((key) => !key.endsWith(".sources")).map((key) => texts[key] ?? "").join(" ").split(/\s+/).length;
    const minutes = words / wordsPerMinute + thinkingPerStage_min * keys.length;
    assert.ok(minutes < 10, `${lesson.key} takes ${minutes.toFixed(1)} minutes`);
  }
});

test("hour, place and way of looking hold until a later stage says otherwise", () => {
  const [lesson] = lessons;
  assert.ok(lesson);
  const [first, last] = [stageAt(lesson, 0), stageAt(lesson, lesson.stages.length - 1)];
  assert.equal(last.way, "heat");
  assert.equal(first.way, undefined);
  assert.equal(last.hour, 15.5);
});

test("a lesson's document takes the names it is given and the values that a run sets", () => {
  const lesson = lessons.find(({ key }) => key === "degrees");
  assert.ok(lesson);
  const document = lessonDocument(lesson, { lesson: "Degrees", note: "Invented.", options: ["Bare"] }, { "weather/wind_ms": 7, "options/3/shade/netShade": 0.6 });
  assert.equal(document["name"], "Degrees");
  const options = document["options"] as { name?: string; shade?: { netShade?: number } }[];
  assert.equal(options[0]?.name, "Bare");
  assert.equal(options[1]?.name, undefined);
  assert.equal(options[3]?.shade?.netShade, 0.6);
  assert.deepEqual((document["weather"] as { wind_ms: number }).wind_ms, 7);
});

test("numbers are picked from a result by path and hour, the greatest of a list by a star", () => {
  const day = { options: [{ sides: [{ steps: { hot: [1, 2, 3] }, top: 4 }, { steps: { hot: [9, 8, 7] }, top: 5 }] }] };
  assert.equal(readAt(day, { unit: "", path: "options/0/sides/*/top" }), 5);
  assert.equal(readAt(day, { unit: "", path: "options/0/sides/0/steps/hot", hour: 2 / 12 }), 3);
  assert.ok(Number.isNaN(readAt(day, { unit: "", path: "options/3/top" })));
});

test("the guess that the numbers bear out is the most, the least, or that all are alike", () => {
  const lesson = { values: { a: { unit: "" }, b: { unit: "" }, d: { unit: "", of: "a", less: "b" } }, answer: { pick: "most", of: { a: "a", b: "b" }, alike: { guess: "both", within: 1 } } } as unknown as Lesson;
  assert.equal(borneOut(lesson, { a: 3, b: 1 }), "a");
  assert.equal(borneOut(lesson, { a: 1.5, b: 1 }), "both");
  assert.equal(withDifferences(lesson, { a: 3, b: 1 })["d"], 2);
  assert.equal(borneOut({ ...lesson, answer: { pick: "least", of: { a: "a", b: "b" } } } as Lesson, { a: 3, b: 1 }), "b");
});
