export * from "./index.js";

/**
 * Makes the functions ready; until then they throw a TypeError.
 *
 * @param source Where `cupwright.wasm` is, or what is in it.
 */
export function start(
  source: string | URL | Response | Promise<Response> | BufferSource | WebAssembly.Module,
): Promise<void>;
