// node webpack.js NODE_PACKAGES PROJECT: builds a project into its folder `webpack`. Prints nothing but errors
// and warnings.

import { copyFileSync, mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";

const [packages, project] = process.argv.slice(2).map((path) => resolve(path));
const webpack = createRequire(join(packages, "package.json"))("webpack");

const output = { path: join(project, "webpack"), filename: "main.js" };
// The page asks for main.js, which is the bundle where it is copied to.
mkdirSync(output.path);
copyFileSync(join(project, "index.html"), join(output.path, "index.html"));
// The whole library in one bundle is more than webpack's 244 KiB, of which the README tells; how much more is a limit here.
const most = 750 * 1024;
const performance = { maxAssetSize: most, maxEntrypointSize: most };
webpack({ mode: "production", context: project, entry: "./main.js", output, performance }, (error, stats) => {
  if (error) throw error;
  process.stdout.write(stats.toString({ all: false, errors: true, warnings: true }));
  process.exitCode = stats.hasErrors() ? 1 : 0;
});
