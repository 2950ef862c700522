// Writes src/generated/*.ts from the JSON Schemas that the Go types made. `npm run generate`.
import { readFile, writeFile } from "node:fs/promises";
import { compile } from "json-schema-to-typescript";

const folder = new URL("../src/generated/", import.meta.url);
const sources = [
  { schema: "../../sim/scenario/schema.json", name: "Scenario", out: "scenario.ts", open: true },
  { schema: "../../sim/result/schema.json", name: "Day", out: "result.ts", open: false },
];

for (const { schema, name, out, open } of sources) {
  const raw = JSON.parse(await readFile(new URL(schema, import.meta.url), "utf8"));
  const typescript = await compile(raw, name, {
    bannerComment: `/* Made from ${schema.replace("../../", "")} by \`npm run generate\`; do not edit. */`,
    additionalProperties: open,
    unknownAny: true,
    ignoreMinAndMaxItems: true,
    enableConstEnums: false,
  });
  await writeFile(new URL(out, folder), typescript);
}
