// The calculator as an element of another page: its numbers, its manners, its looks.

import assert from "node:assert/strict";
import { test } from "node:test";

import { faults, tooSmall, tooWide } from "./access.js";
import {
  button,
  enter,
  field,
  library,
  PHONE,
  picture,
  presets,
  ready,
  recipeOf,
  said,
  shown,
  TABLET,
  TILL,
  visit,
  words,
} from "./setting.js";

const at = "cafe-embed/";

test("a ticket, a brew and a verdict in somebody else's page, under its own strict policy", () =>
  visit({ at, viewport: PHONE }, async (page) => {
    await ready(page);
    await enter(page, "wish.cup_g", "180");
    const recipe = recipeOf({ wish: { cup_g: 180 } });
    assert.equal(await said(page.locator(".ticket"), words.ticket.coffee), shown("dose", recipe.dose_g));
    assert.equal(await said(page.locator(".ticket"), words.ticket.water), shown("brew_water", recipe.water_g));

    await button(page, words.ticket.begin).click();
    const step = page.locator("#guide .step-card");
    const begun = await step.locator("h3").evaluate((heading) => heading.getRootNode().activeElement === heading);
    assert.ok(begun, "the first step has the focus");
    while (await step.locator("button.main", { hasNotText: words.guide.finishedGo }).count()) {
      await step.locator("button.main").click();
    }
    await step.locator("button.main").click();
    await enter(page, "brew.beverage_g", "193");
    await enter(page, "brew.readings", "1.42 1.43");
    // Coffee and water are filled in as the ticket shows them.
    const filled = (quantity, value) => Number(value.toFixed(library.limits[quantity].decimals));
    const [dose, water] = [filled("dose", recipe.dose_g), filled("brew_water", recipe.water_g)];
    const brewer = presets.shelf.brewer[0];
    const { yield_pct } = library.extraction.extractionYield({
      strength_pct: 1.425,
      brew: {
        dose_g: dose,
        water_g: water,
        beverage_g: 193,
        moisture_pct: presets.shelf.coffee[0].moisture_pct,
        water_solids_mg_per_l: presets.shelf.kitchen[0].water_solids_mg_per_l,
        vapour_g: brewer.vapour_g,
        held_strength_pct: brewer.held_strength_pct,
      },
    });
    await page.locator(".verdict", { hasText: shown("yield", yield_pct) }).waitFor();
  }));

for (const [name, viewport] of Object.entries({ phone: PHONE, tablet: TABLET, till: TILL })) {
  test(`axe, widths, touch targets and pictures of the embed: ${name}`, () =>
    visit({ at, viewport, reducedMotion: "reduce" }, async (page) => {
      await ready(page);
      for (const drawer of await page.locator("brew-ticket details").all()) {
        await drawer.evaluate((details) => details.setAttribute("open", ""));
      }
      assert.deepEqual(await faults(page), []);
      assert.deepEqual(await tooWide(page), []);
      assert.deepEqual(await tooSmall(page), []);
      await picture(page, `embed-${name}`);
    }));
}

const styleOf = (place, name) => place.evaluate((element, of) => getComputedStyle(element).getPropertyValue(of), name);

