/** What wasm_exec.js of the Go installation defines. */
declare class Go {
  readonly importObject: WebAssembly.Imports;
  /** Runs the program; resolves when it ends. */
  run(instance: WebAssembly.Instance): Promise<void>;
}
