/** The day of one bunch, picked from the courses of all faces. */

import type { FaceCourse } from "./messages.ts";
import { spellsOver } from "./scales.ts";

/** The day of the face of a bunch that looks to one side. */
export interface FaceDay {
  /** Temperature of the hottest point of the berries at each instant [°C]. */
  course: number[];
  /** Whether the sun is on the face at each instant. */
  lit: boolean[];
  hottest_C: number;
  /** When it is hottest [h]. */
  hottestAt_h: number;
  /** How long the sun is on it [h]. */
  lit_h: number;
}

/** Faces of bunch b are 2b, which looks left, and 2b + 1; undefined where there is no such bunch. */
export function bunchDay(faces: FaceCourse | undefined, hour: readonly number[], bunch: number): [FaceDay, FaceDay] | undefined {
  const count = faces ? faces.surface.length / hour.length : 0;
  if (!faces || bunch < 0 || 2 * bunch + 1 >= count) return undefined;
  const of = (face: number): FaceDay => {
    const course = hour.map((_, i) => faces.surface[i * count + face] as number);
    const lit = hour.map((_, i) => faces.lit[i * count + face] === 1);
    const at = course.reduce((best, value, i) => (value > (course[best] as number) ? i : best), 0);
    const step_h = (hour[1] ?? 0) - (hour[0] ?? 0);
    return {
      course,
      lit,
      hottest_C: course[at] as number,
      hottestAt_h: hour[at] as number,
      lit_h: step_h * lit.filter(Boolean).length,
    };
  };
  return [of(2 * bunch), of(2 * bunch + 1)];
}

/** How long a course lies over a limit [h]. */
export function hoursOver(hour: readonly number[], course: readonly number[], limit: number): number {
  return spellsOver(hour, course, limit).reduce((sum, { from, to }) => sum + to - from, 0);
}
