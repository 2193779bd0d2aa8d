// What every test of the café's page needs: a server, a browser, the package to compare with, the words to look for.
// NODE_PACKAGES, SITE with the folders cafe-page and cafe-embed, and PICTURES are in the environment. Each file of tests
// has a server and a browser of its own.

import assert from "node:assert/strict";
import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { after } from "node:test";
import { pathToFileURL } from "node:url";

import { launch, serve } from "../browser.js";

const given = ["NODE_PACKAGES", "SITE", "PICTURES"];
export const [packages, site, pictures] = given.map((name) => resolve(process.env[name]));
mkdirSync(pictures, { recursive: true });

const from = (path) => import(pathToFileURL(join(site, "cafe-page", path)).href);
/** The package, started in Node.js, to compare with. */
export const library = await import(pathToFileURL(join(site, "cafe-page/cupwright/src/index.js")).href);
export const { default: words } = await from("words.en.js");
export const { PRESETS: presets } = await from("src/presets.js");

export const server = await serve(site);
const browser = await launch(packages);
after(async () => {
  await browser.close();
  server.close();
});

export const PHONE = { width: 360, height: 740 };
export const TABLET = { width: 768, height: 1024 };
export const TILL = { width: 1280, height: 720 };

/**
 * A fresh device on the page: nothing kept, and everything that goes wrong in it listed in `troubles`. `use` may expect
 * troubles by taking them off the list; any left fail.
 */
export async function visit(options, use) {
  const { at = "cafe-page/", prepare = async () => {}, ...settings } = options;
  const context = await browser.newContext({ viewport: PHONE, locale: "en-GB", acceptDownloads: true, ...settings });
  const troubles = [];
  context.on("page", (page) => {
    page.on("pageerror", (error) => troubles.push(String(error)));
    page.on("console", (line) => {
      if (["error", "warning"].includes(line.type())) troubles.push(line.text());
    });
    page.on("requestfailed", (request) => troubles.push(`failed: ${request.url()}`));
  });
  await prepare(context);
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  try {
    await page.goto(`${server.address}/${at}`);
    await use(page, troubles, context);
    assert.deepEqual(troubles, []);
  } finally {
    await context.close();
  }
}

/** The page when it has a recipe, or says why not. */
export const ready = (page) => page.locator(".ticket").first().waitFor();

/** A field of the page by its name in the catalogue. */
export const field = (page, id) => page.locator(`[id="${id.replace(".", "-")}"]`);

/** Puts a text into a field, opening the drawer it lies in. */
export async function enter(page, id, text) {
  const box = field(page, id);
  await box.evaluate((input) => {
    for (let up = input.parentElement; up; up = up.parentElement) if (up.tagName === "DETAILS") up.open = true;
  });
  if ((await box.evaluate((input) => input.tagName)) === "SELECT") await box.selectOption(text);
  else await box.fill(text);
}

/** A button by what stands on it. */
export const button = (page, name) => page.getByRole("button", { name, exact: true });

/** The text of an entry of a description list, by its name. */
export const entry = (place, name) =>
  place
    .locator("dl > div", { has: place.page().locator("dt", { hasText: new RegExp(`^${escaped(name)}$`) }) })
    .locator("dd")
    .first();

/** What stands there, without the remark beside it. */
export const said = (place, name) => entry(place, name).evaluate((value) => value.firstChild.data);

const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** The number at the beginning of a text. */
export const numberIn = (text) => Number(/-?\d+(\.\d+)?/.exec(text)[0]);

/** A value as the page shows a quantity in the package's own unit. */
export function shown(quantity, value) {
  const { decimals, unit } = library.limits[quantity];
  // What rounds to nothing has no sign.
  const text = (Number(value.toFixed(decimals)) + 0).toFixed(decimals).replace("-", "\u2212");
  return unit ? `${text}\u00a0${unit}` : text;
}

/** The recipe that the package has for the presets, with changes. */
export const recipeOf = (changes) => library.plan.recipe(questionOf(changes));

/** What the planner is asked for the presets, with changes to the wish: written once more and not by the page. */
export function questionOf({
  wish = {},
  brewer = presets.shelf.brewer[0],
  coffee = presets.shelf.coffee[0],
  kitchen = presets.shelf.kitchen[0],
} = {}) {
  const wished = { ...presets.wish, ...wish };
  const { window } = library.windows[wished.window];
  return {
    wish: {
      cup_g: wished.cup_g,
      strength_pct: wished.strength_pct,
      servings: wished.servings,
      brew_strength_pct: wished.add_water ? wished.brew_strength_pct : null,
      most_batches: wished.most_batches,
      brew_c: brewer.brew_c,
      contact_s: brewer.contact_s,
      serve_c: wished.serve_c,
      window: { strength_lowest_pct: window.strength_lowest_pct, strength_highest_pct: window.strength_highest_pct },
    },
    brewer: {
      held_strength_pct: brewer.held_strength_pct,
      losses: {
        apparent_retention_g_per_g: brewer.apparent_retention_g_per_g,
        hold_up_g: brewer.hold_up_g,
        paper_g: brewer.paper_g,
        paper_uptake_g_per_g: brewer.paper_uptake_g_per_g,
        drips_g: brewer.drips_g,
        vapour_g: brewer.vapour_g,
      },
      chamber: brewer.has_chamber
        ? { volume_ml: brewer.volume_ml, displacement_ml_per_g: brewer.displacement_ml_per_g }
        : null,
      heat_capacity_j_per_k: brewer.heat_capacity_j_per_k,
      rinse_g: brewer.rinse_g,
      cooling_per_min: brewer.cooling_per_min,
      cover: brewer.cover,
      pressed: brewer.pressed,
      glass: brewer.glass,
    },
    coffee: {
      yield_pct: coffee.yield_pct,
      moisture_pct: coffee.moisture_pct,
      caffeine_mg_per_g: coffee.caffeine_mg_per_g,
    },
    kitchen: {
      air: kitchen.air,
      pressure_kpa: kitchen.air === "pressure" ? kitchen.pressure_kpa : null,
      altitude_m: kitchen.air === "altitude" ? kitchen.altitude_m : null,
      room_c: kitchen.room_c,
      humidity_pct: kitchen.humidity_pct,
      drop_k: kitchen.drop_k,
      second_vessel_j_per_k: kitchen.second_vessel_j_per_k,
      cup_j_per_k: kitchen.cup_j_per_k,
      cup_cooling_per_min: kitchen.cup_cooling_per_min,
      water_solids_mg_per_l: kitchen.water_solids_mg_per_l,
      added_c: kitchen.added_c,
    },
  };
}

/** A picture of the whole page, to be looked at. */
export const picture = (page, name) => page.screenshot({ path: join(pictures, `${name}.png`), fullPage: true });
