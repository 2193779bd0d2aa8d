// The functions, to be started with a module of one's own choosing.

import { useModule } from "./call.js";
import { bind } from "./functions.js";

export * from "./all.js";

/**
 * Makes the functions ready.
 *
 * @param {string | URL | Response | Promise<Response> | BufferSource | WebAssembly.Module} source
 *   Where `cupwright.wasm` is, or what is in it.
 */
export async function start(source) {
  bind(useModule(await compiled(await source)));
}

async function compiled(source) {
  if (source instanceof WebAssembly.Module) return source;
  if (typeof source === "string" || source instanceof URL) return compiled(await fetch(source));
  if (typeof Response === "function" && source instanceof Response) {
    if (!source.ok) throw new Error(`${source.url}: ${source.status} ${source.statusText}`);
    return WebAssembly.compile(await source.arrayBuffer());
  }
  return WebAssembly.compile(source);
}
