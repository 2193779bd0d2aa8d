// What both entries offer.

export { cautionTexts, constants, limits, limitTexts, untoldTexts, wantingTexts, windows } from "./about.js";
export { Refusal } from "./call.js";
export { caution, dilution, extraction, heat, plan, ratio, reading, retention, verdict, water } from "./functions.js";
