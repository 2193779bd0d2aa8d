// The brew itself: the guide and its clock, the readings and what they mean, the notebook and its files.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import {
  button,
  enter,
  entry,
  said,
  field,
  library,
  presets,
  ready,
  recipeOf,
  shown,
  visit,
  words,
} from "./setting.js";

const GUIDE = words.guide;
const JUDGE = words.judge;
const BOOK = words.notebook;
const START = new Date("2030-01-31T09:30:00Z");

test("the guide's clock goes on through a reload and a locked screen", () =>
  visit({ prepare: (context) => context.clock.install({ time: START }) }, async (page) => {
    await ready(page);
    const recipe = recipeOf();
    await button(page, words.ticket.begin).click();
    const steps = page.locator("#guide .step-card");
    const done = () => steps.locator("button.main").click();
    const rinse = presets.shelf.brewer[0].rinse_g;
    const heated = shown("liquid", recipe.water_g + rinse);
    await steps.getByText(GUIDE.heat.what(heated, shown("temperature", recipe.heat.kettle_c))).waitFor();
    await done();
    await steps.getByText(GUIDE.preheat.what(shown("liquid", rinse))).waitFor();
    await done();
    await steps.getByText(GUIDE.dose.what(shown("dose", recipe.dose_g))).waitFor();
    await done();
    const water = shown("brew_water", recipe.water_g);
    await steps.getByText(GUIDE.pour.what(water, shown("temperature", recipe.heat.brew_c), false)).waitFor();
    await done();
    const clock = steps.getByRole("timer");
    const seconds = async () => {
      const [, minutes, rest] = /(\d+):(\d\d)/.exec(await clock.innerText());
      return Number(minutes) * 60 + Number(rest);
    };
    // Real seconds pass beside those put forward here, a few at most.
    const near = async (expected) => {
      const found = await seconds();
      assert.ok(found <= expected && found > expected - 5, `${found} s for ${expected} s`);
    };
    await near(120);
    await page.clock.runFor(45_000);
    await near(75);
    // The page is gone for half a minute; nobody counts while it is.
    await page.goto("about:blank");
    await page.clock.fastForward(30_000);
    await page.goBack();
    await ready(page);
    await near(45);
    await page.reload();
    await page.clock.fastForward(60_000);
    await page.clock.runFor(500);
    assert.equal(await clock.innerText(), GUIDE.over(`0:${await seconds()}`));
    assert.ok((await seconds()) >= 15 && (await seconds()) < 25);
    // What is wished meanwhile does not change the brew under way.
    await enter(page, "wish.cup_g", "120");
    await done();
    await steps.getByText(`${GUIDE.press.what(shown("beverage", recipe.beverage_g))} ${GUIDE.weigh}`).waitFor();
    assert.ok(await steps.locator(".caution").isVisible(), "the caution stands where the hand presses");
    await button(page, GUIDE.back).click();
    await steps.getByText(GUIDE.steep.what(water, "2:00")).waitFor();
  }));

test("every batch has its steps, and the last one leads to the readings", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "wish.servings", "4");
    const { batches, brew_per_cup_g } = recipeOf({ wish: { servings: 4 } });
    assert.ok(batches > 1);
    assert.equal(4 % batches, 0);
    await button(page, words.ticket.begin).click();
    const card = page.locator("#guide .step-card");
    const filled = GUIDE.fill.what(String(4 / batches), shown("beverage", brew_per_cup_g));
    // Heat, rinse, dose, pour, steep, press and fill for each batch; wait.
    const of = 7 * batches + 1;
    for (let step = 1; step <= of; step += 1) {
      await card.getByText(GUIDE.progress(step, of)).waitFor();
      if (step % 7 === 0) await card.getByText(filled).waitFor();
      await card.locator("button.main").click();
    }
    await card.getByText(GUIDE.finished).waitFor();
    await button(page, GUIDE.finishedGo).click();
    assert.ok(await page.locator("#judge-heading").evaluate((heading) => heading === document.activeElement));
  }));

test("cups that no batch fills evenly wait for the last one, and that they cool meanwhile is said", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "wish.servings", "3");
    await enter(page, "wish.cup_g", "120");
    const { batches, heat } = recipeOf({ wish: { servings: 3, cup_g: 120 } });
    assert.equal(batches, 2);
    assert.notEqual(heat.contact_heat, "at_most");
    await button(page, words.ticket.begin).click();
    const card = page.locator("#guide .step-card");
    // Heat, rinse, dose, pour, steep and press for each batch; fill and wait.
    for (let step = 1; step < 6 * batches + 2; step += 1) await card.locator("button.main").click();
    const [time, serve_c] = [clock(heat.wait_s), shown("temperature", presets.wish.serve_c)];
    const wait = `${GUIDE.wait.what(time, serve_c, true)} ${GUIDE.cooler.batches}`;
    assert.equal(await card.locator(".what").textContent(), wait);
    await button(page, GUIDE.again).click();
    // Without a temperature to hand over at there is nothing to wait for.
    await enter(page, "wish.serve_c", "");
    await button(page, words.ticket.begin).click();
    for (let step = 1; step < 6 * batches + 2; step += 1) await card.locator("button.main").click();
    const serve = `${GUIDE.serve.what(shown("temperature", heat.in_cup_c), true)} ${GUIDE.cooler.batches}`;
    assert.equal(await card.locator(".what").textContent(), serve);
  }));

