/**
 * The page within a page of somebody else, to be looked at only. It tells the page around how high it is, so that
 * the frame can be made as high; it tells nothing else.
 */

export function startEmbedded(): void {
  document.documentElement.dataset["embedded"] = "";
  if (window.parent === window) return;
  const tell = () => window.parent.postMessage({ rowlight: "height", height_px: document.documentElement.scrollHeight }, "*");
  new ResizeObserver(tell).observe(document.body);
}
