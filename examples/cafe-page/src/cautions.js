// Cautions, each where the hand is that it concerns.

import { cautionTexts } from "../cupwright/src/slim.js";
import words from "../words.en.js";
import { burn } from "./bench.js";
import { h, svg } from "./element.js";
import { amount } from "./units.js";

const PLACES = {
  pour: ["scald", "glass_shock"],
  press: ["pressing"],
  serve: ["very_hot_drink", "caffeine", "milk", "ice"],
};

/** The cautions of one place, or null. `hot_c` is how hot it is there. */
export function cautionsAt(place, recipe, hot_c, units) {
  const here = recipe.cautions.filter((code) => PLACES[place].includes(code));
  const { burn: speed, time_s } = burn(hot_c);
  // Who serves has read of scalds beside the kettle; what is left to say is how fast this drink does it.
  const burns = place !== "press" && recipe.cautions.includes("scald") && speed !== "more_than_five_minutes";
  if (here.length === 0 && !burns) return null;
  const said = words.ticket.burns[speed](amount("temperature", hot_c, units), Math.max(1, Math.floor(time_s)));
  return h(
    "div",
    { class: "caution", role: "note", "aria-label": words.places_of_caution[place] },
    svg(
      "svg",
      { viewBox: "0 0 24 24", class: "caution-mark", "aria-hidden": "true" },
      svg("path", { d: "M12 2.5 22.5 21h-21z" }),
      svg("path", { d: "M12 9v6m0 2.4v.4", class: "stroke" }),
    ),
    h(
      "div",
      {},
      h("strong", {}, words.places_of_caution[place]),
      here.map((code) => h("p", {}, words.cautions[code] ?? cautionTexts[code])),
      burns && h("p", {}, said),
    ),
  );
}
