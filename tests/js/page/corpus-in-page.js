// The traces of the live corpus in a browser.

import * as library from "./cupwright/src/index.js";
import { play } from "./brews.js";

const { lines, wrong } = play(library, await (await fetch("./corpus.txt")).text());
window.findings = { count: lines, of: "lines of brews", wrong };
