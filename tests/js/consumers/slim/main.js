import { heat, start } from "cupwright/slim";

import { answer } from "./answer.js";

await start(new URL("cupwright/cupwright.wasm", import.meta.url));
window.findings = answer(heat);
