import { instant, lastInstant } from "../store.ts";

/** How far into the day the chosen hour lies, as a CSS length of its track. */
export function hourPlace(): string {
  return `${(100 * instant.value) / lastInstant}%`;
}

/** The line of the chosen hour through a track of the day. */
export function HourLine() {
  return <span class="hour-line" aria-hidden="true" style={{ left: hourPlace() }} />;
}
