// node corpus.js PACKAGE CORPUS: the package of a folder against the traces of the live corpus.

import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

import { play } from "./brews.js";

const [folder, corpus] = process.argv.slice(2);
const library = await import(pathToFileURL(join(resolve(folder), "src/index.js")).href);
const { lines, wrong } = play(library, readFileSync(corpus, "utf8"));
for (const words of wrong) console.error(words);
console.log(`Node.js ${process.version}: ${lines} lines of brews, ${wrong.length} wrong`);
process.exitCode = wrong.length === 0 && lines > 0 ? 0 : 1;
