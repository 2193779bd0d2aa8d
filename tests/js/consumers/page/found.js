import { answer } from "./answer.js";

/** The answer by an entry, or why there is none. */
export async function found(entry) {
  try {
    if (entry === "?slim") {
      const { heat, start } = await import("./node_modules/cupwright/src/slim.js");
      await start(new URL("./node_modules/cupwright/cupwright.wasm", import.meta.url));
      return answer(heat);
    }
    const { heat } = await import("./node_modules/cupwright/src/index.js");
    return answer(heat);
  } catch (error) {
    return `${error.name}: ${error.message}`;
  }
}
