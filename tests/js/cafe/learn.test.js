// What the page learns from its notebook: the numbers of the package, refusals in words, the odd brew, what a recipe
// makes of it, and profiles as files.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { faults, tooSmall, tooWide } from "./access.js";
import {
  button,
  enter,
  entry,
  field,
  library,
  numberIn,
  PHONE,
  picture,
  presets,
  questionOf,
  ready,
  recipeOf,
  said,
  shown,
  TILL,
  visit,
  words,
} from "./setting.js";

const { calibrate, uncertainty } = library;
const LEARN = words.learn;
const KEPT = words.fields["brewer.apparent_retention_g_per_g"].label;
const [STEEPER, CONE] = presets.shelf.brewer;

// Invented brews: dose, water and beverage in g, readings in %. They keep about 2.1 g/g and 6 g.
const BREWS = [
  [12, 192, 160.4, [1.31, 1.32]],
  [15, 240, 202.1, [1.35, 1.33, 1.34]],
  [18, 288, 244.7, [1.4, 1.4]],
  [20, 320, 271.3, [1.29, 1.31]],
  [24, 384, 328.2, [1.36, 1.35]],
  [30, 480, 410.9, [1.38, 1.39]],
];
const ODD = [21, 336, 268, [1.37, 1.36]];

/** A notebook as the page exports it, of brews an hour apart. */
function notebook(brews, { brewer = STEEPER, contacts = [], id = "brew" } = {}) {
  const entries = brews.map(([dose_g, water_g, beverage_g, readings, yield_pct = 19], at) => ({
    id: `${id}-${at}`,
    at: new Date(Date.UTC(2030, 0, 31, 8 + at)).toISOString(),
    wish: presets.wish,
    brewer: { ...brewer, contact_s: contacts[at] ?? brewer.contact_s },
    coffee: presets.shelf.coffee[0],
    kitchen: presets.shelf.kitchen[0],
    instrument: presets.instrument,
    hand: presets.hand,
    brew: { dose_g, water_g, beverage_g, readings, note: "" },
    result: { strength_pct: 1.3, yield_pct, counted_yield_pct: 19 },
  }));
  return JSON.stringify({ schema: "cupwright-cafe-notebook/1", entries });
}

const asFile = (text, name = "file.json") => ({ name, mimeType: "application/json", buffer: Buffer.from(text) });

async function bring(page, brews, more) {
  await ready(page);
  await page.locator("#notebook-file").setInputFiles(asFile(notebook(brews, more)));
  await page.getByText(words.notebook.imported(brews.length, 0)).waitFor();
}

const drained = (brews, { vapour_g } = STEEPER) =>
  brews.map(([dose_g, water_g, beverage_g]) => ({ dose_g, water_g, beverage_g, vapour_g }));

/** How far a value reaches to either side, 95 times in 100; written here once more. */
const reach = (u, degrees_of_freedom) =>
  u * uncertainty.coverageFactor({ confidence_pct: 95, degrees_of_freedom }).coverage_factor;

/** When a brew was, as the page says it. */
const when = (at) =>
  new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short", timeZone: "UTC" }).format(
    new Date(Date.UTC(2030, 0, 31, 8 + at)),
  );

const panel = (page) => page.locator("#learn");

/** What a fact of the panel is, with how far it reaches. */
async function fact(page, name, quantity, value, half) {
  assert.equal(await said(panel(page), name), shown(quantity, value));
  const text = await entry(panel(page), name).locator("small").innerText();
  assert.equal(text, words.judge.reach(shown(quantity, half)));
}

async function isRetention(page, brews) {
  const { apparent_retention_g_per_g: value, u_retention_g_per_g: u, quality } = calibrate.retentionLine({ brews });
  await fact(page, KEPT, "apparent_retention", value, reach(u, quality.degrees_of_freedom));
}

const inUTC = { timezoneId: "UTC" };

