// The examples of the README do what it says.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { complaints, folder } from "./the_module.mjs";

test("the example for Node prints what stands below it", () => {
  const printed = execFileSync(process.execPath, ["bench.mjs"], { cwd: folder, encoding: "utf8" });
  assert.equal(printed, readFileSync(join(folder, "bench.txt"), "utf8"));
});

test("the short example in the README of the tool prints an area", () => {
  const [, example] = readFileSync("README.md", "utf8").match(/```js\n(.*?)```/s);
  writeFileSync(join(folder, "short.mjs"), example);
  const printed = execFileSync(process.execPath, ["short.mjs"], { cwd: folder, encoding: "utf8" });
  assert.match(printed, /^1\.\d+\n$/);
});

test("the example for TypeScript is understood", () => {
  assert.equal(complaints("bench.ts"), "");
});
