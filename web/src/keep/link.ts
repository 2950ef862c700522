/** The address that opens this scenario anywhere else: the whole of it stands behind the #. */

import { signal } from "@preact/signals";
import { answer } from "../engine.ts";
import { scenario } from "../store.ts";
import { longestLink, pack } from "./packed.ts";

/** The link to the scenario as it was last asked for; empty where it would be too long. */
export const link = signal("");
/** How long the link is or would be [characters]. */
export const linkLength = signal(0);

/** Makes the link anew. */
export async function refreshLink(): Promise<void> {
  const document = scenario.peek();
  const packed = await pack(document, answer.peek()?.day.modelVersion ?? "");
  if (document !== scenario.peek()) return;
  const address = `${location.origin}${location.pathname}#s=${packed}`;
  linkLength.value = address.length;
  link.value = address.length > longestLink ? "" : address;
}
