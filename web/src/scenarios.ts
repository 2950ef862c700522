import stonyBend from "../../testdata/scenarios/stony-bend.json" with { type: "json" };
import type { JsonObject } from "./document.ts";

/** The scenario that a newcomer sees: invented, and marked so in its note. */
export const firstScenario = stonyBend as unknown as JsonObject;
