// The page is for everyone: assistive technology, keyboards, small and wide screens, wet hands, dark rooms, other
// languages.

import assert from "node:assert/strict";
import { test } from "node:test";

import { crossing, cutOff, faults, tooSmall, tooWide } from "./access.js";
import { button, enter, field, PHONE, picture, ready, recipeOf, TABLET, TILL, visit, words } from "./setting.js";

/** Everything that the page can show: opened drawers, refusals, a brew under way, a verdict, an entry. */
const STATES = {
  recipe: async () => {},
  drawers: async (page) => {
    await page.evaluate(() =>
      document.querySelectorAll("details").forEach((drawer) => drawer.setAttribute("open", "")),
    );
  },
  refused: async (page) => {
    await enter(page, "wish.cup_g", "much");
  },
  infeasible: async (page) => {
    for (const [key, text] of [
      ["cup_g", "300"],
      ["servings", "3"],
      ["most_batches", "2"],
    ])
      await enter(page, `wish.${key}`, text);
  },
  brewing: async (page) => {
    await enter(page, "wish.most_batches", "");
    await button(page, words.ticket.begin).click();
    for (let step = 0; step < 4; step += 1) await page.locator("#guide .step-card button.main").click();
  },
  judged: async (page) => {
    for (const [id, text] of [
      ["brew.dose_g", "16.4"],
      ["brew.water_g", "219.5"],
      ["brew.beverage_g", "193.2"],
      ["brew.readings", "1.42 1.43"],
    ]) {
      await enter(page, id, text);
    }
    await button(page, words.judge.keep).click();
    await page.locator("#notebook .entries .numbers").waitFor();
  },
  doubted: async (page) => {
    await enter(page, "brew.readings", "2.02");
  },
};

for (const colorScheme of ["light", "dark"]) {
  for (const [name, viewport] of Object.entries({ phone: PHONE, tablet: TABLET, till: TILL })) {
    test(`axe, widths, touch targets and pictures: ${name}, ${colorScheme}`, () =>
      visit({ viewport, colorScheme, reducedMotion: "reduce" }, async (page) => {
        await ready(page);
        for (const [state, reach] of Object.entries(STATES)) {
          await reach(page);
          assert.deepEqual(await faults(page), [], state);
          assert.deepEqual(await tooWide(page), [], state);
          assert.deepEqual(await tooSmall(page), [], state);
          assert.deepEqual(await crossing(page), [], state);
          assert.deepEqual(await cutOff(page), [], state);
          await picture(page, `${name}-${colorScheme}-${state}`);
        }
      }));
  }
}

test("the keyboard reaches everything in the order of the page, and is seen where it is", () =>
  visit({ viewport: TILL }, async (page) => {
    await ready(page);
    await page.evaluate(() =>
      document.querySelectorAll("details").forEach((drawer) => drawer.setAttribute("open", "")),
    );
    const all = await page.evaluate(() => {
      const found = [...document.querySelectorAll("a[href], button, select, input, summary")].filter(
        (control) => control.checkVisibility() && !control.disabled,
      );
      found.forEach((control, index) => (control.dataset.place = index));
      return found.length;
    });
    const walked = [];
    for (let step = 0; step < all; step += 1) {
      await page.keyboard.press("Tab");
      walked.push(
        await page.evaluate(() => {
          const { activeElement } = document;
          const outlined = (element) => {
            const { outlineStyle, outlineWidth } = getComputedStyle(element);
            return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
          };
          // A box with its unit is outlined as a whole.
          const seen = outlined(activeElement) || outlined(activeElement.parentElement);
          return { place: Number(activeElement.dataset.place), seen, name: activeElement.outerHTML.slice(0, 80) };
        }),
      );
    }
    assert.deepEqual(
      walked.map(({ place }) => place),
      [...Array(all).keys()],
    );
    assert.deepEqual(
      walked.filter(({ seen }) => !seen),
      [],
    );
    await page.keyboard.press("Tab");
    assert.equal(
      await page.evaluate(() => document.activeElement.dataset.place ?? "none"),
      "none",
      "focus leaves the page at its end",
    );
  }));

