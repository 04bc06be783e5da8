// Workshops for the tests.
import { readFileSync } from "node:fs";
import { coatwright } from "./the_module.mjs";

/** The file that comes with the page. */
export const INVENTED = "www/invented-workshop.json";

export const invented = () => readFileSync(INVENTED, "utf8");

/** One usual piece of each kind. */
export function everyKind() {
  const workshops = coatwright.kinds().map(({ key }) => coatwright.piece({ kind: key, units: "metric", name: key }));
  const pieces = workshops.map(({ pieces: [piece] }, place) => ({ ...piece, id: `p${place}` }));
  return { ...workshops[0], pieces };
}

/** A workshop that has everything that a takeoff can tell: nothing in its answer is empty. */
export function withEverything() {
  const workshop = JSON.parse(invented());
  const [dresser, nightstands] = workshop.pieces;
  const paint = dresser.scheme.layers.find(({ material }) => material === "trim-enamel");
  const own = { id: "own-1", of: "trim-enamel", name: "Left-over blue", prices: { "us-quart": "24.50", "us-pint": "13", "us-gallon": "1,250" },
    values: { "us-gallon": 125000 } };
  Object.assign(paint, { material: own.id });
  workshop.books.shelf.push({ id: "can-1", of: dresser.id, material: own.id, can: "us-pint", level: "half" });
  dresser.zones = { top: { scheme: { ...dresser.scheme, colour: "#2c4a7a" } } };
  // A surface that the dresser does not have.
  dresser.surfaces = { ...dresser.surfaces, "leg-9/front": { painted: false } };
  dresser.books = { facts: [{ id: "only", bought: "20" }] };
  const [clean] = coatwright.piece({ kind: "bench", units: "us" }).pieces;
  const within = { change: "add", number: 1, shape: "board", placed: true };
  const bench = { ...clean, id: "b", count: 1000, changes: [within] };
  const [frame] = coatwright.piece({ kind: "frame", units: "us", measurements: { width: "1 in" } }).pieces;
  return { ...workshop, currency: "USD", materials: [own], pieces: [dresser, nightstands, bench, { ...frame, id: "f" }] };
}
