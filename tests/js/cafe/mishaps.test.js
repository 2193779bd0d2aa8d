// What happens at a bench: second thoughts, wrong buttons, damaged storage, half an update, odd numbers.

import assert from "node:assert/strict";
import { test } from "node:test";

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
  server,
  shown,
  TILL,
  visit,
  words,
} from "./setting.js";

const GUIDE = words.guide;
const news = (page) => page.locator(".news");
const card = (page) => page.locator("#guide .step-card");
const value = (page, id) => field(page, id).inputValue();

test("what was weighed stands, and what is filled in is of the brew under way", () =>
  visit({}, async (page) => {
    await ready(page);
    const { dose_g, water_g } = recipeOf();
    await button(page, words.ticket.begin).click();
    await enter(page, "wish.cup_g", "120");
    await enter(page, "brew.water_g", "216.3");
    await button(page, words.judge.asPlanned).click();
    assert.equal(await value(page, "brew.dose_g"), String(Number(dose_g.toFixed(1))), "with the digits shown");
    assert.equal(await value(page, "brew.water_g"), "216.3");
    assert.ok(water_g !== 216.3 && (await button(page, words.judge.asPlanned).isDisabled()));
  }));

test("a new brew begins blank, and can be put back with all that was entered", () =>
  visit({}, async (page) => {
    await ready(page);
    await button(page, words.ticket.begin).click();
    await card(page).locator("button.main").click();
    await enter(page, "brew.beverage_g", "193.2");
    await enter(page, "brew.readings", "1.42 1.43");
    await button(page, words.ticket.begin).click();
    await card(page).getByText(GUIDE.heat.name, { exact: true }).waitFor();
    assert.equal(await value(page, "brew.readings"), "");
    await news(page).getByText(GUIDE.restarted).waitFor();
    await button(page, words.putBack).click();
    await card(page).getByText(GUIDE.preheat.name, { exact: true }).waitFor();
    assert.equal(await value(page, "brew.readings"), "1.42 1.43");
    assert.equal(await value(page, "brew.beverage_g"), "193.2");

    await button(page, GUIDE.again).click();
    await page.locator("#guide").getByText(GUIDE.idle).waitFor();
    await button(page, words.putBack).click();
    await card(page).getByText(GUIDE.preheat.name, { exact: true }).waitFor();
    await page.reload();
    await ready(page);
    await card(page).getByText(GUIDE.preheat.name, { exact: true }).waitFor();
  }));

test("a brewer taken off its shelf can be put back", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "brewer.name", "The dented one");
    await button(page, words.shelf.brewer.remove).click();
    assert.notEqual(await value(page, "brewer.name"), "The dented one");
    await button(page, words.putBack).click();
    assert.equal(await value(page, "brewer.name"), "The dented one");
  }));

test("what is put back is what was touched, and not what was done since", () =>
  visit({}, async (page, _, context) => {
    await ready(page);
    const { name } = presets.shelf.brewer[0];
    await field(page, "brewer.name").evaluate((box) => (box.closest("details").open = true));
    await button(page, words.shelf.brewer.remove).click();
    assert.notEqual(await value(page, "brewer.name"), name);
    await enter(page, "wish.cup_g", "160");
    await enter(page, "brew.beverage_g", "193.2");
    // Hearing that the network is gone does not take the offer away.
    await context.setOffline(true);
    await page.waitForFunction(() => !navigator.onLine);
    await context.setOffline(false);
    await button(page, words.putBack).click();
    assert.equal(await value(page, "brewer.name"), name);
    assert.equal(await value(page, "wish.cup_g"), "160");
    assert.equal(await value(page, "brew.beverage_g"), "193.2");
    assert.equal(await page.locator("#pick-brewer option").count(), presets.shelf.brewer.length);

    // A brew begun clears what was offered before: it would undo the wrong thing.
    await enter(page, "brew.beverage_g", "");
    await button(page, words.ticket.begin).click();
    await card(page).locator("button.main").click();
    await button(page, GUIDE.again).click();
    await button(page, words.putBack).waitFor();
    await button(page, words.ticket.begin).click();
    await card(page).getByText(GUIDE.heat.name, { exact: true }).waitFor();
    assert.equal(await button(page, words.putBack).count(), 0);
  }));

