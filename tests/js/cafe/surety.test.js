// How sure the page is: chances of a recipe, the doubt about a reading, decisions, and what could be done.

import assert from "node:assert/strict";
import { test } from "node:test";

import { enter, library, numberIn, presets, ready, recipeOf, shown, visit, words } from "./setting.js";

const { uncertainty, decision, limits } = library;
const known = limits.degrees_of_freedom.max;
const JUDGE = words.judge;

const WEIGHED = { "brew.dose_g": "16.4", "brew.water_g": "219.5", "brew.beverage_g": "193.2" };

async function judged(page, readings) {
  await ready(page);
  for (const [id, text] of Object.entries({ ...WEIGHED, "brew.readings": readings })) await enter(page, id, text);
  await page.locator(".verdict h3", { hasText: JUDGE.sure }).waitFor();
  return page.locator(".verdict");
}

/** The strength of some equal readings, with the doubts that a new device starts with; written here once more. */
function strengthOf(strength_pct, readings) {
  const { repeatability_pct, limit_pct, factor_doubt_pct } = presets.instrument;
  return uncertainty.strength({
    strength: { strength_pct, u_strength_pct: repeatability_pct / Math.sqrt(readings), nu_strength: known },
    instrument: { u_instrument_pct: limit_pct / Math.sqrt(3), nu_instrument: known },
    factor: { u_factor_pct: factor_doubt_pct, nu_factor: known },
    zero: "distilled",
    water_solids: { water_solids_mg_per_l: 0, u_water_solids_mg_per_l: 0, nu_water_solids: known },
  });
}

const coverage = uncertainty.coverageFactor({ confidence_pct: 95, degrees_of_freedom: known }).coverage_factor;

test("a reading comes with how far it reaches, what that rests on, and what is decided", () =>
  visit({}, async (page) => {
    const verdict = await judged(page, "1.42 1.43");
    const strength = strengthOf(1.425, 2);
    const half = shown("strength", coverage * strength.u);
    await verdict
      .locator(".weigh dd", { hasText: JUDGE.reach(half) })
      .first()
      .waitFor();
    assert.equal(strength.dominant.source, "factor_uncertainty");
    const rests = JUDGE.rests.strength(
      shown("probability", strength.dominant.share_pct),
      JUDGE.sources.factor_uncertainty,
      shown("strength", coverage * strength.dominant.halved),
      half,
    );
    await verdict.getByText(rests).waitFor();
    const { strength_lowest_pct, strength_highest_pct } = library.windows.home_brewer_2018.window;
    const { inside_pct } = decision.chances({
      estimate: { value: 1.425, u_value: strength.u, nu_value: known },
      band: { lowest: strength_lowest_pct, highest: strength_highest_pct },
    });
    assert.ok(inside_pct > 50 && inside_pct < 95);
    await verdict.getByText(JUDGE.decided.strength.not_yet(shown("probability", inside_pct))).waitFor();
    await verdict.getByText(JUDGE.needed.none_is_enough).waitFor();
  }));

test("where a cup stands is a verdict once it is decided, and until then as read", () =>
  visit({}, async (page) => {
    await ready(page);
    // A window of strengths alone: the reading lies inside, then right at its edge, then far above.
    await enter(page, "wish.window", "own");
    await enter(page, "wish.strength_lowest_pct", "1.20");
    await enter(page, "wish.strength_highest_pct", "1.50");
    await enter(page, "wish.yield_lowest_pct", "");
    await enter(page, "wish.yield_highest_pct", "");
    const box = (await judged(page, "1.36 1.36")).locator(".standing");
    const says = async () => [await box.locator("strong").innerText(), await box.getAttribute("class")];
    const { inside, outside, read } = words.standing;
    for (const [highest, expected] of [
      ["1.50", [inside, "standing inside"]],
      ["1.37", [read.inside, "standing"]],
      ["1.35", [read.outside, "standing"]],
      ["1.25", [outside, "standing outside"]],
    ]) {
      await enter(page, "wish.strength_highest_pct", highest);
      assert.deepEqual(await says(), expected, highest);
    }
    // Each inside by itself, and not yet both together: the strength near its lower edge, the yield near its upper.
    await enter(page, "wish.strength_lowest_pct", "1.292");
    await enter(page, "wish.strength_highest_pct", "1.60");
    await enter(page, "wish.yield_lowest_pct", "12");
    await enter(page, "wish.yield_highest_pct", "16.83");
    const { strength, yield: yield_ } = JUDGE.decided;
    assert.equal(await page.locator(".verdict .decided").innerText(), `${strength.inside} ${yield_.inside}`);
    assert.deepEqual(await says(), [read.inside, "standing"]);
    await enter(page, "wish.yield_highest_pct", "17.6");
    assert.deepEqual(await says(), [inside, "standing inside"]);
  }));