test("a brew from wish to notebook without a pointer", () =>
  visit({ viewport: TILL }, async (page) => {
    await ready(page);
    const go = async (to) => {
      for (let step = 0; step < 120; step += 1) {
        if (await to.evaluate((control) => control === document.activeElement)) return;
        await page.keyboard.press("Tab");
      }
      assert.fail("not reached by Tab");
    };
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await go(button(page, words.ticket.begin));
    await page.keyboard.press("Enter");
    // Heat, rinse, dose, pour, steep, press and fill for each batch; wait.
    for (let step = 0; step < 7 * recipeOf().batches + 1; step += 1) {
      assert.ok(
        await page.locator("#guide .step-card h3").evaluate((heading) => heading === document.activeElement),
        `step ${step + 1}`,
      );
      await go(page.locator("#guide .step-card button.main"));
      await page.keyboard.press("Enter");
    }
    await go(button(page, words.guide.finishedGo));
    await page.keyboard.press("Enter");
    for (const [id, text] of [
      ["brew.beverage_g", "193.2"],
      ["brew.readings", "1.31 1.32"],
    ]) {
      await go(field(page, id));
      await page.keyboard.type(text);
    }
    await go(button(page, words.judge.keep));
    await page.keyboard.press("Enter");
    await page.locator("#notebook .entries .numbers").waitFor();
  }));

test("nothing moves for those who ask for stillness", () =>
  visit({ reducedMotion: "reduce" }, async (page) => {
    await ready(page);
    await button(page, words.ticket.begin).click();
    const moving = await page.evaluate(() =>
      [document.documentElement, ...document.body.querySelectorAll("*")]
        .filter((element) => {
          const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element);
          return parseFloat(transitionDuration) > 0 || animationName !== "none" || scrollBehavior === "smooth";
        })
        .map((element) => element.outerHTML.slice(0, 80)),
    );
    assert.deepEqual(moving, []);
  }));

test("every word of the page comes from the catalogue or the package", () =>
  visit(
    {
      // A worker would answer in place of the catalogue given here.
      serviceWorkers: "block",
      prepare: (context) =>
        context.route("**/words.en.js", async (route) => {
          const catalogue = await (await route.fetch()).text();
          await route.fulfill({
            contentType: "text/javascript",
            body: `${catalogue.replace("export default", "const words =")}
              const foreign = (value) =>
                typeof value === "string" ? \`⟦\${value}⟧\`
                : typeof value === "function" ? (...given) => \`⟦\${value(...given)}⟧\`
                : Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, foreign(inner)]));
              export default { ...foreign(words), locale: words.locale, language: words.language };`,
          });
        }),
    },
    async (page, troubles) => {
      await ready(page);
      assert.match(troubles.shift(), /Service Worker registration blocked/);
      await page.evaluate(() =>
        document.querySelectorAll("details").forEach((drawer) => drawer.setAttribute("open", "")),
      );
      await page.locator(".ticket button.main").click();
      for (const [id, text] of [
        ["brew.dose_g", "16.4"],
        ["brew.water_g", "219.5"],
        ["brew.beverage_g", "193.2"],
        ["brew.readings", "2.02"],
      ]) {
        await enter(page, id, text);
      }
      await page.locator("#scale .actions button").first().click();
      await page.locator("#replay-pace").selectOption("once");
      await page.locator("#scale .slip + .actions button.main").click();
      await page.locator("#scale .replayed > :last-child p.hint").first().waitFor();
      const bare = await page.evaluate(async () => {
        const { cautionTexts, happeningTexts, limits } = await import("./cupwright/src/slim.js");
        const unitsOf = Object.values(limits).map(({ unit }) => unit);
        const texts = [cautionTexts, happeningTexts].flatMap((of) => Object.values(of));
        const known = [...texts, ...unitsOf, ...unitsOf.map((unit) => `, ${unit}`)];
        const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        const found = [];
        for (let node = walker.nextNode(); node; node = walker.nextNode()) {
          let depth = 0;
          let outside = "";
          for (const letter of node.data) {
            if (letter === "⟦") depth += 1;
            else if (letter === "⟧") depth -= 1;
            else if (depth === 0) outside += letter;
          }
          // A quotation is what a file says of itself.
          const isOurs = !["NOSCRIPT", "Q"].includes(node.parentElement.tagName);
          if (/\p{L}{3,}/u.test(outside) && !known.includes(outside) && isOurs) found.push(node.data);
        }
        return found;
      });
      // What the café itself has named is not the catalogue's.
      const named = [
        "Hand-pressed steeper, small",
        "Drip cone on a glass jug",
        "Big batch brewer",
        "House, medium-fine",
        "Guest, fine",
        "Hut kitchen",
        "Cart by the lake",
      ];
      assert.deepEqual(
        bare.filter((text) => !text.split(" · ").every((part) => named.includes(part))),
        [],
      );
    },
  ));
