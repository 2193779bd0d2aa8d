// The module at scattered inputs in a browser.

import { check } from "./scattered.js";

const module = await WebAssembly.compileStreaming(fetch("./cupwright/cupwright.wasm"));
window.findings = await check(module, await (await fetch("./scattered.json")).text());
