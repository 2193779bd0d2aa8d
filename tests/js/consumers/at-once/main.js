import { heat } from "cupwright";

import { answer } from "./answer.js";

window.findings = answer(heat);
