// The functions, ready at once: the module comes with the code.

import { useModule } from "./call.js";
import { bind } from "./functions.js";
import { inlined } from "./inlined.js";

export * from "./all.js";

const bytes = Uint8Array.from(atob(inlined), (letter) => letter.charCodeAt(0));
bind(useModule(new WebAssembly.Module(bytes)));
