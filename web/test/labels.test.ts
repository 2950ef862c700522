import assert from "node:assert/strict";
import { test } from "node:test";
import { fieldSchema, type Path, pointer } from "../src/document.ts";
import { fieldLabel } from "../src/labels.ts";
import { tOr } from "../src/text.ts";

/** All paths below one that hold a value of their own, and the entries of lists. */
function leaves(path: Path): Path[] {
  const field = fieldSchema(path);
  if (field?.properties) return Object.keys(field.properties).flatMap((key) => leaves([...path, key]));
  return fieldSchema([...path, 0]) ? [path, ...leaves([...path, 0])] : [path];
}

/** What the sheets of options and of the site edit, or faults may name there. */
const named = [["options", 0], ["site"], ["fruit"], ["limits"], ["weather"]]
  .flatMap(leaves)
  .filter((path) => !pointer(path).startsWith("/weather/hours/") && !pointer(path).startsWith("/options/0/cost"));

/** Prefixes of the texts of values, where it is not the name of the field. */
const prefixes: Record<string, string> = { netColour: "cloth", overheadColour: "cloth" };

test("every field has a label in words", () => {
  assert.ok(named.length > 60);
  const bare = named.filter((path) => fieldLabel(path) === path.join("."));
  assert.deepEqual(bare.map(pointer), []);
});

test("every choice among values has words for each", () => {
  const bare = named.flatMap((path) => {
    const field = String(path.at(-1));
    return (fieldSchema(path)?.enum ?? []).map((value) => `${prefixes[field] ?? field}.${value}`).filter((key) => tOr(key, "") === "");
  });
  assert.deepEqual(bare, []);
});
