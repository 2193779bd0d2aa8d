// node index.js NODE_PACKAGES SITE PICTURES: the café's page and the element in headless Chromium.

import { after } from "node:test";

import { browser, server } from "./setting.js";

await import("./recipe.js");
await import("./brew.js");
await import("./surety.js");
await import("./learn.js");
await import("./replay.js");
await import("./mishaps.js");
await import("./everyone.js");
await import("./offline.js");
await import("./embed.js");

after(async () => {
  await browser.close();
  server.close();
});