test("brews of several doses tell retention, hold-up and scatter as the package has them", () =>
  visit(inUTC, async (page) => {
    await bring(page, BREWS);
    const brews = drained(BREWS);
    const line = calibrate.retentionLine({ brews });
    await isRetention(page, brews);
    const half = reach(line.u_hold_up_g, line.quality.degrees_of_freedom);
    await fact(page, LEARN.hold_up, "fitted_hold_up", line.fitted_hold_up_g, half);
    await panel(page)
      .getByText(LEARN.rests(6, shown("retained", line.quality.s)))
      .waitFor();
    await panel(page).getByText(LEARN.noneOdd).waitFor();
    const readings = BREWS.flatMap(([, , , all], at) => all.map((strength_pct) => ({ cup: at + 1, strength_pct })));
    const { repeatability_pct, u_repeatability_pct, quality } = calibrate.repeatability({ readings });
    const reached = reach(u_repeatability_pct, quality.degrees_of_freedom);
    await fact(page, LEARN.repeatability, "repeatability", repeatability_pct, reached);
    await panel(page).getByText(LEARN.pooled(13, 6)).waitFor();
    assert.equal(await panel(page).locator("figure .spot").count(), 6);
    // A brewer of another name has no brews.
    await enter(page, "brewer.name", "Another");
    await panel(page)
      .getByText(LEARN.too_few(0, 3, "Another"))
      .waitFor();
    assert.equal(await panel(page).locator("figure").count(), 0);
  }));

test("what brews cannot tell is said with what would tell", () =>
  visit(inUTC, async (page) => {
    await ready(page);
    await panel(page)
      .getByText(LEARN.too_few(0, 3, STEEPER.name))
      .waitFor();
    await panel(page).getByText(LEARN.readingsMissing.cannot_tell).waitFor();
    await panel(page).getByText(LEARN.coffeeMissing.times).waitFor();
    assert.equal(await button(page, LEARN.use).count(), 0);
    assert.ok(await button(page, LEARN.export).isDisabled());
    assert.ok(await panel(page).getByText(LEARN.nothingToExport).isVisible());
    // Doses nearly alike: retention alone, right for them.
    const alike = [
      [15, 240, 205.4, [1.3]],
      [15.1, 240, 207.1, [1.3]],
      [15, 240, 206, [1.3]],
    ];
    await bring(page, alike);
    const { apparent_retention_g_per_g: value, u_retention_g_per_g: u } = calibrate.retention({
      brews: drained(alike),
    });
    await fact(page, KEPT, "apparent_retention", value, reach(u, 2));
    const dose = (dose_g) => shown("dose", dose_g);
    await panel(page)
      .getByText(LEARN.lacks.one_dose(dose(15), dose(15.1), dose(22.5)))
      .waitFor();
    assert.equal(await entry(panel(page), LEARN.hold_up).count(), 0);
    await button(page, LEARN.use).click();
    assert.equal(await field(page, "brewer.hold_up_g").inputValue(), "0");
    const { s } = calibrate.retention({ brews: drained(alike) }).quality;
    const learnt = { ...STEEPER, apparent_retention_g_per_g: value, hold_up_g: 0, paper_g: 0, drips_g: 0 };
    const straying = {
      u_next_retention_g_per_g: u,
      nu_next_retention: 2,
      u_next_losses_g: s,
      nu_next_losses: 2,
    };
    assert.equal(await chance(page), chanceOf(learnt, straying));
    // Readings that are all alike tell nothing of their scatter.
    await bring(page, [[16, 240, 205, [1.3, 1.3]]], { id: "equal", brewer: CONE });
    await panel(page).getByText(LEARN.readingsMissing.result_out_of_range).waitFor();
  }));

test("the odd brew is named, left out, and counted again", () =>
  visit(inUTC, async (page) => {
    const brews = [...BREWS, ODD];
    await bring(page, brews);
    // The page goes from the newest back; sums in that order.
    const { quality } = calibrate.retentionLine({ brews: drained(brews).toReversed() });
    assert.ok(quality.odd.is_suspicious && quality.odd.at === 0);
    const by = shown("retained", Math.abs(quality.residuals[0]));
    await panel(page)
      .getByText(LEARN.odd(when(6), by, true))
      .waitFor();
    await panel(page).locator("figure .doubtful").waitFor();
    await button(page, LEARN.leaveOut).click();
    await panel(page)
      .getByText(LEARN.leftOut(when(6)))
      .waitFor();
    await isRetention(page, drained(BREWS));
    await page.reload();
    await panel(page)
      .getByText(LEARN.leftOut(when(6)))
      .waitFor();
    await isRetention(page, drained(BREWS));
    assert.equal(await page.locator("#notebook .entries > li").count(), 7, "it stays in the notebook");
    await button(page, LEARN.takeInNamed(when(6))).click();
    await isRetention(page, drained(brews));
  }));

