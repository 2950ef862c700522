/** Documents that come from outside and go out again. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { effective, type Json, type JsonObject } from "../src/document.ts";
import type { Day } from "../src/generated/result.ts";
import { checked, parsed, withoutUnknown } from "../src/keep/checked.ts";
import { dayTable, stamp } from "../src/keep/day-table.ts";
import { fileName, fileText, readText } from "../src/keep/files.ts";
import { differences, longestLink, pack, restored, unpack } from "../src/keep/packed.ts";

/** A measured day with the decimals of a weather file: whole watts, tenths of degrees and of m/s. */
const hours: JsonObject[] = Array.from({ length: 24 }, (_, i) => {
  const sun = Math.max(0, Math.sin((Math.PI * (i - 5)) / 14));
  return {
    ghi_Wm2: Math.round(970 * sun + (i * 37) % 11),
    dni_Wm2: Math.round(880 * Math.sqrt(sun) + (i * 53) % 17),
    dhi_Wm2: Math.round(110 * sun + (i * 29) % 7),
    air_C: Math.round(10 * (31 - 9 * Math.cos((Math.PI * (i - 4)) / 12)) + (i * 7) % 5) / 10,
    dewPoint_C: Math.round(10 * (11 + Math.sin(i)) + (i * 3) % 4) / 10,
    wind_ms: Math.round(10 * (2.5 + Math.sin(i / 3)) + (i * 11) % 6) / 10,
    windFrom_deg: (300 + 17 * i) % 360,
    longwave_Wm2: 380 + ((i * 13) % 40),
  };
});

/** One form after another with a dozen edits each, as a busy person makes them. */
function editedOption(form: string, i: number): JsonObject {
  const wires = structuredClone(effective({ options: [{ form }] }, ["options", 0, "trellis", "wires"])) as JsonObject[];
  wires.forEach((wire, w) => (wire["height_m"] = Math.round(100 * (Number(wire["height_m"]) + 0.05 * (w % 2) + 0.05 * i)) / 100));
  return {
    form,
    name: `Block ${i + 1}, east slope`,
    rows: { azimuth_deg: 15 + 35 * i, rowSpacing_m: 2.4 + 0.2 * i, vineSpacing_m: 1.4 + 0.1 * i },
    trellis: { wires, postSpacing_m: 6 },
    shoots: { perMetre: 12 + i, length_m: 1.1 + 0.05 * i, positioning: 0.9, trimTop_m: 2.1 },
    leaves: { area_m2_per_m: 4.1 + 0.3 * i, removedMorning: 0.25, removedAfternoon: 0.05 * i },
    bunches: { perShoot: 1.5, mass_g: 145 },
  };
}

const busy: JsonObject = {
  schemaVersion: 1,
  name: "Älvängen north block (invented)",
  site: { latitude_deg: -33.6, longitude_deg: 138.4, elevation_m: 310, utcOffset_h: 9.5, floor: "straw" },
  weather: { date: "2025-01-14", airMax_C: 41.3, airMin_C: 22.1, dewPoint_C: 11.4, wind_ms: 2.6, windFrom_deg: 310, hours, source: "invented-typical-year.epw, Somewhere (invented)" },
  compare: 1,
  options: ["vsp-spurs", "sprawl", "vsp-spurs", "sprawl"].map(editedOption),
};

test("a link gives back a document that means the same, to the last digit", async () => {
  const text = await pack(busy, "0.2.0");
  const back = await unpack(text);
  assert.ok(typeof back === "object");
  assert.deepEqual(back.dropped, []);
  assert.equal(back.model, "0.2.0");
  for (const key of ["name", "site", "weather", "compare"]) assert.deepEqual(effective(back.document, [key]), effective(busy, [key]));
  for (let i = 0; i < 4; i++) assert.deepEqual(effective(back.document, ["options", i]), effective(busy, ["options", i]));
});

test("four edited options with a weather day fit a link", async () => {
  const text = await pack(busy, "0.2.0");
  const link = `https://somebody.example/vineyards/rowlight/#s=${text}`;
  assert.ok(link.length < longestLink, `${link.length} characters`);
  assert.match(text, /^[A-Za-z0-9_-]+$/);
});

test("hours with more digits than a file has go through whole", () => {
  const odd = { options: [{ form: "sprawl" }], weather: { hours: hours.map((hour) => ({ ...hour, air_C: Number(hour["air_C"]) / 3 })) } };
  assert.deepEqual((restored(differences(odd)) as JsonObject)["weather"], odd.weather);
});

