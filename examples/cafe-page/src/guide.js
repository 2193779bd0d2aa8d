// A brew under way: the recipe it was begun with and the moment each step was done. Only moments are kept, so that
// neither a reload nor a locked screen stops the clock.

const KEY = "brew-ticket.guide";
// A guide of another shape, left by an older page, is not taken up.
const SHAPE = 2;

export function begin(plan, all, now) {
  const { recipe, to_heat_g } = plan;
  const { wish, brewer, kitchen } = all;
  const guide = {
    shape: SHAPE,
    begun: now,
    done: [],
    recipe,
    to_heat_g,
    contact_s: brewer.contact_s,
    rinse_g: brewer.rinse_g,
    pressed: brewer.pressed,
    steeped: brewer.held_strength_pct > 0,
    servings: wish.servings,
    add_water: wish.add_water,
    added_c: kitchen.added_c,
    serve_c: wish.serve_c,
  };
  keep(guide);
  return guide;
}

/** A guide as kept or heard of, or null where it is of another shape. */
export const known = (guide) => (guide?.shape === SHAPE ? guide : null);

/** The brew under way on this device, or null. */
export function underWay() {
  try {
    return known(JSON.parse(localStorage.getItem(KEY)));
  } catch {
    return null;
  }
}

/** Puts a guide on this device in place of what is there; null takes it away. */
export function keep(guide) {
  try {
    if (guide) localStorage.setItem(KEY, JSON.stringify(guide));
    else localStorage.removeItem(KEY);
  } catch {
    // Without storage the guide lasts as long as the page.
  }
}

export function stepDone(guide, now) {
  guide.done.push(now);
  keep(guide);
}

export function stepBack(guide) {
  guide.done.pop();
  keep(guide);
}

/** How many cups a batch fills, or null where it fills no whole number of them. */
export function cupsOfBatch({ servings, recipe }) {
  const cups = servings / recipe.batches;
  return Number.isInteger(cups) ? cups : null;
}

/** Where a guide stands: the step that is on, its batch and the number of steps in all. */
export function stand(guide) {
  const batch = batchSteps(guide);
  const last = lastSteps(guide);
  const { batches } = guide.recipe;
  const inBatches = batch.length * batches;
  const of = inBatches + last.length;
  const index = guide.done.length;
  if (index >= of) return { finished: true, of, batches };
  const inBatch = index < inBatches;
  return {
    finished: false,
    kind: inBatch ? batch[index % batch.length] : last[index - inBatches],
    batch: inBatch ? Math.floor(index / batch.length) + 1 : null,
    batches,
    step: index + 1,
    of,
    since: guide.done[index - 1] ?? guide.begun,
  };
}

// Cups are filled from each batch while it is hot, where that comes out even; the recipe's temperatures are of that.
function batchSteps(guide) {
  const { rinse_g, pressed, steeped } = guide;
  return [
    "heat",
    ...(rinse_g === null ? [] : ["preheat"]),
    "dose",
    "pour",
    steeped ? "steep" : "flow",
    ...(pressed ? ["press"] : steeped ? ["drain"] : []),
    ...(cupsOfBatch(guide) === null ? [] : ["fill"]),
  ];
}

const lastSteps = (guide) => [
  ...(cupsOfBatch(guide) === null ? ["fill"] : []),
  guide.recipe.heat.wait_s === null ? "serve" : "wait",
];

/** How long the step that is on takes, or null where that is up to the hand. */
export function duration(guide, kind) {
  if (kind === "steep" || kind === "flow") return guide.contact_s;
  return kind === "wait" ? guide.recipe.heat.wait_s : null;
}
