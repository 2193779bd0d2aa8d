// A brew under way: the recipe it was begun with and the moment each step was done. Only moments are kept, so that
// neither a reload nor a locked screen stops the clock.

const KEY = "brew-ticket.guide";

export function begin(plan, all, now) {
  const { recipe } = plan;
  const { wish, brewer } = all;
  const guide = {
    begun: now,
    done: [],
    recipe,
    contact_s: brewer.contact_s,
    rinse_g: brewer.rinse_g,
    pressed: brewer.pressed,
    steeped: brewer.held_strength_pct > 0,
    add_water: wish.add_water,
    serve_c: wish.serve_c,
  };
  keep(guide);
  return guide;
}

/** The brew under way on this device, or null. */
export function underWay() {
  try {
    const guide = JSON.parse(localStorage.getItem(KEY));
    return guide && Array.isArray(guide.done) && guide.recipe ? guide : null;
  } catch {
    return null;
  }
}

export function end() {
  localStorage.removeItem(KEY);
}

export function stepDone(guide, now) {
  guide.done.push(now);
  keep(guide);
}

export function stepBack(guide) {
  guide.done.pop();
  keep(guide);
}

function keep(guide) {
  try {
    localStorage.setItem(KEY, JSON.stringify(guide));
  } catch {
    // Without storage the guide lasts as long as the page.
  }
}

/** Where a guide stands: the step that is on, its batch and the number of steps in all. */
export function stand(guide) {
  const batch = batchSteps(guide);
  const last = ["add_or_share", guide.recipe.heat.wait_s === null ? "serve" : "wait"];
  const { batches } = guide.recipe;
  const inBatches = batch.length * batches;
  const of = 1 + inBatches + last.length;
  const index = guide.done.length;
  if (index >= of) return { finished: true, of, batches };
  const within = index - 1;
  const inBatch = within >= 0 && within < inBatches;
  return {
    finished: false,
    kind: index === 0 ? "heat" : inBatch ? batch[within % batch.length] : last[within - inBatches],
    batch: inBatch ? Math.floor(within / batch.length) + 1 : null,
    batches,
    step: index + 1,
    of,
    since: guide.done[index - 1] ?? guide.begun,
  };
}

function batchSteps({ rinse_g, pressed, steeped }) {
  return [
    ...(rinse_g === null ? [] : ["preheat"]),
    "dose",
    "pour",
    steeped ? "steep" : "flow",
    ...(pressed ? ["press"] : steeped ? ["drain"] : []),
  ];
}

/** How long the step that is on takes, or null where that is up to the hand. */
export function duration(guide, kind) {
  if (kind === "steep" || kind === "flow") return guide.contact_s;
  return kind === "wait" ? guide.recipe.heat.wait_s : null;
}