/** The chance that the ticket gives. */
const chance = async (page) =>
  numberIn(/inside the window with (.*)/.exec(await page.locator(".ticket").innerText())[1]);

/** The chance that the package gives a recipe with a brewer whose losses stray so. */
function chanceOf(brewer, losses) {
  const { hand, wish } = presets;
  const known = library.limits.degrees_of_freedom.max;
  const question = questionOf({ brewer });
  question.wish.window = library.windows[wish.window].window;
  const straying = {
    u_next_dose_g: hand.dose_g,
    nu_next_dose: known,
    u_next_water_g: hand.water_g,
    nu_next_water: known,
    u_next_yield_pct: hand.yield_pct,
    nu_next_yield: known,
    ...losses,
  };
  return numberIn(shown("probability", library.plan.foreseen({ ...question, straying }).outlook.inside_pct));
}

test("what was learnt is planned with, marked, and given back", () =>
  visit(inUTC, async (page) => {
    await bring(page, BREWS);
    const brews = drained(BREWS);
    const line = calibrate.retentionLine({ brews });
    const before = recipeOf();
    const ticket = page.locator(".ticket");
    const coffee = () => said(ticket, words.ticket.coffee);
    const by_hand = await chance(page);
    assert.equal(await coffee(), shown("dose", before.dose_g));
    await button(page, LEARN.use).click();
    const learnt = {
      ...STEEPER,
      apparent_retention_g_per_g: line.apparent_retention_g_per_g,
      hold_up_g: line.fitted_hold_up_g,
      paper_g: 0,
      drips_g: 0,
    };
    const after = recipeOf({ brewer: learnt });
    assert.notEqual(shown("brew_water", after.water_g), shown("brew_water", before.water_g));
    assert.equal(await coffee(), shown("dose", after.dose_g));
    assert.equal(await said(ticket, words.ticket.water), shown("brew_water", after.water_g));
    await ticket.getByText(LEARN.onTicket(6)).waitFor();
    // How far the next brew strays is what its line says of it, not what a hand was thought to do.
    const { u_beverage_g, degrees_of_freedom } = calibrate.expectedBeverage({
      brews,
      next_dose_g: after.dose_g,
      next_water_g: after.water_g,
      next_vapour_g: STEEPER.vapour_g,
    });
    const inside_pct = chanceOf(learnt, {
      u_next_retention_g_per_g: 0,
      nu_next_retention: degrees_of_freedom,
      u_next_losses_g: u_beverage_g,
      nu_next_losses: degrees_of_freedom,
    });
    assert.equal(await chance(page), inside_pct);
    assert.notEqual(inside_pct, by_hand);
    const hint = (id) => page.locator(`[id="${id.replace(".", "-")}-hint"] .learnt`);
    const origin = async (id) => (await hint(id).textContent()).trim();
    assert.equal(await origin("brewer.apparent_retention_g_per_g"), LEARN.origin.learnt);
    assert.equal(await origin("brewer.hold_up_g"), LEARN.origin.learnt);
    assert.equal(await origin("brewer.drips_g"), LEARN.origin.within);
    assert.equal(await origin("instrument.repeatability_pct"), LEARN.origin.learnt);
    assert.equal(await origin("hand.losses_g"), LEARN.origin.instead);
    assert.equal(await origin("brewer.vapour_g"), "");
    // It outlives the page; what is changed by hand is no longer learnt, and stays when the rest is given back.
    await page.reload();
    await ready(page);
    assert.equal(await coffee(), shown("dose", after.dose_g));
    assert.equal(await origin("brewer.hold_up_g"), LEARN.origin.learnt);
    await enter(page, "brewer.hold_up_g", "4");
    assert.equal(await origin("brewer.hold_up_g"), "");
    assert.equal(await origin("hand.losses_g"), "");
    await panel(page).getByText(LEARN.edited).waitFor();
    await button(page, LEARN.giveBack).click();
    assert.equal(await coffee(), shown("dose", recipeOf({ brewer: { ...STEEPER, hold_up_g: 4 } }).dose_g));
    assert.equal(
      await field(page, "instrument.repeatability_pct").inputValue(),
      String(presets.instrument.repeatability_pct),
    );
    assert.equal(await ticket.getByText(LEARN.onTicket(6)).count(), 0);
    // Taken once more, it is put back at once.
    await enter(page, "brewer.hold_up_g", "3");
    await button(page, LEARN.use).click();
    assert.equal(await coffee(), shown("dose", after.dose_g));
    await button(page, words.putBack).click();
    assert.equal(await coffee(), shown("dose", before.dose_g));
    assert.equal(await origin("brewer.hold_up_g"), "");
  }));