test("hostile texts fill no field that is not valid", async () => {
  const attack = parsed(`{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"name":{"a":1},"seed":1e9,"note":"<b>x</b>",
    "site":{"latitude_deg":"36","longitude_deg":20,"floor":"lava"},"weather":{"hours":[1,2]},
    "options":[{"form":"sprawl","trellis":{"wires":[{"height_m":99}]},"rows":{"azimuth_deg":-5,"rowSpacing_m":3}},7]}`);
  const result = checked(attack);
  assert.ok(result);
  assert.deepEqual(withoutUnknown(result.document), {
    note: "<b>x</b>", site: { longitude_deg: 20 }, weather: {}, options: [{ form: "sprawl", trellis: { wires: [{}] }, rows: { rowSpacing_m: 3 } }],
  });
  assert.equal(({} as JsonObject)["polluted"], undefined);
  for (const text of ["", "%", "AAAA", "a".repeat(50_000), await packedText("[]"), await packedText(`{"v":1,"s":{"options":[]}}`), await packedText("{".repeat(2000))]) {
    assert.equal(await unpack(text), "broken", text.slice(0, 20));
  }
  assert.equal(await unpack(await packedText(`{"v":2}`)), "newer");
  assert.equal(await unpack(await packedText(`{"v":1,"s":"${" ".repeat(3_000_000)}"}`)), "broken", "a text that unpacks to megabytes");
});

async function packedText(text: string): Promise<string> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  return Buffer.from(await new Response(stream).arrayBuffer()).toString("base64url");
}

test("a file keeps what the page does not know, and says what it had to leave out", () => {
  const own = { schemaVersion: 1, options: [{ form: "sprawl", farm: { block: 7 } }], crew: ["x"], fruit: { diameter_mm: 400, skin: "hardy" } };
  const read = readText(JSON.stringify(own));
  assert.ok("document" in read);
  assert.deepEqual(read.document, { ...own, fruit: { skin: "hardy" } });
  assert.deepEqual([read.dropped, read.unknown, read.migratedFrom], [["/fruit/diameter_mm"], ["/options/0/farm", "/crew"], null]);
  assert.deepEqual(JSON.parse(fileText(read.document)), read.document);
});

test("older documents migrate, newer ones are refused, other texts too", () => {
  const old = readText(`\uFEFF{"name":"Before versions","options":[{}]}`);
  assert.ok("document" in old);
  assert.deepEqual([old.migratedFrom, old.document["schemaVersion"]], [0, 1]);
  assert.deepEqual(readText(`{"schemaVersion":7,"options":"of another kind"}`), { refused: "newer", found: 7 });
  for (const [text, refused] of [["not json", "notJson"], ["[1]", "notScenario"], ["{}", "notScenario"]] as const) {
    assert.deepEqual(readText(text), { refused }, text);
  }
});

test("files are named after the scenario", () => {
  assert.equal(fileName({ name: "Stony Bend / 2. Öst\u202E.exe" }, ".json"), "stony-bend-2-öst-exe.json");
  assert.equal(fileName({ name: "…" }, ".csv"), "rowlight.csv");
});

test("the table of the day has intervals, units and means", () => {
  const course = (from: number, to: number) => [from, to];
  const steps = Object.fromEntries(["litShare", "light_Wm2", "mean_C", "hottest_C", "coolest_C", "berry_C", "airNear_C", "windNear_ms"].map((key) => [key, course(10, 11)]));
  const sides = ["west", "south-east"].map((compass) => ({ compass, steps }));
  const air = Object.fromEntries(["temperature_C", "dewPoint_C", "wind_ms", "ghi_Wm2", "dni_Wm2", "dhi_Wm2"].map((key) => [key, course(1, 4)]));
  const day = {
    date: "2026-12-31", utcOffset_h: -9.5, hour: [23 + 11 / 12, 24], sun: { elevation_deg: course(0, 1), azimuth_deg: course(359, 3) }, air, options: [{ sides }],
  } as unknown as Day;
  const [head, line, ...rest] = dayTable(day).split("\r\n");
  const cells = Object.fromEntries((head as string).split(",").map((name, i) => [name, (line as string).split(",")[i]]));
  assert.deepEqual(rest, [""]);
  assert.equal(cells["start"], "2026-12-31T23:55:00-09:30");
  assert.equal(cells["end"], "2027-01-01T00:00:00-09:30");
  assert.equal(cells["solar_azimuth_angle [degree]"], "1");
  assert.equal(cells["air_temperature [degree_Celsius]"], "2.5");
  assert.equal(cells["A_south_east_fruit_surface_hottest_tenth [degree_Celsius]"], "10.5");
  assert.equal(stamp({ date: "2026-07-18", utcOffset_h: 5.75 }, 0), "2026-07-18T00:00:00+05:45");
});

const whole: Json = busy;
test("what is packed is small before it is compressed", () => {
  const bytes = (value: Json) => JSON.stringify(value).length;
  assert.ok(bytes(differences(busy)) < bytes(whole) / 2);
});
