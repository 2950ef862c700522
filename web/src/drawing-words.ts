/**
 * The words within the drawings of the view, which writes them in English: wires and heights of a cross-section, sides
 * and nets of a slice, directions of an outlook.
 */

import { t, tOr } from "./text.ts";
import { formatNumber } from "./units.ts";
import { sharedWord } from "./words.ts";

/** Phrases that stand within a text; each has a text of its own under "drawing." */
export const phrases = ["fruiting wire", "foliage wire", "catch wires", "catch wire", "tie wire", "roof wires", "shade net", "bird net", "net over the rows", "fruit"] as const;
const phrase = new RegExp(`\\b(${phrases.join("|")})\\b`, "g");

/** A text of a drawing in the language of the page, with its decimal mark. */
export function drawingWords(text: string): string {
  const [, rows, vines] = /^rows (.+), vines (.+)$/.exec(text) ?? [];
  const [, looking] = /^looking (\S+)$/.exec(text) ?? [];
  const [, side] = /^(\S+) side(?: of the row)?$/.exec(text) ?? [];
  const told =
    rows && vines ? t("drawing.rows", { rows, vines })
    : looking ? t("drawing.looking", { direction: sharedWord(looking) })
    : side ? t("drawing.side", { side: sharedWord(side) })
    : tOr(`point.${text}`, text.replace(phrase, (found) => tOr(`drawing.${found}`, found)));
  return told.replace(/(\d)\.(\d)/g, `$1${formatNumber(0.5, 1).charAt(1)}$2`);
}