test("looks: the page's variables are followed, its rules stay out, the element's rules stay in", () =>
  visit({ at, viewport: TILL }, async (page) => {
    await ready(page);
    const main = button(page, words.ticket.begin);
    assert.equal(await styleOf(main, "background-color"), "rgb(138, 47, 82)", "--ember of the page");
    assert.match(await styleOf(page.locator(".lead, .what, .quiet").first(), "font-family"), /^Verdana/);
    for (const drawer of await page.locator("brew-ticket details").all()) {
      await drawer.evaluate((details) => details.setAttribute("open", ""));
    }
    await page.evaluate(() => document.querySelector("brew-ticket").style.setProperty("--touch", "84px"));
    assert.deepEqual(await tooSmall(page, 84), [], "--touch holds every control");
    const heading = page.locator("brew-ticket h2").first();
    const before = await styleOf(heading, "margin");
    assert.notEqual(before, "40px");
    await page.evaluate(() => {
      // What a careless sheet of the page would say; adopted sheets need no leave of the policy.
      const careless = new CSSStyleSheet();
      careless.replaceSync(
        "button { background: rgb(1, 2, 3) !important } .ticket { display: none } * { margin: 40px }",
      );
      document.adoptedStyleSheets.push(careless);
    });
    assert.equal(await styleOf(main, "background-color"), "rgb(138, 47, 82)");
    assert.ok(await page.locator(".ticket").isVisible());
    assert.equal(await styleOf(page.locator("main > section h2"), "margin"), "40px", "the sheet is in force");
    assert.equal(await styleOf(heading, "margin"), before);
    const alone = await page.evaluate(() => {
      const [heading, paragraph] = ["h2", "p"].map((tag) => document.querySelector(`main > section ${tag}`));
      return { display: getComputedStyle(heading).display, line: getComputedStyle(paragraph).lineHeight };
    });
    // The calculator lays its own headings out as flex; the page's stay blocks.
    assert.equal(alone.display, "block");
    assert.equal(alone.line, `${16 * 1.7}px`);
  }));

test("light or dark as the page says, not as the device does", async () => {
  for (const colorScheme of ["light", "dark"]) {
    await visit({ at, viewport: TILL, colorScheme }, async (page) => {
      await ready(page);
      assert.equal(await styleOf(page.locator(".caution").first(), "background-color"), "rgb(246, 223, 181)");
      await page.evaluate(() => {
        document.documentElement.style.setProperty("color-scheme", "dark");
      });
      assert.equal(await styleOf(page.locator(".caution").first(), "background-color"), "rgb(75, 58, 23)");
    });
  }
});

test("laid out by its own width in a narrow column of a wide screen", () =>
  visit({ at, viewport: TILL }, async (page) => {
    await ready(page);
    const columns = () =>
      styleOf(page.locator(".plan"), "grid-template-columns").then((list) => list.split(" ").length);
    await page.evaluate(() => (document.body.style.maxWidth = "1200px"));
    assert.equal(await columns(), 2);
    await page.evaluate(() => (document.querySelector("brew-ticket").style.width = "340px"));
    assert.equal(await columns(), 1);
    const { inner, outer } = await page.locator("brew-ticket").evaluate((ticket) => ({
      inner: Math.max(
        ...[...ticket.shadowRoot.querySelectorAll("*")].map((part) => part.getBoundingClientRect().right),
      ),
      outer: ticket.getBoundingClientRect().right,
    }));
    assert.ok(inner <= outer + 1, `${inner} beyond ${outer}`);
  }));

/** Wraps timers and screen locks so that those alive can be counted. */
const counted = (context) =>
  context.addInitScript(() => {
    window.alive = { timers: new Set(), lights: 0 };
    const { setInterval: set, clearInterval: clear } = window;
    window.setInterval = (...given) => {
      const timer = set(...given);
      window.alive.timers.add(timer);
      return timer;
    };
    window.clearInterval = (timer) => {
      window.alive.timers.delete(timer);
      clear(timer);
    };
    const request = async () => {
      window.alive.lights += 1;
      return { release: () => (window.alive.lights -= 1) };
    };
    Object.defineProperty(navigator, "wakeLock", { value: { request } });
  });

const alive = (page) => page.evaluate(() => ({ timers: window.alive.timers.size, lights: window.alive.lights }));