test("a guide that was ended is not put back over one that another tab has begun", () =>
  visit({}, async (page, _, context) => {
    await ready(page);
    await button(page, words.ticket.begin).click();
    await card(page).locator("button.main").click();
    await button(page, GUIDE.again).click();
    const tab = await context.newPage();
    await tab.goto(page.url());
    await ready(tab);
    await button(tab, words.ticket.begin).click();
    await page.bringToFront();
    await card(page).getByText(GUIDE.heat.name, { exact: true }).waitFor();
    await button(page, words.putBack).click();
    await card(page).getByText(GUIDE.heat.name, { exact: true }).waitFor();

    // Nor are the brew and guide before that one, once it is ended elsewhere.
    await enter(page, "brew.beverage_g", "193.2");
    await button(page, words.ticket.begin).click();
    await news(page).getByText(GUIDE.restarted).waitFor();
    await tab.bringToFront();
    await button(tab, GUIDE.again).click();
    await page.bringToFront();
    await page.locator("#guide").getByText(GUIDE.idle).waitFor();
    await button(page, words.putBack).click();
    await page.locator("#guide").getByText(GUIDE.idle).waitFor();
    assert.equal(await value(page, "brew.beverage_g"), "");
  }));

test("a link put back is not taken again by a reload", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "wish.cup_g", "133");
    await button(page, words.ticket.share).click();
    const link = await page.evaluate(() => location.href);
    await enter(page, "wish.cup_g", "150");
    await page.goto(link);
    await news(page).getByText(words.linkTaken).waitFor();
    assert.equal(await value(page, "wish.cup_g"), "133");
    await enter(page, "brew.beverage_g", "193.2");
    await button(page, words.putBack).click();
    assert.equal(await value(page, "wish.cup_g"), "150");
    assert.equal(await value(page, "brew.beverage_g"), "193.2");
    await page.reload();
    await ready(page);
    assert.equal(await value(page, "wish.cup_g"), "150");
  }));

test("a link taken in one tab is not taken again by it once another tab has changed the recipe", () =>
  visit({}, async (page, _, context) => {
    await ready(page);
    await button(page, words.ticket.share).click();
    await page.waitForFunction(() => location.hash !== "");
    const tab = await context.newPage();
    await tab.goto(page.url().split("#")[0]);
    await ready(tab);
    await enter(tab, "brew.beverage_g", "193.2");
    await page.bringToFront();
    await page.waitForFunction(() => document.getElementById("brew-beverage_g").value === "193.2");
    assert.notEqual(await page.evaluate(() => location.hash), "", "what is no part of a recipe leaves the link");
    await tab.bringToFront();
    await enter(tab, "wish.cup_g", "150");
    await page.bringToFront();
    await page.waitForFunction(() => location.hash === "");
    await page.reload();
    await ready(page);
    assert.equal(await value(page, "wish.cup_g"), "150");
  }));

test("what is typed into a field and then hidden does not spoil the link", () =>
  visit({}, async (page) => {
    await ready(page);
    await field(page, "wish.add_water").evaluate((box) => box.click());
    await enter(page, "wish.brew_strength_pct", "strong");
    assert.equal(await page.locator(".ticket .weigh").count(), 0);
    await field(page, "wish.add_water").evaluate((box) => box.click());
    await button(page, words.ticket.share).click();
    const link = await page.evaluate(() => location.href);
    await enter(page, "wish.cup_g", "150");
    await page.goto(link);
    await news(page).getByText(words.linkTaken).waitFor();
    assert.equal(await value(page, "wish.cup_g"), "190");
  }));

test("one reading too many is kept as typed and refused", () =>
  visit({}, async (page) => {
    await ready(page);
    for (const [id, text] of Object.entries(WEIGHED)) await enter(page, id, text);
    const eleven = Array(11).fill("1.42").join(" ");
    await enter(page, "brew.readings", eleven);
    assert.equal(await field(page, "brew.readings").getAttribute("aria-invalid"), "true");
    assert.match(await page.locator("#brew-readings-error").textContent(), /11 .*1 to 10/);
    await page.reload();
    await ready(page);
    assert.equal(await value(page, "brew.readings"), eleven);
  }));

