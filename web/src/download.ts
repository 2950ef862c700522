/** Fetches a WebAssembly program and tells how many bytes have come. */

export interface Loaded {
  loaded: number;
  total: number;
}

interface Manifest {
  [file: string]: { bytes: number } | undefined;
}

/** The size of a file as the site's manifest has it; 0 when it does not say. */
async function sizeOf(file: string): Promise<number> {
  const response = await fetch("manifest.json");
  if (!response.ok) return 0;
  const manifest = (await response.json()) as Manifest;
  return manifest[file]?.bytes ?? 0;
}

/**
 * Compiles and instantiates a program while it arrives. The bytes counted are those after
 * decompression, as the manifest gives them, so that progress is true on any host.
 */
export async function instantiate(
  file: string,
  imports: WebAssembly.Imports,
  progress: (state: Loaded) => void,
): Promise<WebAssembly.Instance> {
  const [total, response] = await Promise.all([sizeOf(file), fetch(file)]);
  if (!response.ok || !response.body) throw new Error(`${file}: ${response.status} ${response.statusText}`);
  let loaded = 0;
  const counted = response.body.pipeThrough(
    new TransformStream<Uint8Array, Uint8Array>({
      transform(chunk, controller) {
        loaded += chunk.byteLength;
        progress({ loaded, total });
        controller.enqueue(chunk);
      },
    }),
  );
  const wasm = new Response(counted, { headers: { "Content-Type": "application/wasm" } });
  const { instance } = await WebAssembly.instantiateStreaming(wasm, imports);
  return instance;
}
