// What cannot be read is thrown as an Error that says what is wrong, where, and what to do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { coatwright } from "./the_module.mjs";
import { invented } from "./workshops.mjs";

function refused(what) {
  try {
    what();
  } catch (error) {
    assert.ok(error instanceof Error, `${error} is no Error`);
    return error.message;
  }
  assert.fail("nothing was thrown");
}

test("a file of a newer version", () => {
  const newer = { ...JSON.parse(invented()), version: 4 };
  const message = /The file has format 4; this page reads up to 3\.$/;
  assert.match(refused(() => coatwright.takeoff(newer)), message);
  assert.match(refused(() => coatwright.takeoff(JSON.stringify(newer))), message);
});

test("what is no workshop", () => {
  const damaged = refused(() => coatwright.takeoff('{"kind":\n  oops}'));
  assert.match(damaged, /\(line 2, character 3\)\.$/);
  assert.match(refused(() => coatwright.takeoff({ kind: "list" })), /^Choose a file saved from Coatwright\./);
  const circle = {};
  circle.circle = circle;
  for (const nothing of [undefined, circle, () => 1]) {
    assert.match(refused(() => coatwright.takeoff(nothing)), /^takeoff takes a workshop:/);
  }
});

test("options that are not known", () => {
  const message = refused(() => coatwright.takeoff(invented(), { workings: true }));
  assert.match(message, /does not know “workings”\. It takes: working\.$/);
  assert.ok(coatwright.takeoff(invented(), null).pieces.length > 0);
});

test("a text that is no length", () => {
  const typed = (text) => () => coatwright.piece({ kind: "dresser", units: "us", measurements: { height: text } });
  assert.equal(
    refused(typed("33 7/")),
    "Height “33 7/” can't be read. Use a number, like 33 7/8 or 85.1 cm.",
  );
  assert.match(refused(typed("6O")), /^Height “6O” can't be read\. “O” is not a unit of length\./);
  assert.match(refused(typed(33.875)), /^Height: use a string/);
});

test("names that are not known, and those that are", () => {
  const { piece } = coatwright;
  assert.match(refused(() => piece()), /^piece takes an object with: kind, units,/);
  assert.match(refused(() => piece({ kind: "sofa", units: "us" })), /“sofa”\. Use one of: dresser, chest-of-drawers,/);
  assert.match(refused(() => piece({ kind: "dresser" })), /Use us for inches or metric for millimeters\.$/);
  const slip = { kind: "frame", units: "us", measurements: { widht: "1" } };
  assert.match(refused(() => piece(slip)), /has no measurement “widht”\. It has: width, height, member-width,/);
  assert.match(refused(() => piece({ ...slip, measurments: {} })), /^piece does not know “measurments”\. It takes: kind,/);
});

test("what was mended in a file is told, and the rest is worked out", () => {
  const workshop = coatwright.piece({ kind: "frame", units: "us", name: "Frame" });
  const [frame] = workshop.pieces;
  frame.readings.width = { typed: "6O", unit: "in" };
  frame.readings.girth = { typed: "3", unit: "in" };
  const { mended, pieces } = coatwright.takeoff(workshop);
  assert.equal(mended.length, 2);
  assert.equal(mended[0], "Frame: skipped the unknown measurement “girth”.");
  assert.match(mended[1], /^Frame: skipped the width “6O”\. “O”/);
  assert.ok(pieces[0].paintedEachSquareMetres > 0);
});

test("a piece that cannot be says why and does not hide the others", () => {
  const workshop = coatwright.piece({ kind: "frame", units: "metric", measurements: { width: "9000" } });
  const [good] = coatwright.piece({ kind: "bench", units: "metric" }).pieces;
  const { pieces } = coatwright.takeoff({ ...workshop, pieces: [...workshop.pieces, { ...good, id: "p2" }] });
  assert.deepEqual(pieces[0].problems, ["Width is 9000 mm. The maximum is 3000 mm. Check the unit."]);
  assert.equal(pieces[1].problems, undefined);
});