test("steeps of one coffee tell how it extracts, and advice on time counts with it", () =>
  visit(inUTC, async (page) => {
    const yields = [11.9, 15.8, 18.4, 19.6];
    const contacts = [45, 75, 120, 180];
    const steeps = yields.map((yield_pct, at) => [16, 220, 192 + at / 10, [1.3], yield_pct]);
    await bring(page, steeps, { contacts });
    const coffee = calibrate.oneRate({
      yields: yields.map((yield_pct, at) => ({ contact_s: contacts[at], yield_pct })),
    });
    const half = reach(coffee.u_equilibrium_yield_pct, coffee.quality.degrees_of_freedom);
    await fact(page, LEARN.equilibrium, "yield", coffee.equilibrium_yield_pct, half);
    const weighed = { dose_g: "16.4", water_g: "219.5", beverage_g: "193.2", readings: "1.42 1.43" };
    // A window whose middle this brew does not quite reach.
    const window = { window: "own", yield_lowest_pct: "15", yield_highest_pct: "19" };
    for (const [key, text] of Object.entries(window)) await enter(page, `wish.${key}`, text);
    for (const [key, text] of Object.entries(weighed)) await enter(page, `brew.${key}`, text);
    const onTime = page.locator(".could strong", { hasText: /of contact/ });
    await page.locator(".could").waitFor();
    assert.equal(await onTime.count(), 0);
    await button(page, LEARN.use).click();
    await onTime.waitFor();
    // It is of this coffee alone.
    await enter(page, "coffee.name", "Another");
    await page.locator(".could").waitFor();
    assert.equal(await onTime.count(), 0);
  }));

/** What comes down when a profile is exported. */
async function exported(page) {
  const [file] = await Promise.all([page.waitForEvent("download"), button(page, LEARN.export).click()]);
  assert.equal(file.suggestedFilename(), "brewer-profile.json");
  return readFileSync(await file.path(), "utf8");
}

