/** The page without a network: everything is stored on the first visit, and a newer version waits to be asked for. */

import { signal } from "@preact/signals";

/** True while a newer Rowlight is stored and waits. */
export const update = signal(false);

let waiting: ServiceWorker | null = null;
let asked = false;

/** Begins to store the page; where the browser cannot, the page works with a network alone. */
export async function startOffline(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register("service-worker.js", { updateViaCache: "none" });
    offer(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const next = registration.installing;
      next?.addEventListener("statechange", () => {
        // Without one in charge this is the first visit, and there is nothing newer to offer.
        if (next.state === "installed" && navigator.serviceWorker.controller) offer(next);
      });
    });
    navigator.serviceWorker.addEventListener("controllerchange", () => asked && location.reload());
  } catch {
    // A host without a secure address, or a browser that forbids it.
  }
}

function offer(worker: ServiceWorker | null): void {
  if (!worker) return;
  waiting = worker;
  update.value = true;
}

/** Goes over to the newer version; the work is kept and comes back with it. */
export function useUpdate(): void {
  asked = true;
  waiting?.postMessage("take over");
}
