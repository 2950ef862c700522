/**
 * The words within the drawings of the view, which hands over what they mean: a code and what it is about, apart by
 * spaces (render/saying.go lists them).
 */

import { t, tOr } from "./text.ts";
import { formatNumber } from "./units.ts";
import { sharedWord } from "./words.ts";

/** A figure with the digits that it has, as the language of the page writes it. */
const figure = (digits = "") => formatNumber(Number(digits), digits.split(".")[1]?.length ?? 0);

const length = (digits?: string, unit = "") => `${figure(digits)} ${unit}`.trim();

/** Roles of wires, each followed by how many there are. Of a roof only the outermost are spoken of, so they are not counted. */
function wires([role, count, ...more]: string[]): string[] {
  if (!role) return [];
  const word = tOr(`drawing.wires.${role}`, role);
  return [count === "1" || role === "roof" ? word : `${count} × ${word}`, ...wires(more)];
}

/** A saying of a drawing in the language of the page; itself where its code is unknown. */
export function drawingWords(saying: string): string {
  const [code, ...about] = saying.split(" ");
  const [first = "", second = "", third = ""] = about;
  switch (code) {
    case "wires": return `${length(first, second)} ${wires(about.slice(2)).join(", ")}`;
    case "fruit": return `${figure(first)}–${length(second, third)} ${t("drawing.fruit")}`;
    case "spacing": return t("drawing.rows", { rows: length(first, third), vines: length(second, third) });
    case "length": return length(first, second);
    case "side":
    case "row": return t("drawing.side", { side: sharedWord(first) });
    case "looking": return t("drawing.looking", { direction: sharedWord(first) });
    case "net": return tOr(`drawing.net.${first}`, first);
    case "point": return tOr(`point.${first}`, first);
    case "hour": return `${first}:00`;
  }
  return saying;
}