const clock = (seconds) =>
  `${Math.floor(Math.round(seconds) / 60)}:${String(Math.round(seconds) % 60).padStart(2, "0")}`;

const BREW = {
  "brew.dose_g": "16.4",
  "brew.water_g": "219.5",
  "brew.beverage_g": "193.2",
  "brew.readings": "1.42 1.43",
};

async function weighed(page, more = {}) {
  for (const [id, text] of Object.entries({ ...BREW, ...more })) await enter(page, id, text);
}

test("readings are judged with the package's numbers, and both ways to go on are said", () =>
  visit({}, async (page) => {
    await ready(page);
    await weighed(page);
    const [brewer] = presets.shelf.brewer;
    const [kitchen] = presets.shelf.kitchen;
    const [coffee] = presets.shelf.coffee;
    const { strength_pct } = library.reading.combine({
      strength_pct: [1.42, 1.43],
      repeatability_pct: presets.instrument.repeatability_pct,
    });
    const { yield_pct } = library.extraction.extractionYield({
      brew: {
        dose_g: 16.4,
        water_g: 219.5,
        beverage_g: 193.2,
        moisture_pct: coffee.moisture_pct,
        water_solids_mg_per_l: kitchen.water_solids_mg_per_l,
        vapour_g: brewer.vapour_g,
        held_strength_pct: brewer.held_strength_pct,
      },
      strength_pct,
    });
    const judge = page.locator("#judge");
    assert.equal(await said(judge, JUDGE.strength), shown("strength", strength_pct));
    assert.equal(await said(judge, JUDGE.yield), shown("yield", yield_pct));
    assert.equal(await said(judge, JUDGE.counted), shown("yield", (1.425 * 193.2) / 16.4));
    const { added_g } = library.dilution.waterToReach({
      beverage_g: 193.2,
      strength_pct,
      wanted_pct: presets.wish.strength_pct,
      water_solids_mg_per_l: kitchen.water_solids_mg_per_l,
    });
    await judge
      .getByText(JUDGE.addWater(shown("addition", added_g), shown("strength", presets.wish.strength_pct)))
      .waitFor();
    const { apparent_retention_g_per_g } = library.retention.retentionOfBrew({
      losses: {
        apparent_retention_g_per_g: brewer.apparent_retention_g_per_g,
        hold_up_g: brewer.hold_up_g,
        paper_g: brewer.paper_g,
        paper_uptake_g_per_g: brewer.paper_uptake_g_per_g,
        drips_g: brewer.drips_g,
        vapour_g: brewer.vapour_g,
      },
      dose_g: 16.4,
      water_g: 219.5,
      beverage_g: 193.2,
    });
    const next = recipeOf({ brewer: { ...brewer, apparent_retention_g_per_g }, coffee: { ...coffee, yield_pct } });
    await judge
      .getByText(JUDGE.nextPlan(shown("dose", next.dose_g), shown("brew_water", next.water_g), String(next.batches)))
      .waitFor();
    await button(page, JUDGE.takeLearnt).click();
    assert.equal(await said(page.locator(".ticket"), words.ticket.coffee), shown("dose", next.dose_g));
    await enter(page, "wish.cup_g", "160");
    await button(page, words.putBack).click();
    const before = shown("dose", recipeOf({ wish: { cup_g: 160 } }).dose_g);
    assert.equal(await said(page.locator(".ticket"), words.ticket.coffee), before, "the two values alone are put back");
  }));

test("readings that disagree are no value, an unbelievable yield is doubted, bad ones are refused", () =>
  visit({}, async (page) => {
    await ready(page);
    const judge = page.locator("#judge");
    await weighed(page, { "brew.readings": "1.42 1.49" });
    await judge.getByText(JUDGE.agreement.take_another).waitFor();
    assert.equal(await entry(judge, JUDGE.strength).count(), 0);
    assert.ok(await button(page, JUDGE.keep).isDisabled());
    await weighed(page, { "brew.readings": "1.42 1.49 1.43" });
    await judge.getByText(JUDGE.agreement.median).waitFor();
    assert.equal(await said(judge, JUDGE.strength), shown("strength", 1.43));
    await weighed(page, { "brew.readings": "2.02" });
    await judge.getByText(JUDGE.credibility.near_limit).waitFor();
    assert.equal(await judge.locator(".slate ul li").count(), 4);
    await weighed(page, { "brew.readings": "2.6" });
    await judge.getByText(JUDGE.credibility.beyond_limit).waitFor();
    await weighed(page, { "brew.readings": "1.42 strong" });
    assert.equal(await field(page, "brew.readings").getAttribute("aria-invalid"), "true");
    await weighed(page, { "brew.beverage_g": "260" });
    assert.ok(await judge.locator(".error:visible").first().isVisible());
    assert.equal(await entry(judge, JUDGE.strength).count(), 0);
  }));