test("numbers that can be read two ways, and times, are refused rather than guessed", () =>
  visit({}, async (page) => {
    await ready(page);
    const { label } = words.fields["kitchen.altitude_m"];
    await enter(page, "kitchen.altitude_m", "1,640");
    await page.getByText(words.refused.two_readings(label, "1,640")).first().waitFor();
    await enter(page, "kitchen.altitude_m", "0,125");
    await ready(page);
    assert.equal(await page.getByText(words.refused.two_readings(label, "0,125")).count(), 0);
    assert.equal(await field(page, "kitchen.altitude_m").getAttribute("aria-invalid"), null);
    await enter(page, "kitchen.altitude_m", "1640,5");
    await ready(page);
    const recipe = recipeOf({ kitchen: { ...presets.shelf.kitchen[0], altitude_m: 1640.5 } });
    await page
      .locator(".walk li", { hasText: shown("temperature", recipe.heat.kettle_c) })
      .first()
      .waitFor();

    const time = words.fields["brewer.contact_s"].label;
    for (const text of ["4", "2.5", "1:75", "1:2:3"]) {
      await enter(page, "brewer.contact_s", text);
      await page.getByText(words.refused.not_time(time, text)).first().waitFor();
    }
    // What has stood for hours is not served warm.
    await enter(page, "wish.serve_c", "");
    for (const [text, row] of [
      ["4:00", "4:00"],
      ["75:30", "1:15:30"],
      ["12:00:00", "12:00:00"],
    ]) {
      await enter(page, "brewer.contact_s", text);
      assert.equal(await said(page.locator(".ticket"), words.ticket.contact), row);
    }
  }));

const DAMAGED = {
  "no readings": ["settings", { brew: { readings: null } }],
  "readings as text": ["settings", { brew: { readings: "1.4" } }],
  "a window of another year": ["settings", { wish: { window: "golden_cup_2011" } }],
  "a wish that is text": ["settings", { wish: "x" }],
  "a coffee that is text": ["settings", { shelf: { coffee: ["a"] } }],
  "units unheard of": ["settings", { units: { mass: "stone" } }],
  "a guide of another shape": ["guide", { done: [], recipe: {} }],
  "half a guide": ["guide", { shape: 2, begun: 0, done: [], recipe: {} }],
  "a guide without a recipe": ["guide", { shape: 2, begun: 0, done: [] }],
  "a guide begun at no time": ["guide", { shape: 2, begun: "x", done: [], recipe: { batches: 1, heat: {} } }],
  "no object at all": ["settings", 7],
};

for (const [name, [key, kept]] of Object.entries(DAMAGED)) {
  test(`storage with ${name} costs that and no more`, () =>
    visit(
      {
        prepare: (context) =>
          context.addInitScript(
            ([at, text]) => location.protocol === "http:" && localStorage.setItem(`brew-ticket.${at}`, text),
            [key, JSON.stringify(kept)],
          ),
      },
      async (page) => {
        await ready(page);
        assert.equal(await said(page.locator(".ticket"), words.ticket.coffee), shown("dose", recipeOf().dose_g));
        await page.locator("#guide").getByText(GUIDE.idle).waitFor();
        await button(page, words.ticket.begin).click();
        await card(page).getByText(GUIDE.heat.name, { exact: true }).waitFor();
      },
    ));
}

test("a guide of another shape, told by an older tab, is not taken up", () =>
  visit({}, async (page) => {
    await ready(page);
    await button(page, words.ticket.begin).click();
    for (const guide of [
      { shape: 1, step: 4 },
      { shape: 2, done: [] },
    ]) {
      await page.evaluate((told) => new BroadcastChannel("brew-ticket").postMessage({ guide: told }), guide);
      await page.locator("#guide").getByText(GUIDE.idle).waitFor();
      await button(page, words.ticket.begin).click();
      await card(page).getByText(GUIDE.heat.name, { exact: true }).waitFor();
    }
  }));

test("a device that forbids storage still brews, and says what it does not keep", () =>
  visit(
    {
      prepare: (context) =>
        context.addInitScript(() => {
          const forbidden = () => {
            throw new DOMException("forbidden", "SecurityError");
          };
          Object.defineProperty(window, "localStorage", { get: forbidden });
          Object.defineProperty(window, "indexedDB", { get: forbidden });
        }),
    },
    async (page) => {
      await ready(page);
      await enter(page, "wish.cup_g", "150");
      await page.locator(".lasting").getByText(words.notKept).waitFor();
      await button(page, words.ticket.begin).click();
      await card(page).locator("button.main").click();
      await card(page).getByText(GUIDE.preheat.name, { exact: true }).waitFor();
      await button(page, GUIDE.again).click();
      await page.locator("#guide").getByText(GUIDE.idle).waitFor();
      await button(page, words.close).click();
      // That nothing is kept stays said.
      assert.ok(await page.locator(".lasting").getByText(words.notKept).isVisible());
      for (const [id, text] of Object.entries(WEIGHED)) await enter(page, id, text);
      await button(page, words.judge.keep).click();
      await page.getByText(words.notebook.noDatabase).waitFor();
      // It has been tried, has failed, and may be tried again.
      assert.ok(await button(page, words.judge.keep).isEnabled());
      assert.equal(await news(page).textContent(), "");
      assert.equal(await page.locator("#notebook .entries .numbers").count(), 0);
    },
  ));

