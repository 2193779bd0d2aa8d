import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";

import { heat, start } from "cupwright/slim";

import { answer } from "./answer.js";

assert.throws(() => answer(heat), TypeError, "a call before the start");
await start(readFile(fileURLToPath(import.meta.resolve("cupwright/cupwright.wasm"))));
console.log(answer(heat));
