/**
 * The weather file that the person has opened. The engine keeps it, in this browser; here is what it says
 * about the file and its days. A file or a day that cannot be used leaves everything as it was.
 */

import { batch, effect, signal } from "@preact/signals";
import { engineState, listenToEngine, tellEngine } from "./engine.ts";
import { effectiveNumber, effectiveText } from "./document.ts";
import type { EngineMessage, Fault, OpenedWeather, TableMapping, TakenDay, WeatherContents, WeatherTable } from "./messages.ts";
import { scenario, takeMeasuredDay } from "./store.ts";

/** The engine reads no longer file than this and says so; more of one need not be sent [bytes]. */
const enough = 32 * 1024 * 1024 + 1;

/** A file that is open, with what was left out or looks odd. */
export interface OpenFile {
  contents: WeatherContents;
  notices: readonly Fault[];
}

/** What was refused: a file by its name, or a day of the open file; in words where the file was not even read. */
export interface Refused {
  name: string;
  what: "file" | "day";
  faults: readonly Fault[];
  reason?: string;
}

/** A table that waits for its mapping to be confirmed. */
export interface OpenTable {
  table: WeatherTable;
  mapping: TableMapping;
}

/** A file with the mapping that it is read by, or with what parts the fields of a table whose mapping is to be guessed. */
interface Source {
  file: File;
  mapping: TableMapping | null;
  separator?: string;
}

export const openTable = signal<OpenTable | null>(null);
export const openFile = signal<OpenFile | null>(null);
/** The name of the file that is being read. */
export const reading = signal<string | null>(null);
export const refused = signal<Refused | null>(null);
/** What was filled in the day that was taken last, and which day that is. */
export const takenDay = signal<{ date: string; source: string; notices: readonly Fault[] } | null>(null);

/** The last file that could be read and the one that is being read; after a crash the engine needs it again. */
let held: Source | null = null;
let wanted: Source | null = null;
/** The table that waits, for its mapping. */
let waiting: File | null = null;
let askedFile = 0;
let askedDay = 0;
let gestureOfDay: string | null = null;

/** Opens a file in place of the one that is open. */
export function openWeatherFile(file: File): void {
  openTable.value = null;
  want({ file, mapping: null });
}

/** Changes the mapping of the table that waits. */
export function changeMapping(change: Partial<TableMapping>): void {
  const now = openTable.peek();
  if (now) openTable.value = { ...now, mapping: { ...now.mapping, ...change } };
}

/** Parts the fields of the table that waits elsewhere, and guesses its mapping anew: other fields hold other things. */
export function partTable(separator: string): void {
  changeMapping({ separator });
  if (waiting) want({ file: waiting, mapping: null, separator });
}

/** Reads the table that waits by its mapping. */
export function readTable(): void {
  const now = openTable.peek();
  if (now && waiting) want({ file: waiting, mapping: now.mapping });
}

/** Leaves the table that waits; what was open before stays. */
export function leaveTable(): void {
  waiting = null;
  batch(() => {
    openTable.value = null;
    refused.value = null;
  });
}

function want(source: Source): void {
  wanted = source;
  reading.value = source.file.name;
  refused.value = null;
  if (engineState.peek().phase === "running") void send(source);
}

/** What a file may not say itself: where it is from, of what year, and what its columns are. */
function asked({ mapping, separator }: Source): string {
  const document = scenario.peek();
  const number = (field: string) => effectiveNumber(document, ["site", field]);
  return JSON.stringify({
    site: { latitude_deg: number("latitude_deg"), longitude_deg: number("longitude_deg"), elevation_m: number("elevation_m"), utcOffset_h: number("utcOffset_h") },
    date: effectiveText(document, ["weather", "date"]),
    ...(mapping && { mapping }),
    ...(separator && { separator }),
  });
}

/** Takes a day of the open file into the scenario, as one step or as a part of a gesture. */
export function takeDayOfFile(month: number, day: number, gesture: string | null = null): void {
  askedDay += 1;
  gestureOfDay = gesture;
  tellEngine({ kind: "weatherDay", generation: askedDay, month, day });
}

async function send(source: Source): Promise<void> {
  const { file } = source;
  const generation = ++askedFile;
  try {
    const bytes = await file.slice(0, enough).arrayBuffer();
    if (generation === askedFile) tellEngine({ kind: "weather", generation, name: file.name, bytes, asked: asked(source) }, [bytes]);
  } catch (error) {
    if (generation === askedFile) refuse({ name: file.name, what: "file", faults: [], reason: String(error) });
  }
}

// An engine that has just started knows no file.
effect(() => {
  const source = engineState.value.phase === "running" ? (wanted ?? held) : null;
  if (source) void send(source);
});

listenToEngine((message: EngineMessage) => {
  if (message.kind === "weatherFile" && message.generation === askedFile) takeFile(JSON.parse(message.opened) as OpenedWeather);
  if (message.kind === "scenarioDay" && message.generation === askedDay) takeDay(JSON.parse(message.taken) as TakenDay);
});

function takeFile({ file, table, notices, faults }: OpenedWeather): void {
  const source = wanted ?? held;
  if (table) {
    waiting = source?.file ?? null;
    wanted = null;
    batch(() => {
      reading.value = null;
      openTable.value = { table, mapping: table.mapping };
    });
    return;
  }
  if (!file) {
    refuse({ name: source?.file.name ?? "", what: "file", faults });
    return;
  }
  held = source;
  wanted = null;
  waiting = null;
  batch(() => {
    reading.value = null;
    openTable.value = null;
    openFile.value = { contents: file, notices };
  });
}

function refuse(what: Refused): void {
  wanted = null;
  batch(() => {
    reading.value = null;
    refused.value = what;
  });
}

function takeDay({ fragment, notices, faults }: TakenDay): void {
  if (!fragment) {
    refuse({ name: openFile.peek()?.contents.name ?? "", what: "day", faults });
    return;
  }
  const { date, source } = fragment["weather"] as { date: string; source: string };
  batch(() => {
    refused.value = null;
    takenDay.value = { date, source, notices };
    takeMeasuredDay(fragment, gestureOfDay);
  });
}
