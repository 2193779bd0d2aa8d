// node readme.js NODE_PACKAGES FOLDER: what the package's README shows, done as it stands there by somebody who reads
// nothing else: its calls in Node.js must print what stands in their remarks, its page must show its number.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

import { inChromium } from "../browser.js";

const [packages, folder] = process.argv.slice(2).map((path) => resolve(path));
const installed = join(folder, "node/node_modules/cupwright");
const readme = readFileSync(join(installed, "README.md"), "utf8");
const blocks = (language) =>
  [...readme.matchAll(new RegExp(`^\`\`\`${language}\n(.*?)^\`\`\``, "gms"))].map(([, text]) => text);

let count = 0;
for (const code of blocks("js")) {
  const promised = [...code.matchAll(/console\.log\(.*\); \/\/ (.*)$/gm)].map(([, text]) => text);
  if (promised.length === 0) continue;
  writeFileSync(join(folder, "node/readme.js"), code);
  const printed = execFileSync("node", ["readme.js"], { cwd: join(folder, "node"), encoding: "utf8" });
  assert.deepEqual(printed.trimEnd().split("\n"), promised);
  count += promised.length;
}
assert.ok(count > 2, `${count} printed lines in the README`);

const [snippet] = blocks("html");
const [, shown] = /^It shows (.*)\.$/m.exec(readme);
cpSync(installed, join(folder, "page/cupwright"), { recursive: true });
writeFileSync(
  join(folder, "page/readme.html"),
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>README</title><link rel="icon" href="data:,"><body>${snippet}
  <script type="module">window.findings = document.body.textContent;</script>`,
);
await inChromium(packages, folder, async (open) => {
  const { findings, errors } = await open("page/readme.html", null);
  assert.deepEqual(errors, []);
  assert.ok(findings.endsWith(shown), findings);
});
console.log(`${count} lines printed as the README says, and its page shows its number`);
