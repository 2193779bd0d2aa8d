// node readme.js NODE_PACKAGES FOLDER: what the package's README shows, done as it stands there by somebody who reads
// nothing else: its calls must print what stands in their remarks, its page must show its number. What runs in
// Node.js runs there; what asks for a file beside it, in a page.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

import { inChromium } from "../browser.js";

const [packages, folder] = process.argv.slice(2).map((path) => resolve(path));
const installed = join(folder, "node/node_modules/cupwright");
const readme = readFileSync(join(installed, "README.md"), "utf8");
const snippets = [...readme.matchAll(/^```(.*)\n([^]*?)^```\n\n?(.*)/gm)].map(([, language, code, after]) => {
  if (language === "html") return { language, code, promised: [/^It shows (.*)\.$/.exec(after)?.[1]] };
  assert.equal(language, "js", `no way to run this:\n${code}`);
  const printing = [...code.matchAll(/console\.log\(.*/g)];
  return { language, code, promised: printing.map(([line]) => /\); \/\/ (.*)$/.exec(line)?.[1]) };
});
assert.equal(snippets.length, readme.match(/^```/gm).length / 2);
assert.ok(snippets.length > 0);

cpSync(installed, join(folder, "page/cupwright"), { recursive: true });
cpSync(join(installed, "cupwright.wasm"), join(folder, "page/cupwright.wasm"));

/** A page with the package's names for those who have no bundler. */
const page = (body) => `<!doctype html><html lang="en"><meta charset="utf-8"><title>README</title>
  <link rel="icon" href="data:,">
  <script type="importmap">{ "imports": { "cupwright/slim": "./cupwright/src/slim.js" } }</script>
  <body>${body}`;

let count = 0;
await inChromium(packages, folder, async (open) => {
  /** What a page puts into its findings. */
  async function found(body) {
    writeFileSync(join(folder, "page/readme.html"), page(body));
    const { findings, errors } = await open("page/readme.html", null);
    assert.deepEqual(errors, []);
    return findings;
  }

  /** What a snippet prints or shows, line by line. */
  async function done(language, code) {
    if (language === "html") {
      const text = await found(`${code}<script type="module">window.findings = document.body.innerText;</script>`);
      return text.trim().split("\n");
    }
    if (code.includes("import.meta.url")) {
      writeFileSync(
        join(folder, "page/readme.js"),
        `const lines = [];\nconsole.log = (...words) => lines.push(words.join(" "));\n${code}\nwindow.findings = lines;`,
      );
      return found(`<script type="module" src="readme.js"></script>`);
    }
    writeFileSync(join(folder, "node/readme.js"), code);
    const printed = execFileSync("node", ["readme.js"], { cwd: join(folder, "node"), encoding: "utf8" });
    return printed.trimEnd().split("\n");
  }

  for (const { language, code, promised } of snippets) {
    assert.ok(promised.length > 0 && !promised.includes(undefined), `what comes of this is not said:\n${code}`);
    assert.deepEqual(await done(language, code), promised);
    count += promised.length;
  }
});
console.log(`${snippets.length} snippets, ${count} lines printed or shown as the README says`);
