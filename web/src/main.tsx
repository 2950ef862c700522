/** Starts the page: look, keys, engine and view. */

import { effect } from "@preact/signals";
import { render } from "preact";
import { effectiveText } from "./document.ts";
import { startEngine } from "./engine.ts";
import { App } from "./parts/app.tsx";
import { redoEdit, scenario, systemTheme, theme, undoEdit } from "./store.ts";
import { t } from "./text.ts";
import { listenToView } from "./view.ts";

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

followSystemTheme();
effect(() => {
  document.documentElement.dataset["theme"] = theme.value;
});
effect(() => {
  document.title = t("title", { name: effectiveText(scenario.value, ["name"]) });
});
takeKeys();
listenToView();
startEngine();

const root = document.getElementById("app");
if (root) {
  root.textContent = "";
  render(<App />, root);
}
