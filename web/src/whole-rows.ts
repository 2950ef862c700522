/** A table that is read by scrolling comes to rest with whole rows: none half under the ribbon. */

/** Rows taller than this share of the window are left as they are: bringing one out would move too much. */
const most = 0.25;

/** How long after a turn of the wheel, a touch or a key the page counts as moved by hand [ms]. */
const byHand_ms = 1500;

/** Watches a table whose rows are given by elements that belong together. Returns how to stop. */
export function keepRowsWhole(rowsOf: () => Element[][]): () => void {
  let moved = Number.NEGATIVE_INFINITY;
  const hand = () => (moved = performance.now());
  const rest = () => {
    if (performance.now() - moved > byHand_ms) return;
    moved = Number.NEGATIVE_INFINITY;
    const by = toWholeRow(rowsOf().map(spanOf), document.querySelector(".ribbon")?.getBoundingClientRect().top ?? innerHeight, most * innerHeight);
    if (by) scrollBy({ top: by, behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "instant" : "smooth" });
  };
  const hands = ["wheel", "touchend", "keydown"] as const;
  for (const kind of hands) addEventListener(kind, hand, { passive: true });
  addEventListener("scrollend", rest);
  return () => {
    for (const kind of hands) removeEventListener(kind, hand);
    removeEventListener("scrollend", rest);
  };
}

type Span = readonly [top: number, bottom: number];

function spanOf(row: Element[]): Span {
  const boxes = row.map((part) => part.getBoundingClientRect());
  return [Math.min(...boxes.map(({ top }) => top)), Math.max(...boxes.map(({ bottom }) => bottom))];
}

/** How far to scroll [px] so that the row across an edge lies whole above or below it, the shorter way; 0 where none does. */
export function toWholeRow(rows: readonly Span[], edge: number, tallest: number): number {
  const cut = rows.find(([top, bottom]) => top < edge - 1 && bottom > edge + 1);
  if (!cut || cut[1] - cut[0] > tallest) return 0;
  const [out, away] = [cut[1] - edge, cut[0] - edge];
  return out <= -away ? out : away;
}
