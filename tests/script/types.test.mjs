// The types beside the module are those of the real objects. Real objects are written as literals with their types, and
// TypeScript complains of every entry that one has and the other has not.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { coatwright, complaints, folder } from "./the_module.mjs";
import { everyKind, invented, withEverything } from "./workshops.mjs";

const IMPORT = 'from "./coatwright/coatwright.js";\n';

function check(name, text) {
  writeFileSync(join(folder, name), text);
  return complaints(name);
}

/** A line of TypeScript: a constant of this type with this value. */
const literal = (name, type, value) => `export const ${name}: ${type} = ${JSON.stringify(value)};\n`;

/**
 * Every place of a value, and whether something stood there. Places in a list count as one, and so do terms and result of
 * a formula, which have one type.
 */
function places(value, at, found) {
  const path = at.replace(/\.result$/, ".terms[]");
  const isFilled = Array.isArray(value) ? value.length > 0 : value !== null;
  found.set(path, isFilled || (found.get(path) ?? false));
  if (Array.isArray(value)) {
    value.forEach((entry) => places(entry, `${path}[]`, found));
  } else if (value !== null && typeof value === "object") {
    Object.entries(value).forEach(([key, entry]) => places(entry, `${path}.${key}`, found));
  }
  return found;
}

/** The example in the description of the save file. */
function described() {
  const [, example] = readFileSync("crates/workshop/SAVE-FILE.md", "utf8").match(/```json\n(.*?)```/s);
  return JSON.parse(example);
}

const everything = coatwright.takeoff(withEverything(), { working: true });

test("nothing in the example is always empty, so every entry is compared", () => {
  const empty = [...places(everything, "takeoff", new Map())].filter(([, isFilled]) => !isFilled);
  assert.deepEqual(empty.map(([path]) => path), []);
});

test("what the functions give has the types that are promised", () => {
  const text = [
    `import type { Kind, Takeoff, Workshop } ${IMPORT}`,
    literal("all", "Takeoff", everything),
    literal("plain", "Takeoff", coatwright.takeoff(invented())),
    literal("kinds", "Kind[]", coatwright.kinds()),
    literal("pieces", "Workshop", everyKind()),
  ];
  assert.equal(check("given.ts", text.join("")), "");
});

test("every entry that may be left out is there in some example", () => {
  const types = readFileSync(join(folder, "coatwright/coatwright.d.ts"), "utf8");
  const mayBeLeftOut = [...types.matchAll(/(\w+)\?:/g)].map(([, name]) => name).filter((name) => name !== "options");
  const asked = { working: true, measurements: {} };
  const examples = [everything, described(), withEverything(), everyKind(), asked].map((example) => JSON.stringify(example));
  const missing = mayBeLeftOut.filter((name) => !examples.some((example) => example.includes(`"${name}":`)));
  assert.ok(mayBeLeftOut.length > 30);
  assert.deepEqual(missing, []);
});

test("save files have the type that is taken", () => {
  const text = [
    `import type { Workshop } ${IMPORT}`,
    literal("invented", "Workshop", JSON.parse(invented())),
    literal("everything", "Workshop", withEverything()),
    literal("described", "Workshop", described()),
  ];
  assert.equal(check("taken.ts", text.join("")), "");
});

test("an entry too many or too few is seen", () => {
  const result = coatwright.takeoff(coatwright.piece({ kind: "frame", units: "us" }));
  const [piece] = result.pieces;
  const altered = (zone) => ({ ...result, pieces: [{ ...piece, zones: [{ ...piece.zones[0], ...zone }] }] });
  const expected = (name, value) => `// @ts-expect-error\n${literal(name, "Takeoff", value)}`;
  const text = [
    `import type { Takeoff } ${IMPORT}`,
    literal("right", "Takeoff", altered({})),
    expected("tooMany", altered({ girthMetres: 1 })),
    expected("tooFew", altered({ netSquareMetres: undefined })),
    expected("another", altered({ netSquareMetres: "1" })),
  ];
  assert.equal(check("altered.ts", text.join("")), "");
});

test("the functions are those that are promised", () => {
  const names = Object.keys(coatwright).map((name) => [name, true]);
  const text = [
    `import * as coatwright ${IMPORT}`,
    literal("names", "Record<keyof typeof coatwright, true>", Object.fromEntries(names)),
  ];
  assert.equal(check("functions.ts", text.join("")), "");
});