test("a better instrument decides, and says how many readings would have", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "instrument.factor_doubt_pct", "0");
    await enter(page, "instrument.limit_pct", "0.005");
    await enter(page, "instrument.repeatability_pct", "0.03");
    const verdict = await judged(page, "1.42 1.43");
    const needed = decision.readingsNeeded({
      value: 1.425,
      u_scatter: 0.03,
      nu_scatter: known,
      u_rest: 0.005 / Math.sqrt(3),
      nu_rest: known,
      band: { lowest: 1.15, highest: 1.45 },
      confidence_pct: 95,
    });
    assert.equal(needed.needed, "readings");
    await verdict.getByText(JUDGE.needed.readings(needed.readings)).waitFor();
    await enter(page, "brew.readings", "1.30 1.31");
    await verdict.getByText(JUDGE.decided.strength.inside).waitFor();
    assert.equal(await verdict.getByText(/readings like these/).count(), 0);
  }));

test("what could be done stands in the order of its chances, within reach", () =>
  visit({}, async (page) => {
    const verdict = await judged(page, "1.42 1.43");
    const said = await verdict.locator(".could li span").allInnerTexts();
    const names = await verdict.locator(".could li strong").allInnerTexts();
    assert.ok(said.length >= 4, said.join("; "));
    const chances = said.map((text) => Math.floor(numberIn(/[\d.]+\u00a0%$/.exec(text)[0]) / 5));
    assert.deepEqual(
      chances,
      chances.toSorted((a, b) => b - a),
    );
    const added = library.dilution.waterToReach({
      beverage_g: 193.2,
      strength_pct: 1.425,
      wanted_pct: presets.wish.strength_pct,
      water_solids_mg_per_l: presets.shelf.kitchen[0].water_solids_mg_per_l,
    });
    assert.ok(names.includes(JUDGE.change.add_water(shown("addition", added.added_g))), names.join("; "));
    // The grind's direction follows from the yield that charts count: 16.79 %.
    await verdict.getByText(JUDGE.grind.more).waitFor();
  }));

test("a recipe says how surely this hand lands, and the surer one", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "wish.strength_pct", "1.17");
    const ticket = page.locator(".ticket");
    const { dose_g } = recipeOf({ wish: { strength_pct: 1.17 } });
    await ticket.locator(".weigh dd", { hasText: shown("dose", dose_g) }).waitFor();
    await ticket.getByText(/By this hand 1\.17/).waitFor();
    const text = await ticket.getByText(/By this hand/).innerText();
    const [, now] = /inside the window with ([\d.]+)/.exec(text);
    const [, better] = /would be inside with ([\d.]+)/.exec(text);
    assert.ok(Number(better) >= Number(now) + 1, text);
    // A steadier hand lands more surely; a refused one is refused at its field.
    await enter(page, "hand.water_g", "0");
    await enter(page, "hand.yield_pct", "0.1");
    await enter(page, "hand.retention_g_per_g", "0");
    const steadier = await ticket.getByText(/By this hand/).innerText();
    assert.ok(Number(/inside the window with ([\d.]+)/.exec(steadier)[1]) !== Number(now), steadier);
    await enter(page, "hand.water_g", "-1");
    await page.locator(".ticket.refused").waitFor();
    assert.ok(await page.locator('[id="hand-water_g"]').evaluate((box) => box.hasAttribute("aria-invalid")));
  }));
