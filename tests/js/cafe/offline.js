// Without a network: everything after the first visit.

import assert from "node:assert/strict";
import { test } from "node:test";

import { button, enter, said, ready, recipeOf, server, shown, visit, words } from "./setting.js";

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
    // Chromium reports the worker's own vain question for a newer file.
    const expected = (text) => /ERR_INTERNET_DISCONNECTED|^failed: /.test(text);
    troubles.splice(0, troubles.length, ...troubles.filter((text) => !expected(text)));
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
