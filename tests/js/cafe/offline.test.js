// Without a network: everything after the first visit.

import assert from "node:assert/strict";
import { test } from "node:test";

import { button, enter, said, ready, recipeOf, server, shown, visit, words } from "./setting.js";

// Chromium reports the worker's own vain question for a newer file.
const vain = (troubles) =>
  troubles.splice(0, Infinity, ...troubles.filter((text) => !/ERR_INTERNET_DISCONNECTED|^failed: /.test(text)));

test("the page does its whole job offline after the first visit", () =>
  visit({}, async (page, troubles, context) => {
    await ready(page);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    const before = server.requests.length;
    await context.setOffline(true);
    await page.reload();
    await ready(page);
    await enter(page, "wish.cup_g", "141");
    assert.equal(
      await said(page.locator(".ticket"), words.ticket.coffee),
      shown("dose", recipeOf({ wish: { cup_g: 141 } }).dose_g),
    );
    await button(page, words.ticket.begin).click();
    await page.locator("#guide .step-card").waitFor();
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
    await page.emulateMedia({ media: "print" });
    assert.equal(await page.locator("nav").first().isVisible(), false, "the print style is kept too");
    assert.equal(server.requests.length, before, "nothing reached the server");
    vain(troubles);
  }));

/** Waits until the page's worker answers for it. */
const underWorker = async (page) => {
  await ready(page);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
};

/** Waits until something asked of the page is so; it may take a worker's time. */
async function eventually(page, holds, given) {
  for (let left = 100; left > 0; left -= 1) {
    if (await page.evaluate(holds, given)) return;
    await page.waitForTimeout(100);
  }
  assert.fail(String(holds));
}

const stores = (page) => page.evaluate(async () => (await caches.keys()).sort());

test("stores of others, a second copy of the page among them, are left alone", () =>
  visit({}, async (page, troubles, context) => {
    const second = "/cafe-page/second/";
    server.copies.set(second, "/cafe-page/");
    try {
      await underWorker(page);
      const [first] = await stores(page);
      await page.evaluate(async () => (await caches.open("brew-ticket.menu")).put("menu", new Response("tea")));
      await page.goto(`${server.address}${second}`);
      await ready(page);
      await eventually(
        page,
        async (scope) => {
          const registration = await navigator.serviceWorker.getRegistration(scope);
          return registration?.scope.endsWith(scope) && registration.active?.state === "activated";
        },
        second,
      );
      const both = (await stores(page)).filter((name) => name !== "brew-ticket.menu");
      assert.equal(both.length, 2);
      assert.ok(both.includes(first));
      // An update of the one leaves the other as it is.
      server.answers.set(`${second}theme.css`, { body: ":root {}" });
      await page.reload();
      await ready(page);
      await eventually(page, async () => (await caches.keys()).length === 4);
      assert.ok((await stores(page)).includes(first));
      // A store that was begun and never filled is taken away, even where nothing can be fetched.
      await page.evaluate(async () => caches.open(`${(await caches.keys()).at(-1)}-half`));
      await context.setOffline(true);
      await page.reload();
      await ready(page);
      await eventually(page, async () => (await caches.keys()).length === 4);
      await page.goto(`${server.address}/cafe-page/`);
      await ready(page);
      assert.equal(await page.evaluate(async () => (await caches.match("menu")).text()), "tea");
    } finally {
      server.copies.clear();
      server.answers.clear();
    }
    vain(troubles);
  }));

test("a server that redirects and varies is kept so that it answers offline", () =>
  visit(
    { prepare: async () => server.answers.set("/cafe-page/index.html", { status: 301, location: "./" }) },
    async (page, troubles, context) => {
      try {
        await underWorker(page);
        await context.setOffline(true);
        await page.goto(`${server.address}/cafe-page/index.html`);
        await ready(page);
        assert.equal(await page.locator("h1").textContent(), words.title);
      } finally {
        server.answers.clear();
      }
      vain(troubles);
    },
  ));

test("a new worker makes the release that it knows the files of", () =>
  visit({}, async (page) => {
    await underWorker(page);
    const old = await (await fetch(`${server.address}/cafe-page/service-worker.js`)).text();
    const catalogue = await (await fetch(`${server.address}/cafe-page/words.en.js`)).text();
    const [first] = await stores(page);
    try {
      // The new worker knows of a file more.
      server.answers.set("/cafe-page/service-worker.js", {
        body: old.replace('"src/main.js",', '"src/main.js",\n  "brew-ticket.js",'),
      });
      server.answers.set("/cafe-page/words.en.js", { body: catalogue.replace('title: "Brew', 'title: "Brewing') });
      await page.reload();
      await ready(page);
      assert.equal(await page.locator("h1").textContent(), words.title, "the old worker answers from what it has");
      await eventually(page, async () => (await caches.keys()).length === 2);
      await eventually(page, async () => {
        const [, newest] = await caches.keys();
        return (
          (await caches.match("./", { cacheName: newest })) && caches.match("brew-ticket.js", { cacheName: newest })
        );
      });
      await page.reload();
      await ready(page);
      assert.match(await page.locator("h1").textContent(), /^Brewing/);
      assert.deepEqual((await stores(page)).length, 2);
      assert.ok((await stores(page)).includes(first));
    } finally {
      server.answers.clear();
    }
  }));

test("the page can be installed", () =>
  visit({}, async (page) => {
    await ready(page);
    const manifest = await (await page.request.get(`${server.address}/cafe-page/manifest.webmanifest`)).json();
    for (const key of ["name", "short_name", "start_url", "display", "icons", "background_color", "theme_color"])
      assert.ok(manifest[key], key);
    const tools = await page.context().newCDPSession(page);
    const { errors } = await tools.send("Page.getAppManifest");
    assert.deepEqual(errors, []);
    const { installabilityErrors } = await tools.send("Page.getInstallabilityErrors");
    // A browser without a window installs nothing; anything else would be the page's fault.
    assert.deepEqual(
      installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== "in-incognito"),
      [],
    );
  }));

test("nothing but this page's own server is asked, and nothing is told", () =>
  visit({}, async (page) => {
    const asked = [];
    page.on("request", (request) => asked.push(request));
    await page.reload();
    await ready(page);
    await enter(page, "wish.cup_g", "141");
    for (const request of asked) {
      assert.ok(request.url().startsWith(server.address), request.url());
      assert.equal(request.method(), "GET");
      assert.ok(!request.url().includes("?"), request.url());
    }
  }));
