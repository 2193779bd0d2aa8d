// node node.js PACKAGE CASES BREWS: the package of a folder against a file of cases and one of brews.

import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

import { play } from "./brews.js";
import { check } from "./parity.js";

const [folder, cases, brews] = process.argv.slice(2);
const library = await import(pathToFileURL(join(resolve(folder), "src/index.js")).href);
const { count, functions, wrong } = check(library, readFileSync(cases, "utf8"));
const played = play(library, readFileSync(brews, "utf8"));
wrong.push(...played.wrong);
for (const words of wrong) console.error(words);
console.log(`${count} cases of ${functions} functions and ${played.lines} lines of brews, ${wrong.length} wrong`);
process.exitCode = wrong.length === 0 ? 0 : 1;
