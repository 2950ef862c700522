import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { infernoHex, onScale, readable, roundScale, spellsOver, temperatureColour, temperatureScale } from "../src/scales.ts";

test("crossings of a limit are interpolated between instants", () => {
  assert.deepEqual(spellsOver([0, 1, 2, 3, 4], [40, 44, 48, 44, 40], 45), [{ from: 1.25, to: 2.75 }]);
  assert.deepEqual(spellsOver([0, 1, 2], [50, 50, 40], 45), [{ from: 0, to: 1.5 }]);
  assert.deepEqual(spellsOver([0, 1], [44, 46], 45), [{ from: 0.5, to: 1 }]);
  assert.deepEqual(spellsOver([0, 1], [44, 45], 45), []);
});

test("a scale for ranges ends in round numbers, in few steps, and holds what it is made for", () => {
  assert.deepEqual(roundScale([52.2, 55.8, 49, 45]), { from: 44, to: 56, step: 2 });
  assert.deepEqual(roundScale([0, 6.7]), { from: 0, to: 8, step: 2 });
  assert.deepEqual(roundScale([0, 0.3]), { from: 0, to: 1, step: 1 });
  assert.deepEqual(roundScale([-3, 112]), { from: -50, to: 150, step: 50 });
  assert.deepEqual(roundScale([-0.05, 0.05], 0.01), { from: -0.06, to: 0.06, step: 0.02 });
  assert.deepEqual(roundScale([5, 5]), { from: 5, to: 6, step: 1 });
});

test("the scale ends where it says and its brightness rises all the way", () => {
  assert.equal(onScale(temperatureScale.min_C - 5), 0);
  assert.equal(onScale(temperatureScale.max_C + 5), 1);
  // Relative luminance of WCAG 2.2.
  const luminance = (t: number) => {
    const [r, g, b] = temperatureColour(t).map((v) => {
      const c = v / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  let before = -1;
  for (let t = temperatureScale.min_C; t <= temperatureScale.max_C; t += 0.5) {
    assert.ok(luminance(t) > before, `at ${t} °C`);
    before = luminance(t);
  }
});

test("the colours are those of the pictures", () => {
  const palette = readFileSync("../render/palette.go", "utf8");
  const list = palette.match(/infernoHex = \[[^\]]*\]uint32\{([^}]+)\}/)?.[1]?.match(/0x[0-9a-f]{6}/g)?.map(Number);
  assert.deepEqual(list, [...infernoHex]);
  assert.equal(Number(palette.match(/TemperatureFrom\s*=\s*([\d.]+)/)?.[1]), readable.from);
  assert.equal(Number(palette.match(/TemperatureTo\s*=\s*([\d.]+)/)?.[1]), readable.to);
});
