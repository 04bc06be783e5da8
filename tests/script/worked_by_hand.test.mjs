// Areas that are worked out by hand from the measurements: no formula of the module stands here.
import assert from "node:assert/strict";
import { test } from "node:test";
import { coatwright } from "./the_module.mjs";

function near(given, wanted, what) {
  assert.ok(Math.abs(given - wanted) < 1e-9, `${what} is ${given} and not ${wanted}`);
}

/** A box of 1 m by 0.5 m by 0.52 m, of boards 20 mm thick, whose lid lies flush on it. */
function box() {
  const measurements = { width: "1 m", depth: "50 cm", height: "520", board: "20", "top-thickness": "20" };
  const flush = { "overhang-front": "0", "overhang-side": "0" };
  const wanted = { kind: "blanket-box", units: "metric", styles: { base: "floor" } };
  return coatwright.takeoff(coatwright.piece({ ...wanted, measurements: { ...measurements, ...flush } })).pieces[0];
}

test("a plain box: lid, front and two ends, as the maker sees them", () => {
  const piece = box();
  near(piece.paintedEachSquareMetres, 1 * 0.5 + 1 * 0.52 + 2 * (0.5 * 0.52), "the painted area");
  const [top, body] = ["top", "body"].map((key) => piece.zones.find(({ zone }) => zone === key));
  near(top.netSquareMetres, 1 * 0.5 + 0.02 * (1 + 2 * 0.5), "the lid");
  near(body.netSquareMetres, 0.5 * (1 + 2 * 0.5), "the walls");
});

test("a plain box: what lies on the walls is taken off the lid", () => {
  const underside = box().surfaces.find(({ name }) => name === "lid/bottom");
  const rim = 1 * 0.5 - 0.96 * 0.46;
  near(underside.grossSquareMetres, rim, "the rim");
  near(underside.deductedSquareMetres, rim, "what lies against it");
  assert.equal(underside.netSquareMetres, 0);
});

test("a square picture frame: face, outer and inner edges", () => {
  const measurements = { width: "600", height: "900", "member-width": "50", "member-thickness": "20" };
  const wanted = { kind: "frame", units: "metric", styles: { "frame-profile": "square" }, measurements };
  const [frame] = coatwright.takeoff(coatwright.piece(wanted)).pieces;
  const face = 0.6 * 0.9 - 0.5 * 0.8;
  const edges = 0.02 * 2 * (0.6 + 0.9) + 0.02 * 2 * (0.5 + 0.8);
  near(frame.paintedEachSquareMetres, face + edges, "the painted area");
});

test("two are twice one, and an inch is 25.4 mm", () => {
  const of = (units, width, count) => {
    const measurements = { width, height: "1 m", "member-width": "2 in", "member-thickness": "20 mm" };
    return coatwright.takeoff(coatwright.piece({ kind: "frame", units, count, measurements })).pieces[0];
  };
  const [one, two] = [of("us", "33 7/8", 1), of("metric", "860.425", 2)];
  near(two.paintedEachSquareMetres, one.paintedEachSquareMetres, "one of them");
  near(two.paintedSquareMetres, 2 * one.paintedEachSquareMetres, "both");
});

test("a can that is full is enough, one that is nearly empty is not", () => {
  const answer = (can, level) => {
    const workshop = coatwright.piece({ kind: "nightstand", units: "us" });
    const [{ id }] = workshop.pieces;
    workshop.books = { shelf: [{ id: "can-1", of: id, material: "trim-enamel", can, ...level }] };
    return coatwright.takeoff(workshop).pieces[0].materials.find(({ material }) => material === "trim-enamel");
  };
  const full = answer("us-gallon", {});
  assert.equal(full.onHand.verdict, "enough");
  near(full.onHand.cans[0].canLitres, 3.785411784, "a gallon");
  assert.deepEqual(full.toBuy.cans, []);
  const empty = answer("us-8-fl-oz", { level: "nearly-empty" });
  assert.equal(empty.onHand.verdict, "short");
  assert.ok(empty.onHand.probabilityEnough < 0.01 && empty.toBuy.cans.length > 0);
  assert.ok(empty.lowLitres < empty.likelyLitres && empty.likelyLitres < empty.highLitres);
});
