// What both entries offer.

export { cautionTexts, constants, limits, limitTexts, windows } from "./about.js";
export { Refusal } from "./call.js";
export {
  caution, decision, dilution, extraction, heat, plan, ratio, reading, retention, uncertainty, verdict, water,
} from "./functions.js";
