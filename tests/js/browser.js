// Pages of a folder in headless Chromium, served on this computer.

import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

/** As strict as the package allows. */
export const POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'";

/**
 * A server of a folder's files: its address, what it was asked for, a `policy` to send while it is set, `answers` of
 * { status, body, delay_ms, location } to give to paths in place of the files, and `copies` of folders: where a path
 * that begins so is to be looked for.
 */
export async function serve(served) {
  const folder = resolve(served);
  const asked = { requests: [], policy: null, answers: new Map(), copies: new Map() };
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, "http://localhost").pathname));
    const [copy, original] = [...asked.copies].find(([start]) => path.startsWith(start)) ?? ["", ""];
    const found = `${original}${path.slice(copy.length)}`;
    const file = join(folder, found.endsWith("/") ? `${found}index.html` : found);
    asked.requests.push(path);
    const { status = 200, body = null, delay_ms = 0, location } = asked.answers.get(path) ?? {};
    if (delay_ms > 0) await new Promise((later) => setTimeout(later, delay_ms));
    if (status !== 200) {
      response.writeHead(status, location && { location }).end(body);
      return;
    }
    if (!file.startsWith(folder) || !existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    const type = TYPES[extname(file)] ?? "application/octet-stream";
    response.writeHead(200, {
      "content-type": type,
      ...(asked.policy && { "content-security-policy": asked.policy }),
    });
    if (body === null) createReadStream(file).pipe(response);
    else response.end(body);
  });
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  const address = `http://127.0.0.1:${server.address().port}`;
  return Object.assign(asked, { address, close: () => server.close() });
}

/** The browser. */
export async function launch(packages) {
  const playwright = join(resolve(packages), "node_modules/playwright-core/index.mjs");
  const { chromium } = await import(pathToFileURL(playwright).href);
  return chromium.launch({
    executablePath: "/usr/bin/chromium",
    headless: true,
    args: ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-sync"],
  });
}

/**
 * Hands over what opens a page of the folder under a content security policy: it waits until the page has put
 * its findings into `window.findings`, and gives them with every error and warning that the page met.
 */
export async function inChromium(packages, folder, use) {
  const server = await serve(folder);
  const browser = await launch(packages);

  async function open(page, under = POLICY) {
    server.policy = under;
    const tab = await browser.newPage();
    const errors = [];
    tab.on("pageerror", (error) => errors.push(String(error)));
    tab.on("console", (line) => {
      if (["error", "warning"].includes(line.type())) errors.push(line.text());
    });
    // A page that fails at once would be waited for in vain.
    const failed = new Promise((_, fail) => tab.once("pageerror", fail));
    try {
      await tab.goto(`${server.address}/${page}`);
      const found = tab.waitForFunction(() => window.findings !== undefined, null, { timeout: 120_000 });
      await Promise.race([found, failed]);
      const findings = await tab.evaluate(() => window.findings);
      const agent = await tab.evaluate(() => navigator.userAgent.match(/Chrome\/\d+/)[0]);
      return { findings, errors, agent };
    } catch (error) {
      throw new Error(`${page}: ${[error, ...errors].join("\n")}`);
    } finally {
      await tab.close();
    }
  }

  try {
    await use(open);
  } finally {
    await browser.close();
    server.close();
  }
}
