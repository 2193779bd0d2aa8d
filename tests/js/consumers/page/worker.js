import { found } from "./found.js";

postMessage(await found(location.search));