test("a profile leaves in the package's own form and comes back on another device", async () => {
  let file;
  let dose;
  await visit(inUTC, async (page) => {
    await bring(page, BREWS);
    await button(page, LEARN.use).click();
    file = await exported(page);
    dose = await said(page.locator(".ticket"), words.ticket.coffee);
  });
  const profile = JSON.parse(file);
  const line = calibrate.retentionLine({ brews: drained(BREWS) });
  assert.deepEqual(Object.keys(profile).sort(), [
    "apparent_retention_g_per_g",
    "fitted_hold_up_g",
    "repeatability_pct",
    "retention_correlation",
    "retention_scatter_g",
    "version",
  ]);
  assert.ok(Math.abs(profile.fitted_hold_up_g.value - line.fitted_hold_up_g) < 1e-9);
  assert.equal(profile.fitted_hold_up_g.degrees_of_freedom, 4);
  // The package takes it as it is.
  const { bytes } = library.profile.toBytes({ profile });
  assert.equal(library.profile.fromBytes({ bytes }).fitted_hold_up_g.value, profile.fitted_hold_up_g.value);

  const offer = (page, text) => page.locator("#profile-file").setInputFiles(asFile(text));
  await visit({}, async (page) => {
    await ready(page);
    // A profile of elsewhere may know what a notebook does not tell.
    const more = { ...profile, heat_capacity_j_per_k: { value: 140, u: 6, degrees_of_freedom: 4 } };
    await offer(page, JSON.stringify(more));
    await page.getByText(LEARN.imported).waitFor();
    const [retention, hold_up] = [profile.apparent_retention_g_per_g.value, profile.fitted_hold_up_g.value];
    const within = { apparent_retention_g_per_g: retention, hold_up_g: hold_up, paper_g: 0, drips_g: 0 };
    const heavier = { ...STEEPER, ...within, heat_capacity_j_per_k: 140 };
    assert.equal(await said(page.locator(".ticket"), words.ticket.coffee), dose);
    assert.equal(await field(page, "brewer.heat_capacity_j_per_k").inputValue(), "140");
    const slurry = (brewer) => shown("temperature", recipeOf({ brewer }).heat.slurry_c);
    assert.notEqual(slurry(heavier), slurry({ ...STEEPER, ...within }));
    assert.equal(
      await page.locator(".walk li", { hasText: words.ticket.slurry }).locator("b").innerText(),
      slurry(heavier),
    );
    assert.deepEqual(JSON.parse(await exported(page)), more);
    // A second one takes the place of the first; what both are given back to is what the hand had put in.
    const second = { ...profile, apparent_retention_g_per_g: { ...profile.apparent_retention_g_per_g, value: 3 } };
    await offer(page, JSON.stringify(second));
    await page.waitForFunction(
      (text) => document.querySelector("#brewer-heat_capacity_j_per_k").value === text,
      String(STEEPER.heat_capacity_j_per_k),
    );
    await button(page, words.putBack).click();
    assert.deepEqual(JSON.parse(await exported(page)), more);
    assert.equal(await said(page.locator(".ticket"), words.ticket.coffee), dose);
    await offer(page, JSON.stringify(second));
    await page.getByText(LEARN.imported).waitFor();
    await button(page, LEARN.giveBack).click();
    assert.equal(await said(page.locator(".ticket"), words.ticket.coffee), shown("dose", recipeOf().dose_g));
    assert.equal(await field(page, "brewer.heat_capacity_j_per_k").inputValue(), String(STEEPER.heat_capacity_j_per_k));
  });
});

test("a damaged or foreign profile is refused in words and changes nothing", () =>
  visit({}, async (page) => {
    await ready(page);
    const { wrong, refused } = words.notebook;
    const estimate = { value: 2, u: 0.1, degrees_of_freedom: 4 };
    const retention = { apparent_retention_g_per_g: estimate };
    const state = () => page.evaluate(() => [{ ...localStorage }, document.querySelector(".ticket").innerText]);
    const before = await state();
    const status = panel(page).locator("[role=status]");
    for (const [profile, expected] of [
      ['{"apparent_retention_g_per_g": {"value": 2.0', wrong.json],
      ["CUPW\u0001", wrong.json],
      ["null", wrong.profile],
      ["[]", wrong.profile],
      ["{}", wrong.version(undefined, 1)],
      [notebook(BREWS), wrong.version(undefined, 1)],
      ['{ "version": 2 }', wrong.version(2, 1)],
      ['{ "version": 1 }', wrong.nothing],
      [{ ...retention, grind: estimate }, wrong.unknown("grind")],
      [{ apparent_retention_g_per_g: 2 }, wrong.number("apparent_retention_g_per_g")],
      [{ apparent_retention_g_per_g: { ...estimate, note: 1 } }, wrong.unknown("apparent_retention_g_per_g.note")],
      [{ apparent_retention_g_per_g: { value: 2, u: 0.1 } }, "apparent_retention_g_per_g.degrees_of_freedom"],
      [{ apparent_retention_g_per_g: { ...estimate, value: "2" } }, "apparent_retention_g_per_g.value"],
      [
        { apparent_retention_g_per_g: { ...estimate, value: 20 } },
        wrong.range("apparent_retention_g_per_g", 20, 0, 10),
      ],
      // What a profile may have and a recipe cannot take.
      [{ ...retention, fitted_hold_up_g: { ...estimate, value: -3 } }, words.fields["brewer.hold_up_g"].label],
    ]) {
      const text = typeof profile === "string" ? profile : JSON.stringify({ version: 1, ...profile });
      await page.locator("#profile-file").setInputFiles(asFile(text));
      await status.getByText(refused).waitFor();
      const list = await status.locator("ul").innerText();
      assert.ok(list.includes(expected), `${list} for ${expected}`);
      await status.evaluate((place) => place.replaceChildren());
    }
    assert.deepEqual(await state(), before);
  }));

