/**
 * The service worker: stores every file of the site on the first visit and answers from there. The build puts the
 * list of files with their hashes before this text, so that any change of the site is a new worker; files that did
 * not change are taken over from the store before.
 */

/** Every file of the site with the SHA-256 of its content; a file without one is stored as it comes. */
declare const siteFiles: Record<string, string>;

/** The part of a service worker's scope that is used here. */
interface Scope {
  registration: { scope: string };
  clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: string, hear: (event: Lifecycle & Fetch & { data: unknown }) => void): void;
}
interface Lifecycle {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetch {
  request: Request;
  respondWith(answer: Promise<Response>): void;
}
const scope = globalThis as unknown as Scope;

const prefix = `rowlight ${scope.registration.scope} `;

/** The store of this version, named after all hashes. */
async function storeName(): Promise<string> {
  const text = JSON.stringify(siteFiles);
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  return prefix + Array.from(hash.subarray(0, 8), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

const address = (file: string) => new URL(file, scope.registration.scope).href;

async function storeAll(): Promise<void> {
  const store = await caches.open(await storeName());
  await Promise.all(Object.entries(siteFiles).map(([file, hash]) => storeOne(store, file, hash)));
}

async function storeOne(store: Cache, file: string, hash: string): Promise<void> {
  const found = (await stored(file, hash)) ?? (await fetch(address(file), { cache: "no-cache" }));
  if (!found.ok) throw new Error(`${file}: ${found.status}`);
  const bytes = await found.arrayBuffer();
  // A site that is being replaced right now would give files of two versions.
  if (hash && (await sha256(bytes)) !== hash) throw new Error(`${file} is of another version`);
  await store.put(address(file), new Response(bytes, { headers: { "Content-Type": found.headers.get("Content-Type") ?? "" } }));
}

/** The same content in the store of an earlier version. */
async function stored(file: string, hash: string): Promise<Response | undefined> {
  if (!hash) return undefined;
  for (const name of await caches.keys()) {
    if (!name.startsWith(prefix)) continue;
    const response = await (await caches.open(name)).match(address(file));
    if (response && (await sha256(await response.clone().arrayBuffer())) === hash) return response;
  }
  return undefined;
}

async function sha256(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function forgetOthers(): Promise<void> {
  const own = await storeName();
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(prefix) && name !== own).map((name) => caches.delete(name)));
}

/** The stored file, whatever stands behind its name in the address; what is not stored is asked for. */
async function answer(request: Request): Promise<Response> {
  const asked = new URL(request.url);
  const file = asked.origin + (asked.pathname.endsWith("/") ? `${asked.pathname}index.html` : asked.pathname);
  const store = await caches.open(await storeName());
  return (await store.match(file)) ?? fetch(request);
}

scope.addEventListener("install", (event) => event.waitUntil(storeAll()));
scope.addEventListener("activate", (event) => event.waitUntil(forgetOthers().then(() => scope.clients.claim())));
scope.addEventListener("message", (event) => {
  if (event.data === "take over") event.waitUntil(scope.skipWaiting());
});
scope.addEventListener("fetch", (event) => {
  const own = event.request.method === "GET" && event.request.url.startsWith(scope.registration.scope);
  if (own) event.respondWith(answer(event.request));
});
