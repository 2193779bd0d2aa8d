import { parentPort, workerData } from "node:worker_threads";

import { answer } from "./answer.js";

const { heat, start } = await import(workerData.entry);
if (start) await start(workerData.module);
parentPort.postMessage(answer(heat));
