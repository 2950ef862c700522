import type { JsonObject } from "./document.ts";

/** The scenario that a newcomer sees. What it leaves out takes the sizes of the form and the defaults of the schema. */
export const firstScenario: JsonObject = {
  schemaVersion: 1,
  name: "Stony Bend",
  note: "Invented site and weather, for demonstration only.",
  options: [{ form: "vsp-spurs" }, { form: "sprawl" }],
};
