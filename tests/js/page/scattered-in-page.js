// The module at scattered inputs in a browser.

import { check } from "./scattered.js";

const { instance } = await WebAssembly.instantiateStreaming(fetch("./cupwright/cupwright.wasm"));
window.findings = check(instance.exports, await (await fetch("./scattered.json")).json());