test("taken out of the page it stops its clock and lets the screen go; put back it goes on", () =>
  visit({ at, viewport: PHONE, prepare: counted }, async (page) => {
    await ready(page);
    await button(page, words.ticket.begin).click();
    const step = page.locator("#guide .step-card");
    while ((await page.locator(".dial").count()) === 0) await step.locator("button.main").click();
    const name = await step.locator("h3").textContent();
    assert.deepEqual(await alive(page), { timers: 1, lights: 1 });
    await page.evaluate(() => {
      window.kept = document.querySelector("brew-ticket");
      window.kept.remove();
    });
    assert.deepEqual(await alive(page), { timers: 0, lights: 0 });
    await page.evaluate(() => document.querySelector("main").append(window.kept));
    await page.locator(".dial").waitFor();
    assert.equal(await step.locator("h3").textContent(), name);
    assert.deepEqual(await alive(page), { timers: 1, lights: 1 });
    await step.locator("button.main").click();
    assert.deepEqual(await alive(page), { timers: 0, lights: 0 });
    // Moved while it loads: only the last place counts.
    await page.evaluate(() => {
      const { kept } = window;
      kept.remove();
      document.querySelector("main").prepend(kept);
      kept.remove();
      document.querySelector("main").append(kept);
    });
    await ready(page);
    assert.equal(await page.locator(".calculator").count(), 1);
  }));

test("two elements of a page, and another tab, are one device", () =>
  visit({ at, viewport: TILL }, async (page, _, context) => {
    await ready(page);
    await page.evaluate(() => document.querySelector("main").append(document.createElement("brew-ticket")));
    await page.locator(".ticket").nth(1).waitFor();
    const tab = await context.newPage();
    await tab.goto(page.url().replace(at, "cafe-page/"));
    await ready(tab);
    // What `part` has to show, in both elements and in the tab. A tab in the background is not drawn.
    const everywhere = async (part, text) => {
      for (const place of [page, tab]) {
        await place.bringToFront();
        const count = place === page ? 2 : 1;
        const shows = place.locator(part, { hasText: text });
        for (let element = 0; element < count; element += 1) await shows.nth(element).waitFor();
      }
    };

    await page.bringToFront();
    await field(page, "wish.cup_g").first().fill("170");
    await everywhere(".ticket .weigh", shown("dose", recipeOf({ wish: { cup_g: 170 } }).dose_g));
    await page.bringToFront();
    await button(page, words.ticket.begin).first().click();
    const steps = await page.locator("#guide progress").first().getAttribute("max");
    await everywhere("#guide .where", words.guide.progress(1, steps));
    await tab.locator("#guide .step-card button.main").click();
    await everywhere("#guide .where", words.guide.progress(2, steps));
    await tab.close();
  }));

test("a copied link and the card to print lead to the page of its own", () =>
  visit({ at, viewport: PHONE, permissions: ["clipboard-read", "clipboard-write"] }, async (page, _, context) => {
    await ready(page);
    await enter(page, "wish.cup_g", "190");
    await button(page, words.ticket.share).click();
    await page.locator(".news", { hasText: words.ticket.shared }).waitFor();
    const link = await page.evaluate(() => navigator.clipboard.readText());
    assert.match(link, /\/cafe-page\/#wish\.cup_g=190/);
    const opened = context.waitForEvent("page");
    await button(page, words.ticket.printable).click();
    const card = await opened;
    await ready(card);
    assert.equal(card.url(), link);
    const dose = shown("dose", recipeOf({ wish: { cup_g: 190 } }).dose_g);
    assert.equal(await said(card.locator(".ticket"), words.ticket.coffee), dose);
    await card.close();
  }));

test("a package that does not load is said so in the page's place", () =>
  visit(
    {
      at,
      viewport: PHONE,
      prepare: (context) => context.route("**/cupwright.wasm", (route) => route.fulfill({ status: 404 })),
    },
    async (page, troubles, context) => {
      await page.getByRole("alert").filter({ hasText: words.noStart }).waitFor();
      // Put back into its page it tries again.
      await context.unroute("**/cupwright.wasm");
      await page.evaluate(() => {
        const ticket = document.querySelector("brew-ticket");
        ticket.remove();
        document.querySelector("main").append(ticket);
      });
      await ready(page);
      assert.ok(troubles.length > 0);
      troubles.length = 0;
    },
  ));
