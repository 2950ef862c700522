/** Helpers: engines of their own, each in its worker, that share the parts of a plan. */

import type { EngineMessage, PartMessage, WholeMessage, WorkMessage } from "./messages.ts";

/** The most helpers that are of use: beyond, making the vines in each takes longer than what they save. */
const most = 8;

/** How many helpers a device has room for: one to a core and to each GB of memory. */
export function poolSize(cores: number, memory_GB: number): number {
  return Math.max(1, Math.min(Math.floor(cores), Math.floor(memory_GB), most));
}

/** The size for this device; browsers that do not tell their memory are taken to have 4 GB. */
export function sizeHere(): number {
  const memory = (navigator as { deviceMemory?: number }).deviceMemory ?? 4;
  return poolSize(navigator.hardwareConcurrency || 1, memory);
}

/** To make the vines of a stage and their light takes a helper as long as so many days of an option on them (measured). */
const vines_days = 45;

/**
 * Which part a helper does next: neighbouring parts share their vines, so each helper has a run of its own, and one that
 * is through helps at the end of the longest run that is left, unless making its vines would take longer than what is left.
 */
export class Shares {
  private readonly runs: { next: number; end: number }[];

  constructor(
    /** Of each part. */
    private readonly days: readonly number[],
    helpers: number,
  ) {
    this.runs = Array.from({ length: helpers }, (_, i) => ({
      next: Math.floor((days.length * i) / helpers),
      end: Math.floor((days.length * (i + 1)) / helpers),
    }));
  }

  take(helper: number): number | undefined {
    const own = this.runs[helper];
    if (own && own.next < own.end) return own.next++;
    const left = ({ next, end }: { next: number; end: number }) => this.days.slice(next, end).reduce((a, b) => a + b, 0);
    const longest = this.runs.reduce((a, b) => (left(b) > left(a) ? b : a));
    return left(longest) > vines_days ? --longest.end : undefined;
  }
}

type HelperMessage = WorkMessage | PartMessage | WholeMessage;

/** One helper. What is sent before it has started waits. */
export class Helper {
  private readonly worker = new Worker(new URL("engine-worker.js", document.baseURI));
  private waiting: HelperMessage[] | null = [];

  constructor(hear: (message: EngineMessage) => void) {
    this.worker.onmessage = ({ data }: MessageEvent<EngineMessage>) => {
      if (data.kind === "ready") {
        this.waiting?.forEach((message) => this.worker.postMessage(message));
        this.waiting = null;
      }
      hear(data);
    };
    this.worker.onerror = (event) => hear({ kind: "crashed", generation: -1, reason: event.message });
  }

  tell(message: HelperMessage): void {
    if (this.waiting) this.waiting.push(message);
    else this.worker.postMessage(message);
  }

  end(): void {
    this.worker.terminate();
  }
}