const WEIGHED = {
  "brew.dose_g": "16.4",
  "brew.water_g": "219.5",
  "brew.beverage_g": "193.2",
  "brew.readings": "1.42 1.43",
};

test("nothing is kept that could not be taken back from a file", () =>
  visit({}, async (page) => {
    await ready(page);
    for (const [id, text] of Object.entries(WEIGHED)) await enter(page, id, text);
    await enter(page, "wish.servings", "two");
    await button(page, words.judge.keep).click();
    await news(page)
      .getByText(words.judge.notKept(words.notebook.wrong.number("wish.servings")))
      .waitFor();
    await page.locator("#notebook").getByText(words.notebook.empty).waitFor();
    await enter(page, "wish.servings", "2");
    await button(page, words.judge.keep).click();
    await page.locator("#notebook .numbers").waitFor();
    const entry = page.locator("#notebook .entries li").first();
    assert.ok(await entry.evaluate((item) => item === document.activeElement), "the new entry has the focus");
    // The message is on the screen, wherever the page was scrolled to.
    const box = await news(page).getByText(words.judge.kept).boundingBox();
    assert.ok(box.y >= 0 && box.y + box.height <= PHONE.height, JSON.stringify(box));
    assert.equal(await news(page).textContent(), `${words.judge.kept}×`);
  }));

test("time that is up is said to somebody who is typing", () =>
  visit({ prepare: (context) => context.clock.install({ time: new Date("2030-01-31T09:30:00Z") }) }, async (page) => {
    await ready(page);
    await button(page, words.ticket.begin).click();
    while ((await page.locator(".dial").count()) === 0) await card(page).locator("button.main").click();
    const alarm = page.getByRole("alert");
    assert.equal(await alarm.textContent(), "");
    await page.clock.runFor(119_000);
    for (const letter of "sweet, a little thin") {
      await field(page, "brew.note").press(letter === " " ? "Space" : letter);
      await page.clock.runFor(100);
    }
    assert.equal(await alarm.textContent(), GUIDE.timeUp(GUIDE.steep.name));
    // Once: not again when the guide is shown anew.
    await page.evaluate(() => (document.querySelector("[role=alert]").textContent = ""));
    await page.locator("#units-mass").evaluate((select) => {
      select.value = "oz";
      select.dispatchEvent(new Event("change"));
    });
    await page.clock.runFor(1000);
    assert.equal(await alarm.textContent(), "");
    await page.clock.setSystemTime(new Date("2030-01-31T08:00:00Z"));
    await page.clock.runFor(500);
    assert.equal(await page.getByRole("timer").textContent(), GUIDE.clockBack);
  }));

test("a strong brew's reading is told from what water makes of it", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "wish.servings", "4");
    await field(page, "wish.add_water").evaluate((box) => box.click());
    for (const [id, text] of Object.entries({ ...WEIGHED, "brew.dose_g": "24", "brew.readings": "2.21 2.22" })) {
      await enter(page, id, text);
    }
    const { added_g } = library.dilution.waterToReach({
      beverage_g: 193.2,
      strength_pct: 2.215,
      wanted_pct: presets.wish.strength_pct,
      water_solids_mg_per_l: presets.shelf.kitchen[0].water_solids_mg_per_l,
    });
    const added = shown("addition", added_g);
    await page.locator(".verdict").getByText(words.standing.drink(added)).waitFor();
    const box = page.locator(".verdict .standing");
    assert.equal(await box.getAttribute("class"), "standing", "nothing decides the drink");
    await page.locator(".verdict figure .name", { hasText: words.pictures.after(added) }).waitFor();
    assert.equal(await page.locator(".verdict figure .name", { hasText: words.pictures.measured }).count(), 0);
    // How warm the water added is stands wherever it is spoken of.
    const warm = shown("temperature", presets.shelf.kitchen[0].added_c);
    await page.locator(".ticket .weigh").getByText(words.ticket.addedAt(warm)).waitFor();
  }));

