/** What the fields of the document are called: by the last name of their path, wires by their role. */

import { effective, isObject, letter, type Path } from "./document.ts";
import { scenario } from "./store.ts";
import { t, tOr } from "./text.ts";

export function fieldLabel(path: Path): string {
  const [last, index] = [path.at(-1), path.at(-2)];
  if (path.at(-3) === "wires" && typeof index === "number" && last === "height_m") return wireLabel(path.slice(0, -2), index);
  return tOr(`field.${last}`, path.join("."));
}

/** "Catch wire height, 3": numbered where a role occurs more than once. */
function wireLabel(list: Path, index: number): string {
  const wires = effective(scenario.value, list);
  const roles = (Array.isArray(wires) ? wires : []).map((wire) => (isObject(wire) ? String(wire["role"]) : ""));
  const role = roles[index] ?? "";
  const label = tOr(`field.wire.${role}`, tOr("field.wire.foliage", role));
  const same = roles.filter((other) => other === role).length;
  const number = roles.slice(0, index + 1).filter((other) => other === role).length;
  return same > 1 ? t("field.numbered", { field: label, number }) : label;
}

/** A field by its JSON Pointer, with the letter of its option: "Option B, row spacing". */
export function fieldName(pointer: string): string {
  const path = pointer
    .split("/")
    .slice(1)
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step.replaceAll("~1", "/").replaceAll("~0", "~")));
  if (path[0] !== "options" || typeof path[1] !== "number") return path.length ? fieldLabel(path) : t("field.document");
  const option = t("option", { letter: letter(path[1]) });
  if (path.length === 2) return option;
  const label = fieldLabel(path);
  return `${option}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
}
