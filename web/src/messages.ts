/** The messages between the page and the engine in its worker. */

/** From the page: compute this scenario; the newest generation wins. */
export interface RunMessage {
  kind: "run";
  generation: number;
  scenario: string;
}

/** The faces of one option, for drawing: one value per instant and face. */
export interface FaceCourse {
  /** Temperature of the hottest point of the berry [°C], at [instant · faces + face]. */
  surface: Float32Array;
  /** 1 where the face is in direct sun, same index. */
  lit: Uint8Array;
}

/** One thing wrong with the scenario. */
export interface Fault {
  code: string;
  path: string;
  values?: Record<string, unknown>;
}

export type EngineMessage =
  | { kind: "loading"; loaded: number; total: number }
  | { kind: "unavailable"; reason: string }
  | { kind: "ready" }
  | { kind: "progress"; generation: number; stage: string; done: number }
  | { kind: "faults"; generation: number; faults: string }
  | { kind: "result"; generation: number; result: string; faces: FaceCourse[] }
  | { kind: "crashed"; generation: number; reason: string };
