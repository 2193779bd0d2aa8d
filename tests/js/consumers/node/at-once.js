import { heat } from "cupwright";

import { answer } from "./answer.js";

console.log(answer(heat));
