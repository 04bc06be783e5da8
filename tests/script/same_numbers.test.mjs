// The module gives what the command line prints, to the last bit: deepStrictEqual tells numbers apart as Object.is does.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { commandLine, coatwright } from "./the_module.mjs";
import { INVENTED, everyKind, invented, withEverything } from "./workshops.mjs";

function assertSame(workshop) {
  const folder = mkdtempSync(join(tmpdir(), "coatwright-"));
  try {
    const file = join(folder, "workshop.json");
    writeFileSync(file, JSON.stringify(workshop));
    assert.deepStrictEqual(coatwright.takeoff(workshop), commandLine(file));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

test("the invented workshop, with and without its working", () => {
  assert.deepStrictEqual(coatwright.takeoff(invented()), commandLine(INVENTED));
  const printed = commandLine(INVENTED, "--math");
  assert.deepStrictEqual(coatwright.takeoff(invented(), { working: true }), printed);
  assert.ok(printed.pieces[0].workings.length > 0);
});

test("the text of a file and the object that it holds", () => {
  assert.deepStrictEqual(coatwright.takeoff(JSON.parse(invented())), coatwright.takeoff(invented()));
});

test("a piece of every kind", () => {
  const workshop = everyKind();
  assert.equal(coatwright.takeoff(workshop).pieces.filter(({ problems }) => !problems).length, 18);
  assertSame(workshop);
});

test("own labels, prices, zones, changes, a piece that cannot be, and what was mended", () => {
  const workshop = withEverything();
  assert.ok(coatwright.takeoff(workshop).mended.length > 0);
  assertSame(workshop);
});
