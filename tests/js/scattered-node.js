// node scattered-node.js PACKAGE PLANS: the module of a folder at scattered inputs.

import { readFileSync } from "node:fs";
import { join } from "node:path";

import { check } from "./scattered.js";

const [folder, plans] = process.argv.slice(2);
const module = new WebAssembly.Module(readFileSync(join(folder, "cupwright.wasm")));
const { count, functions, wrong } = await check(module, readFileSync(plans, "utf8"));
for (const words of wrong) console.error(words);
console.log(`${count} scattered inputs of ${functions} functions, ${wrong.length} wrong`);
process.exitCode = wrong.length === 0 && count > 0 ? 0 : 1;
