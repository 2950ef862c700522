/** How much of a program has come. */

import type { Loaded } from "./download.ts";
import { t } from "./text.ts";
import { megabytes } from "./units.ts";

/** Without a size in the manifest only the bytes so far. */
export function loadingText(key: "loading.engine" | "loading.view", { loaded, total }: Loaded): string {
  if (!total) return t(`${key}.unknown`, { loaded: megabytes(loaded) });
  return t(key, { loaded: megabytes(loaded), total: megabytes(total) });
}
