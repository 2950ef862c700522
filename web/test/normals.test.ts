/** Monthly normals as they are typed and as the engine reads them. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { normalsText } from "../src/normals.ts";

const year = (months: Record<number, string[]>) => Array.from({ length: 12 }, (_, i) => months[i + 1] ?? ["", "", "", "", ""]);
const head = "month,airMax_C,airMin_C,dewPoint_C,light_MJm2,wind_ms\n";

test("months without a number are left out", () => {
  assert.equal(normalsText(year({}), "metric"), head);
  assert.equal(normalsText(year({ 7: ["36.6", "19,1", "", "28.6", ""], 8: [" ", "", "", "", ""] }), "metric"), `${head}7,36.6,19.1,,28.6,\n`);
});

test("typed US units become those of the file", () => {
  const [, july] = normalsText(year({ 7: ["98.6", "68", "", "", "10"] }), "us").split("\n");
  const [month, highest, lowest, , , wind] = (july as string).split(",").map(Number) as [number, number, number, number, number, number];
  assert.equal(month, 7);
  assert.ok(Math.abs(highest - 37) < 1e-9 && Math.abs(lowest - 20) < 1e-9);
  assert.ok(Math.abs(wind - 4.4704) < 1e-6); // 10 mph
});

test("what is no number stays for its fault to be told, within its field", () => {
  assert.equal(normalsText(year({ 1: ["hot, very", "1", "", "", ""] }), "metric"), `${head}1,hot  very,1,,,\n`);
});
