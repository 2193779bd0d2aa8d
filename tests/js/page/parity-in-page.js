// The cases in a browser, by both entries of the package: the one that is ready at once and the slim one.

import * as atOnce from "./cupwright/src/index.js";
import { play } from "./brews.js";
import { check } from "./parity.js";

const lines = await (await fetch("./cases.jsonl")).text();
const brews = await (await fetch("./brews.txt")).text();
const first = check(atOnce, lines);

// The slim entry shares the functions: another copy of the package, so that it starts its own module.
const slim = await import("./slim-copy/src/slim.js");
await slim.start(new URL("./slim-copy/cupwright.wasm", import.meta.url));
const { start: _, ...library } = slim;
const second = check(library, lines);

window.findings = {
  count: first.count + second.count,
  of: `cases of ${Math.min(first.functions, second.functions)} functions`,
  wrong: [...first.wrong, ...second.wrong, ...play(atOnce, brews).wrong, ...play(library, brews).wrong],
};
