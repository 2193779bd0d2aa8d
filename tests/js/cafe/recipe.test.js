// From a wish to a recipe: its numbers, what is refused, and how it leaves the page.

import assert from "node:assert/strict";
import { test } from "node:test";

import { button, enter, said, field, numberIn, presets, ready, recipeOf, shown, visit, words } from "./setting.js";

const SAID = words.ticket;

test("a recipe has the package's numbers", () =>
  visit({}, async (page) => {
    await ready(page);
    for (const wish of [{}, { cup_g: 120, servings: 3 }, { strength_pct: 1.21, servings: 1 }]) {
      for (const [key, value] of Object.entries(wish)) await enter(page, `wish.${key}`, String(value));
      const recipe = recipeOf({
        wish: {
          cup_g: await valueOf(page, "cup_g"),
          strength_pct: await valueOf(page, "strength_pct"),
          servings: await valueOf(page, "servings"),
        },
      });
      const ticket = page.locator(".ticket");
      for (const [name, quantity, value] of [
        [SAID.coffee, "dose", recipe.dose_g],
        [SAID.water, "brew_water", recipe.water_g],
        [SAID.beverage, "beverage", recipe.beverage_g],
        [SAID.fill, "volume", recipe.fill_ml],
        [SAID.caffeine, "caffeine", recipe.caffeine_mg],
      ]) {
        assert.equal(await said(ticket, name), shown(quantity, value), `${name} of ${JSON.stringify(wish)}`);
      }
      const walk = await ticket.locator(".walk li b").allInnerTexts();
      const { kettle_c, brewer_c, brew_c, slurry_c, slurry_end_c, in_cup_c } = recipe.heat;
      assert.deepEqual(
        walk,
        [kettle_c, brewer_c, brew_c, slurry_c, slurry_end_c, in_cup_c]
          .filter((value) => value !== null)
          .map((value) => shown("temperature", value)),
      );
      assert.equal(await ticket.locator(".walk li span").nth(1).innerText(), SAID.brewer.rinsed);
      const tolerances = await said(ticket, SAID.doseAlone);
      assert.equal(
        tolerances,
        SAID.between(recipe.tolerances.dose_from_g.toFixed(1), shown("dose", recipe.tolerances.dose_to_g)),
      );
    }
  }));

const valueOf = async (page, key) => Number(await field(page, `wish.${key}`).inputValue());

test("the brewer in the heat walk is preheated or not, a wait has a beginning, a rate is per minute", () =>
  visit({}, async (page) => {
    await ready(page);
    const [brewer] = presets.shelf.brewer;
    const { heat } = recipeOf();
    const wait = await page.locator(".ticket .wait").innerText();
    const [, minutes, seconds] = /^Wait (\d+):(\d\d) from filling the cup,/.exec(wait);
    assert.equal(Number(minutes) * 60 + Number(seconds), Math.round(heat.wait_s));
    const rate = await page.locator("#brewer-cooling_per_min-hint").textContent();
    assert.match(rate, /0\.000001 to 1\u00a0per min$/);
    await enter(page, "brewer.rinse_g", "");
    const stop = page.locator(".ticket .walk li", { hasText: SAID.brewer.cold });
    const cold = recipeOf({ brewer: { ...brewer, rinse_g: null } }).heat.brewer_c;
    assert.equal(await stop.locator("b").innerText(), shown("temperature", cold));
  }));

test("strong brews with water added have the package's numbers", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "wish.cup_g", "120");
    await field(page, "wish.add_water").evaluate((box) => box.closest("details").setAttribute("open", ""));
    await field(page, "wish.add_water").check();
    const recipe = recipeOf({ wish: { cup_g: 120, add_water: true } });
    assert.equal(await said(page.locator(".ticket"), SAID.added), shown("addition", recipe.added_per_cup_g));
    assert.equal(await said(page.locator(".ticket"), SAID.perCup), shown("beverage", recipe.brew_per_cup_g));
  }));

test("what cannot be read as a number, or lies outside its range, is refused at its field and kept as typed", () =>
  visit({}, async (page) => {
    await ready(page);
    for (const [typed, expected] of [
      ["much", /“much” is not a number/],
      ["", /a number is missing/],
      ["-5", /−5.g is outside 0\.1.g? to 200000.g/],
      ["1e3", /“1e3” is not a number/],
      ["0", /0.g is outside/],
      ["999999", /999999.g is outside/],
    ]) {
      await enter(page, "wish.cup_g", typed);
      const box = field(page, "wish.cup_g");
      assert.equal(await box.getAttribute("aria-invalid"), "true", typed);
      assert.equal(await box.inputValue(), typed);
      const error = page.locator("#wish-cup_g-error");
      assert.match(await error.innerText(), expected);
      assert.ok((await box.getAttribute("aria-describedby")).includes("wish-cup_g-error"));
      assert.equal(await page.locator(".ticket .weigh").count(), 0, "no recipe stands beside a refused wish");
    }
    await enter(page, "wish.cup_g", "190,5");
    assert.equal(await field(page, "wish.cup_g").getAttribute("aria-invalid"), null);
    assert.equal(
      await said(page.locator(".ticket"), SAID.coffee),
      shown("dose", recipeOf({ wish: { cup_g: 190.5 } }).dose_g),
    );
  }));

