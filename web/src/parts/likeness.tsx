/** How an option came from another one: "A, but: Net along the fruit None → Both sides". */

import { likeness, type Change } from "../changes.ts";
import { fieldSchema, type Json, letter } from "../document.ts";
import { optionHook } from "../hooks.ts";
import { fieldLabel } from "../labels.ts";
import { scenario, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { longDate, show, text } from "../units.ts";

export function LikenessLine({ option }: { option: number }) {
  const found = likeness(scenario.value, option);
  if (!found) return null;
  const base = letter(found.like);
  return (
    <p class="likeness" data-testid={optionHook(option, "likeness")}>
      {found.changes.length ? t("likeness.but", { letter: base, changes: found.changes.map(changeText).join("; ") }) : t("likeness.same", { letter: base })}
    </p>
  );
}

function changeText({ path, from, to }: Change): string {
  const field = fieldLabel(path);
  if (Array.isArray(from) || Array.isArray(to)) return t("likeness.list", { field });
  return t("likeness.change", { field, from: valueText(path, from), to: valueText(path, to) });
}

/** The catalogue keys that name the values of a choice, where they are not those of the field. */
const wordsOf: Record<string, string> = { netColour: "cloth", overheadColour: "cloth" };

function valueText(path: Change["path"], value: Json | undefined): string {
  const schema = fieldSchema(path);
  const last = String(path.at(-1));
  if (typeof value === "number") {
    const counts = schema?.type === "integer" || last === "perShoot";
    return text(show(value, counts ? "count" : (schema?.["x-unit"] ?? "1"), units.value, schema?.type === "integer" || schema?.["x-unit"] === "deg" ? 0 : undefined));
  }
  if (!value) return t("likeness.nothing");
  return schema?.enum ? tOr(`${wordsOf[last] ?? last}.${value}`, String(value)) : longDate(String(value));
}