test("what holds at most is said so down to the cup", () =>
  visit({}, async (page) => {
    await ready(page);
    await field(page, "brewer.cooling_per_min").evaluate((box) => (box.closest("details").open = true));
    await enter(page, "brewer.cooling_per_min", "");
    await page.locator(".walk").getByText(words.ticket.cup.at_most).waitFor();
    await page.locator(".ticket .wait", { hasText: "at most" }).waitFor();
    const { heat } = recipeOf({ brewer: { ...presets.shelf.brewer[0], cooling_per_min: null } });
    const cooling = page.locator("figure", { hasText: words.pictures.cooling });
    await cooling.getByText(words.pictures.coolingText(shown("temperature", heat.in_cup_c), "", true).trim()).waitFor();
    assert.match(await cooling.locator(".name").last().textContent(), /^≤ \d+:\d\d$/);
  }));

test("a cup that hardly cools has a picture as long as time goes", () =>
  visit({}, async (page) => {
    await ready(page);
    await enter(page, "kitchen.cup_cooling_per_min", "0.000025");
    await page.locator(".ticket .wait").waitFor();
    await page.locator("figure", { hasText: words.pictures.cooling }).waitFor();
  }));

test("long names and enlarged text keep to the screen", () =>
  visit({ viewport: PHONE }, async (page) => {
    await ready(page);
    await enter(page, "coffee.name", "Ж".repeat(500));
    await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
    const { wide, screen } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      screen: innerWidth,
    }));
    assert.ok(wide <= screen, `${wide} px on a screen of ${screen}`);
    await picture(page, "phone-enlarged");
  }));

test("hostile links and files are refused or harmless", () =>
  visit({ viewport: TILL }, async (page) => {
    await ready(page);
    await button(page, words.ticket.share).click();
    const link = await page.evaluate(() => location.href);
    for (const [from, to] of [
      ["wish.cup_g=190", "wish.cup_g=0x14"],
      ["wish.cup_g=190", "wish.cup_g=Infinity"],
      [/coffee\.name=[^&]*/, `coffee.name=${"x".repeat(501)}`],
    ]) {
      assert.ok(link.match(from), String(from));
      await button(page, words.close).click();
      await page.goto(link.replace(from, to));
      await news(page)
        .getByText(words.linkRefused(to.split("=")[0]), { exact: true })
        .waitFor();
      assert.equal(await value(page, "wish.cup_g"), "190");
      assert.equal(await value(page, "coffee.name"), presets.shelf.coffee[0].name);
    }
    const name = "%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E";
    await page.goto(link.replace(/coffee\.name=[^&]*/, `coffee.name=${name}`));
    await page.locator(".made-with", { hasText: "<img src=x onerror=alert(1)>" }).waitFor();
    await button(page, words.putBack).click();
    assert.equal(await value(page, "coffee.name"), presets.shelf.coffee[0].name);

    const entry = (id) => ({ id, at: "2030-01-31T09:30:00.000Z" });
    const file = { schema: "cupwright-cafe-notebook/1", entries: [entry("=cmd|' /C calc'!A0")] };
    await page.setInputFiles("#notebook-file", {
      name: "notebook.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify(file)),
    });
    await page.getByText(words.notebook.wrong.id("entries[0].id")).waitFor();
  }));

test("an update is taken whole or not at all, and a server's error does not hide the page that is kept", () =>
  visit({}, async (page, troubles) => {
    await ready(page);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    const title = () => page.locator("h1").textContent();
    const update = async (path, body) => {
      server.answers.set(`/cafe-page/${path}`, body);
      await page.reload();
      await ready(page);
    };
    const catalogue = await (await fetch(`${server.address}/cafe-page/words.en.js`)).text();
    const renamed = catalogue.replace('title: "Brew ticket"', 'title: "Brew slip"');
    assert.notEqual(catalogue, renamed);
    try {
      await update("words.en.js", { body: renamed });
      assert.equal(await title(), "Brew slip", "an edited page is seen at once");
      // The next update loses one file: none of it is taken.
      server.answers.set("/cafe-page/src/bench.js", { status: 503 });
      await update("words.en.js", { body: catalogue });
      assert.equal(await title(), "Brew slip");
      server.answers.delete("/cafe-page/src/bench.js");
      // One file dawdles: the kept page answers as a whole.
      await update("src/bench.js", { delay_ms: 6000 });
      assert.equal(await title(), "Brew slip");
      server.answers.clear();
      await page.waitForTimeout(7000);
      await page.reload();
      await ready(page);
      assert.equal(await title(), words.title);
      for (const path of ["", "index.html"]) server.answers.set(`/cafe-page/${path}`, { status: 503, body: "down" });
      await page.reload();
      await ready(page);
    } finally {
      server.answers.clear();
    }
    troubles.splice(0, troubles.length, ...troubles.filter((text) => !/503/.test(text)));
  }));
