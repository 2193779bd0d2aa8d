// The page itself and a worker, each with one entry of the package: that which the address asks for.

import { found } from "./found.js";

const worker = new Worker(`worker.js${location.search}`, { type: "module" });
const told = new Promise((tell) => worker.addEventListener("message", ({ data }) => tell(data)));
window.findings = [await found(location.search), await told];
