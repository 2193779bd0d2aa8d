// What both entries offer.

export {
  cautionTexts,
  constants,
  cueTexts,
  doingTexts,
  happeningTexts,
  limits,
  limitTexts,
  stepTexts,
  untoldTexts,
  wantingTexts,
  whyTexts,
  windows,
} from "./about.js";
export { Refusal } from "./call.js";
export {
  advise,
  calibrate,
  caution,
  decision,
  dilution,
  extraction,
  forecast,
  heat,
  plan,
  profile,
  ratio,
  reading,
  retention,
  uncertainty,
  verdict,
  water,
} from "./functions.js";
export { columns } from "./columns.js";
export { live } from "./live.js";
