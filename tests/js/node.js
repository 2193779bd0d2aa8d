// node node.js PACKAGE CASES: the package of a folder against a file of cases.

import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

import { check } from "./parity.js";

const [folder, cases] = process.argv.slice(2);
const library = await import(pathToFileURL(join(resolve(folder), "src/index.js")).href);
const { count, functions, wrong } = check(library, readFileSync(cases, "utf8"));
for (const words of wrong) console.error(words);
console.log(`${count} cases of ${functions} functions, ${wrong.length} wrong`);
process.exitCode = wrong.length === 0 ? 0 : 1;