test("a strength outside the window is refused as that, and one past any brew by its range", () =>
  visit({}, async (page) => {
    await ready(page);
    const error = page.locator("#wish-strength_pct-error");
    const { outside_window, out_of_range } = words.refused;
    const { label } = words.fields["wish.strength_pct"];
    await enter(page, "wish.strength_pct", "9");
    assert.equal(await error.innerText(), outside_window(label, "9\u00a0%", "1.15\u00a0%", "1.45\u00a0%"));
    await enter(page, "wish.strength_pct", "51");
    assert.equal(await error.innerText(), out_of_range(label, "51\u00a0%", "0\u00a0%", "50\u00a0%"));
  }));

test("a wish that cannot be had offers the nearest that can, and the recipe for it", () =>
  visit({}, async (page) => {
    await ready(page);
    const wish = { cup_g: 300, servings: 3, most_batches: 2 };
    for (const [key, value] of Object.entries(wish)) await enter(page, `wish.${key}`, String(value));
    let refusal;
    try {
      recipeOf({ wish });
    } catch (error) {
      refusal = error;
    }
    assert.equal(refusal.code, "infeasible");
    const offer = page.locator(".ticket.refused button.main");
    assert.ok(Math.abs(numberIn(await offer.innerText()) / refusal.nearest - 1) < 1e-3);
    await offer.click();
    const recipe = recipeOf({ wish: { ...wish, cup_g: refusal.nearest } });
    assert.equal(await said(page.locator(".ticket"), SAID.coffee), shown("dose", recipe.dose_g));
  }));

test("ounces, fluid ounces and degrees Fahrenheit are for display alone", () =>
  visit({}, async (page) => {
    await ready(page);
    const recipe = recipeOf();
    const grams = await said(page.locator(".ticket"), SAID.coffee);
    for (const [setting, option] of [
      ["mass", "oz"],
      ["temperature", "f"],
      ["volume", "floz"],
    ]) {
      const choice = page.locator(`#units-${setting}`);
      await choice.evaluate((select) => select.closest("details").setAttribute("open", ""));
      await choice.selectOption(option);
    }
    assert.equal(
      await said(page.locator(".ticket"), SAID.coffee),
      `${(recipe.dose_g / 28.349523125).toFixed(3)}\u00a0oz`,
    );
    assert.equal(
      await said(page.locator(".ticket"), SAID.fill),
      `${(recipe.fill_ml / 29.5735295625).toFixed(2)}\u00a0fl oz`,
    );
    assert.equal(
      await page.locator(".ticket .walk li b").first().innerText(),
      `${(recipe.heat.kettle_c * 1.8 + 32).toFixed(1)}\u00a0°F`,
    );
    await button(page, words.judge.asPlanned).click();
    const ounces = (recipe.dose_g / 28.349523125).toFixed(3);
    assert.equal(await field(page, "brew.dose_g").inputValue(), String(Number(ounces)));
    await enter(page, "wish.cup_g", "7");
    const ofOunces = recipeOf({ wish: { cup_g: 7 * 28.349523125 } });
    assert.equal(
      await said(page.locator(".ticket"), SAID.coffee),
      `${(ofOunces.dose_g / 28.349523125).toFixed(3)}\u00a0oz`,
    );
    await enter(page, "wish.cup_g", String(190 / 28.349523125));
    await page.locator("#units-mass").selectOption("g");
    assert.equal(await said(page.locator(".ticket"), SAID.coffee), grams);
  }));

test("a link carries the whole recipe to another device, and a damaged one is refused", async () => {
  let link;
  await visit({ permissions: ["clipboard-read", "clipboard-write"] }, async (page) => {
    await ready(page);
    await enter(page, "wish.cup_g", "133");
    await enter(page, "brewer.apparent_retention_g_per_g", "1.61");
    await button(page, SAID.share).click();
    await page.getByText(SAID.shared).waitFor();
    link = await page.evaluate(() => navigator.clipboard.readText());
    assert.equal(link, page.url());
  });
  const brewer = { ...presets.shelf.brewer[0], apparent_retention_g_per_g: 1.61 };
  const { dose_g } = recipeOf({ wish: { cup_g: 133 }, brewer });
  const at = link.slice(link.indexOf("cafe-page/"));
  await visit({ at }, async (page) => {
    await page.getByText(words.linkTaken).waitFor();
    assert.equal(await said(page.locator(".ticket"), SAID.coffee), shown("dose", dose_g));
  });
  await visit({ at: at.replace("wish.cup_g=133", "wish.cup=133") }, async (page) => {
    await page.getByText(words.linkRefused("wish.cup_g, wish.cup")).waitFor();
    assert.equal(await said(page.locator(".ticket"), SAID.coffee), shown("dose", recipeOf().dose_g));
  });
});

test("what was set is still set after a reload", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "wish.cup_g", "151");
    await enter(page, "coffee.name", "Ridge, coarse");
    await page.reload();
    await ready(page);
    assert.equal(await field(page, "wish.cup_g").inputValue(), "151");
    assert.match(await page.locator(".ticket .made-with").innerText(), /Ridge, coarse/);
  }));

test("the printed card is the recipe and nothing else, with its cautions", () =>
  visit({}, async (page) => {
    await ready(page);
    await page.emulateMedia({ media: "print" });
    assert.ok(await page.locator(".ticket .weigh").isVisible());
    assert.ok((await page.locator(".ticket .caution:visible").count()) >= 2);
    for (const other of ["nav", "#guide", "#judge", "#notebook", "#wish .daily", ".ticket .actions"]) {
      assert.equal(await page.locator(other).first().isVisible(), false, other);
    }
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const pages = pdf.toString("latin1").match(/\/Type \/Page\b(?!s)/g).length;
    assert.equal(pages, 1);
  }));