test("settings kept before there was anything to learn, and damaged ones, still open", () =>
  visit({}, async (page) => {
    const brewer = { ...STEEPER, name: "Of old", hold_up_g: 5 };
    const at = "2030-01-31T09:30:00.000Z";
    const profile = { apparent_retention_g_per_g: { value: 2, u: 0.1, degrees_of_freedom: 4 } };
    const learned = { at, from: "file", coffee: "", profile, brews: [], before: { "brewer.hold_up_g": 3 } };
    await ready(page);
    for (const [extra, isInUse] of [
      [{}, false],
      [{ learned }, true],
      [{ learned: { ...learned, profile: { grind: 3 } } }, false],
      [{ learned: { ...learned, before: { "brewer.grind": 3 } } }, false],
      [{ learned: { ...learned, brews: [{ dose_g: -4 }] } }, false],
      [{ learned: 3, leftOut: "all" }, false],
    ]) {
      const kept = JSON.stringify({ ...presets, shelf: { ...presets.shelf, brewer: [{ ...brewer, ...extra }] } });
      await page.evaluate((text) => localStorage.setItem("brew-ticket.settings", text), kept);
      await page.reload();
      await ready(page);
      assert.equal(await field(page, "brewer.hold_up_g").inputValue(), "5");
      assert.equal(await button(page, LEARN.giveBack).count(), isInUse ? 1 : 0, JSON.stringify(extra));
    }
  }));

test("it all works without a network", () =>
  visit(inUTC, async (page, troubles, context) => {
    await ready(page);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await page.reload();
    await ready(page);
    await context.setOffline(true);
    await page.reload();
    await bring(page, [...BREWS, ODD]);
    await button(page, LEARN.leaveOut).click();
    await button(page, LEARN.use).click();
    await page.locator(".ticket").getByText(LEARN.onTicket(6)).waitFor();
    assert.equal(Object.keys(JSON.parse(await exported(page))).length, 6);
  }));

for (const [name, look] of Object.entries({
  "phone-light": { viewport: PHONE, colorScheme: "light" },
  "phone-dark": { viewport: PHONE, colorScheme: "dark" },
  "till-dark": { viewport: TILL, colorScheme: "dark" },
})) {
  test(`what was learnt is for everyone, and fits: ${name}`, () =>
    visit({ ...inUTC, ...look, reducedMotion: "reduce" }, async (page) => {
      const suits = async (state) => {
        assert.deepEqual(await faults(page), [], state);
        assert.deepEqual(await tooWide(page), [], state);
        assert.deepEqual(await tooSmall(page), [], state);
        await picture(page, `learnt-${name}-${state}`);
      };
      await bring(page, [...BREWS, ODD]);
      await suits("odd");
      await button(page, LEARN.leaveOut).click();
      await button(page, LEARN.use).click();
      await page.locator("#profile-file").setInputFiles(asFile("{"));
      await panel(page).getByText(words.notebook.refused).waitFor();
      // Where the marks of what was learnt stand.
      await page.evaluate(() => document.querySelectorAll("details").forEach((drawer) => (drawer.open = true)));
      await suits("used");
    }));
}

test("its figures are in the units chosen", () =>
  visit(inUTC, async (page) => {
    await bring(page, BREWS);
    await enter(page, "units.mass", "oz");
    const { fitted_hold_up_g } = calibrate.retentionLine({ brews: drained(BREWS) });
    const hold_up = (fitted_hold_up_g / 28.349523125).toFixed(2);
    assert.equal(await said(panel(page), LEARN.hold_up), `${hold_up}\u00a0oz`);
    assert.match(await panel(page).locator("figure").innerText(), /coffee, oz/);
  }));