test("a brew is kept, leaves as JSON and as CSV, and comes back the same", () =>
  visit({}, async (page) => {
    await ready(page);
    for (const [note, more] of [
      ['=1+1, "bright"\nand clean', {}],
      ["", { "brew.readings": "1.31 1.30 1.31", "brew.beverage_g": "188.7" }],
    ]) {
      await weighed(page, { ...more, "brew.note": note.replace("\n", " ") });
      await button(page, JUDGE.keep).click();
      await page.getByText(JUDGE.kept).waitFor();
      await page.evaluate((text) => (document.querySelector(".news").textContent = text), "");
    }
    const entries = page.locator("#notebook .entries > li");
    assert.equal(await entries.count(), 2);
    const download = async (name) => {
      const [file] = await Promise.all([page.waitForEvent("download"), button(page, name).click()]);
      return { path: await file.path(), name: file.suggestedFilename() };
    };
    const json = await download(BOOK.exportJson);
    const csv = await download(BOOK.exportCsv);
    const kept = JSON.parse(readFileSync(json.path, "utf8"));
    assert.equal(kept.schema, "cupwright-cafe-notebook/1");
    assert.equal(kept.entries.length, 2);
    assert.equal(readFileSync(csv.path, "utf8").trimEnd().split("\r\n").length, 3);
    // A cell that a spreadsheet would reckon with is text.
    assert.ok(readFileSync(csv.path, "utf8").includes('"\'=1+1, ""bright"" and clean"'));

    const take = async ({ path, name }) => {
      await page.locator("#notebook-file").setInputFiles({ name, mimeType: "text/plain", buffer: readFileSync(path) });
    };
    await take(json);
    await page.getByText(BOOK.imported(0, 2)).waitFor();
    for (const file of [json, csv]) {
      for (let left = 2; left > 0; left -= 1) {
        await entries.first().getByRole("button").click();
        await page.getByText(BOOK.removed).waitFor();
        await page.waitForFunction(
          (count) => document.querySelectorAll("#notebook .entries > li:not(.quiet)").length === count,
          left - 1,
        );
      }
      await take(file);
      await page.getByText(BOOK.imported(2, 0)).waitFor();
      const again = await download(BOOK.exportJson);
      assert.deepEqual(JSON.parse(readFileSync(again.path, "utf8")), kept);
    }
    await page.reload();
    await entries.nth(1).waitFor();
  }));

test("a file with one mistake is not taken at all, and the mistake is named", () =>
  visit({}, async (page) => {
    await ready(page);
    await weighed(page);
    await button(page, JUDGE.keep).click();
    const [file] = await Promise.all([page.waitForEvent("download"), button(page, BOOK.exportJson).click()]);
    const good = JSON.parse(readFileSync(await file.path(), "utf8"));
    const offer = async (name, text) => {
      await page.locator("#notebook-file").setInputFiles({ name, mimeType: "text/plain", buffer: Buffer.from(text) });
      await page.getByText(BOOK.refused).waitFor();
      const said = await page.locator("#notebook ul.error").innerText();
      await page.evaluate(() => document.querySelector("#notebook [role=status]").replaceChildren());
      return said;
    };
    const changed = (change) => {
      const copy = structuredClone(good);
      copy.entries.push({ ...structuredClone(good.entries[0]), id: "another" });
      change(copy.entries[1], copy);
      return JSON.stringify(copy);
    };
    for (const [text, expected] of [
      ["{", BOOK.wrong.json],
      ["[]", BOOK.wrong.schema("undefined")],
      [changed((_, whole) => (whole.schema = "other/1")), BOOK.wrong.schema("other/1")],
      [changed((one) => (one.brew.dose_g = -4)), /entries\[1\]\.brew\.dose_g: -4/],
      [changed((one) => (one.brew.dose_g = "16.4")), /entries\[1\]\.brew\.dose_g/],
      [changed((one) => delete one.coffee.yield_pct), /entries\[1\]\.coffee\.yield_pct/],
      [changed((one) => (one.coffee.grind = 3)), /entries\[1\]\.coffee\.grind/],
      [changed((one) => (one.id = good.entries[0].id)), BOOK.wrong.twice("entries[1].id")],
      [changed((one) => (one.brew.readings = [])), /entries\[1\]\.brew\.readings/],
      [changed((one, whole) => (whole.entries[0].brew.note = "changed")), BOOK.wrong.conflict("entries[0].id")],
    ]) {
      const said = await offer("notebook.json", text);
      if (typeof expected === "string") assert.ok(said.includes(expected), `${said} for ${expected}`);
      else assert.match(said, expected);
    }
    assert.match(await offer("notebook.csv", 'id,at\n"x'), /not closed/);
    assert.equal(await page.locator("#notebook .entries > li").count(), 1);
  }));
