// Both entries in workers; the slim one with a module compiled once, here.

import assert from "node:assert/strict";
import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";

const path = createRequire(import.meta.url).resolve("cupwright/cupwright.wasm");
const module = await WebAssembly.compile(await readFile(path));
const answers = await Promise.all(
  ["cupwright", "cupwright/slim"].map(async (entry) => {
    const worker = new Worker(new URL("./worker.js", import.meta.url), { workerData: { entry, module } });
    const [found] = await once(worker, "message");
    return found;
  }),
);
assert.equal(answers[0], answers[1]);
console.log(answers[0]);
