// node chromium.js NODE_PACKAGES FOLDER PAGE: serves a folder on this computer, opens a page of it in headless
// Chromium, and waits until the page has put its findings into `window.findings`.

import { createReadStream, existsSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, normalize, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".wasm": "application/wasm",
};

/** As strict as the package allows. */
const POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'";

const [packages, folder, page] = process.argv.slice(2).map((path, at) => (at < 2 ? resolve(path) : path));
const { chromium } = await import(pathToFileURL(join(packages, "node_modules/playwright-core/index.mjs")).href);

const server = createServer((request, response) => {
  const path = join(folder, normalize(decodeURIComponent(new URL(request.url, "http://localhost").pathname)));
  if (!path.startsWith(folder) || !existsSync(path) || !statSync(path).isFile()) {
    response.writeHead(404).end();
    return;
  }
  const type = TYPES[extname(path)] ?? "application/octet-stream";
  response.writeHead(200, { "content-type": type, "content-security-policy": POLICY });
  createReadStream(path).pipe(response);
});
await new Promise((ready) => server.listen(0, "127.0.0.1", ready));

const profile = mkdtempSync(join(tmpdir(), "chromium-"));
const browser = await chromium.launchPersistentContext(profile, {
  executablePath: "/usr/bin/chromium",
  headless: true,
  args: ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-sync"],
});
try {
  const tab = await browser.newPage();
  const errors = [];
  tab.on("pageerror", (error) => errors.push(String(error)));
  await tab.goto(`http://127.0.0.1:${server.address().port}/${page}`);
  await tab.waitForFunction(() => window.findings !== undefined, null, { timeout: 120_000 });
  const { count, functions, wrong } = await tab.evaluate(() => window.findings);
  for (const words of [...errors, ...wrong]) console.error(words);
  const agent = await tab.evaluate(() => navigator.userAgent);
  console.log(`${agent.match(/Chrome\/\d+/)}: ${count} cases of ${functions} functions, ${wrong.length} wrong`);
  process.exitCode = wrong.length + errors.length === 0 && count > 0 ? 0 : 1;
} finally {
  await browser.close();
  server.close();
  rmSync(profile, { recursive: true, force: true });
}
