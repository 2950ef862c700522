/** Starts the page: look, keys, engine and view. */

import { batch, computed, effect } from "@preact/signals";
import { render } from "preact";
import { effectiveText } from "./document.ts";
import { behind, engineState, startEngine } from "./engine.ts";
import { startEmbedded } from "./keep/embedded.ts";
import { openFile, startKeeping } from "./keep/keeping.ts";
import { startOffline } from "./keep/offline.ts";
import { language } from "./language.ts";
import { startLessons } from "./lessons/lesson.ts";
import { App } from "./parts/app.tsx";
import { startReport } from "./parts/report.tsx";
import { fileHovers, projected, readOnly, redoEdit, scenario, sheet, systemTheme, theme, undoEdit } from "./store.ts";
import { t } from "./text.ts";
import { listenToView } from "./view.ts";
import { openWeatherFile } from "./weather-file.ts";

function followSystemTheme(): void {
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const read = () => (systemTheme.value = dark.matches ? "dark" : "light");
  read();
  dark.addEventListener("change", read);
}

/** Undo and redo from everywhere but a box that is being typed in, which has its own. */
function takeKeys(): void {
  window.addEventListener("keydown", (event) => {
    const typing = event.target instanceof HTMLInputElement && event.target.type === "text";
    if (typing || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const again = (key === "z" && event.shiftKey) || key === "y";
    if (!again && key !== "z") return;
    event.preventDefault();
    if (again) redoEdit();
    else undoEdit();
  });
}

/** A weather file or a scenario may be dropped anywhere; without this the browser would leave the page for it. */
function takeDrops(): void {
  const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
  window.addEventListener("dragover", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    fileHovers.value = true;
  });
  window.addEventListener("dragleave", (event) => {
    if (!event.relatedTarget) fileHovers.value = false;
  });
  window.addEventListener("drop", (event) => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    batch(() => {
      fileHovers.value = false;
      if (file?.name.endsWith(".json")) {
        void openFile(file);
        return;
      }
      sheet.value = "site";
      if (file) openWeatherFile(file);
    });
  });
}

followSystemTheme();
effect(() => {
  document.documentElement.dataset["theme"] = projected.value ? "projector" : theme.value;
});
effect(() => {
  document.documentElement.lang = language.value;
});
effect(() => {
  document.documentElement.classList.toggle("behind", behind.value);
});
const named = computed(() => effectiveText(scenario.value, ["name"]));
effect(() => {
  document.title = t("title", { name: named.value });
});
takeKeys();
takeDrops();
startReport();
listenToView();
await startKeeping();
startLessons();
startEngine();

const root = document.getElementById("app");
if (root) {
  root.textContent = "";
  render(<App />, root);
}
if (readOnly) startEmbedded();
// What the first numbers need is fetched before everything is stored for the next visit.
const stop = effect(() => {
  const waits = engineState.value.phase === "loading";
  if (waits || readOnly) return;
  queueMicrotask(() => stop());
  void startOffline();
});
