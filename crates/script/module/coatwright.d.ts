// What the module takes and gives. The unit stands in the name of each figure. Where a text is a key or the name of a
// surface, part or zone, it is the one of the save file.

/** Every kind of furniture, with what each is asked for when it is made as usual. */
export function kinds(): Kind[];

/**
 * A workshop with one piece, measured as a maker types it. What is not measured takes a usual size, and makes the
 * amounts less sure.
 * @throws Error that says what cannot be read, where, and what to write instead.
 */
export function piece(wanted: PieceWanted): Workshop;

/**
 * Surfaces, materials and cans of every piece of a workshop.
 * @param workshop The text of a save file, or what it holds as an object.
 * @throws Error that says why the workshop is not read: it is none, it is damaged, or a newer version wrote it.
 */
export function takeoff(workshop: string | Workshop, options?: TakeoffOptions): Takeoff;

/** A kind of furniture. */
export interface Kind {
  /** Its name for `piece` and in save files. */
  key: string;
  /** What a maker calls it. */
  label: string;
  /** What is measured of it, in the order in which one takes it. */
  measurements: Measurement[];
  /** The choices that say how it is made. Another answer may ask for other measurements. */
  styles: Style[];
  /** What is counted of it. */
  counts: Count[];
}

/** A length that is measured. */
export interface Measurement {
  key: string;
  label: string;
  /** Where to hold the tape. */
  hint: string;
  /** The size that stands in for it when it is not measured, metres. */
  usualMetres: number;
  /** The smallest value that makes sense, metres. */
  leastMetres: number;
  /** The largest value that makes sense, metres. */
  mostMetres: number;
}

/** A choice that says how a piece is made. */
export interface Style {
  key: string;
  label: string;
  /** The key of the usual answer. */
  usual: string;
  answers: Answer[];
}

/** An answer to a choice. */
export interface Answer {
  key: string;
  label: string;
}

/** Something that is counted. */
export interface Count {
  key: string;
  label: string;
  /** The number that stands in for it when nobody counted. */
  usual: number;
  least: number;
  most: number;
}

/** A piece as a maker describes it. */
export interface PieceWanted {
  /** The key of a kind. */
  kind: string;
  /** What a bare number is: inches (`us`) or millimetres (`metric`). Which cans there are hangs on it too. */
  units: Units;
  /** Lengths as the tape says them, `33 7/8`, `2' 9 7/8"`, `85.1 cm`, by the key of the measurement. */
  measurements?: Record<string, string>;
  /** The key of an answer, by the key of the choice. */
  styles?: Record<string, string>;
  /** By the key of what is counted. */
  counts?: Record<string, number>;
  /** What the maker calls it. */
  name?: string;
  /** How many are alike, 1 to 99; 1 if it is not there. */
  count?: number;
}

/** What a maker reads and writes: inches, feet, quarts and gallons, or metres and litres. */
export type Units = "us" | "metric";

export interface TakeoffOptions {
  /** Whether the working of each amount is wanted: formula, terms and sources. */
  working?: boolean;
}

/** The takeoff of a workshop. */
export interface Takeoff {
  title: string;
  /** The currency of all prices (ISO 4217), if the maker named one. */
  currency: string | null;
  /** How sure a can must be before it is called enough, in hundredths. */
  confidencePercent: number;
  /** One for each piece of the workshop, in its order. */
  pieces: Piece[];
  /** What all pieces together take of each material, less what is on the shelf. */
  together: Together[];
  /** What in the workshop could not be kept as it was, in sentences; empty if all could. */
  mended: string[];
}

/** A piece that was measured up, or why it cannot be: `if (piece.problems)` tells the two apart. */
export type Piece = MeasuredPiece | PieceWithProblems;

/** A piece of which measurements are out of their limits or do not fit beside each other. */
export interface PieceWithProblems {
  id: string;
  name: string;
  count: number;
  /** What does not fit and what to do, in sentences. */
  problems: string[];
}

/** The takeoff of a piece, or of a set that is alike. */
export interface MeasuredPiece {
  /** Its name in the workshop; never shown to anyone. */
  id: string;
  name: string;
  /** How many there are. Surfaces, zones and edges are those of one, amounts those of all. */
  count: number;
  problems?: undefined;
  /** The painted area of one, square metres. */
  paintedEachSquareMetres: number;
  /** The painted area of all, square metres. */
  paintedSquareMetres: number;
  /** Its standard uncertainty, square metres. */
  paintedStandardUncertaintySquareMetres: number;
  surfaces: Surface[];
  zones: Zone[];
  /** How it is finished. */
  scheme: Scheme;
  edgesEach: Edges;
  /** Parts that run into each other: the areas of both are too large. */
  overlaps: Overlap[];
  /** What was entered and does not count, or not wholly, in sentences: rows that are stretched to fit, holes and choices
   * for surfaces that are not there. Empty if all counts. */
  notices: string[];
  materials: Material[];
  /** The same finish done with other tools. */
  ways: Way[];
  /** How each amount comes about; only if it was asked for. */
  workings?: MaterialWorking[];
}

/** A face of a part: gross, less what is deducted, is net. */
export interface Surface {
  /** Its name, which stays when the piece is measured again. */
  name: string;
  part: string;
  partLabel: string;
  /** What it is called within the part. */
  label: string;
  /** The developed area before deductions, square metres. */
  grossSquareMetres: number;
  /** The sum of the deductions, square metres. */
  deductedSquareMetres: number;
  deductions: Deduction[];
  /** Developed girth over flat height; the gross area holds it already. */
  profileMultiplier: number;
  /** What is left to paint, square metres. Noise below a tenth of a square millimetre is dropped. */
  netSquareMetres: number;
  netByOrientation: ByOrientation;
  /** Whether it can be finished at all. */
  takesFinish: boolean;
  /** The key of its zone. */
  zone: string;
  /** Whether it gets the finish. */
  painted: boolean;
  /** Whether its zone gets it, whatever the maker chose for the surface alone. */
  paintedWithZone: boolean;
}

/** What lies against a surface, or the hole in it. */
export interface Deduction {
  by: string;
  byLabel: string;
  squareMetres: number;
}

/** Areas by how they lie, square metres. */
export interface ByOrientation {
  /** Looks up, within 45 degrees. */
  upSquareMetres: number;
  uprightSquareMetres: number;
  /** Looks down, within 45 degrees. */
  downSquareMetres: number;
}

/** Surfaces that are finished alike. */
export interface Zone {
  zone: string;
  label: string;
  /** Whether it gets the finish. */
  painted: boolean;
  /** Of its painted surfaces, square metres. */
  grossSquareMetres: number;
  /** Of its painted surfaces, square metres. */
  deductedSquareMetres: number;
  /** Of its painted surfaces, square metres. */
  netSquareMetres: number;
  /** The same by how they lie. */
  netByOrientation: ByOrientation;
  /** The net area of its surfaces that are left as they are, square metres. */
  leftSquareMetres: number;
  /** How it is finished, if that is not how the piece is. */
  ownScheme: Scheme | null;
}

/** The lengths of painted edges of one piece, metres. */
export interface Edges {
  /** Outer edges, that are sanded round. */
  arrisesMetres: number;
  /** Inner corners, that are cleaned out. */
  cornersMetres: number;
  /** Borders, that are cut in or masked. */
  bordersMetres: number;
}

/** Two parts that run into each other. */
export interface Overlap {
  parts: [string, string];
  labels: [string, string];
  depthMetres: number;
}

/** What the whole set needs of one material in one colour. */
export interface Material {
  /** Its name among those of the piece. */
  id: string;
  /** What it does: the key of its stage. */
  stage: string;
  /** Its key. */
  material: string;
  name: string;
  /** `#rrggbb`, of what comes in colours. */
  colour: string | null;
  tools: string[];
  /** The most coats on any zone. */
  coats: number;
  /** How many weighed jobs of the maker's own it rests on; none is the label or the usual film. */
  weighedJobs: number;
  /** Nineteen times in twenty more is needed, litres. */
  lowLitres: number;
  /** As likely more as less, litres. */
  likelyLitres: number;
  /** Nineteen times in twenty this is enough, litres. */
  highLitres: number;
  /** The mean by the linear law, litres. */
  bestEstimateLitres: number;
  /** Its standard uncertainty, litres. */
  standardUncertaintyLitres: number;
  /** What makes it unsure, the largest cause first. */
  unsureBy: Cause[];
  /** Where it goes: onto the piece, and what is lost. */
  goes: Place[];
  byZone: ZoneVolume[];
  /** What the shelf has of it, and whether that is enough; `null` if it has none. */
  onHand: OnHand | null;
  /** Which cans to buy besides. */
  toBuy: ToBuy;
}

/** A cause of doubt. */
export interface Cause {
  cause: string;
  /** Its share of the variance, 0 to 1. */
  share: number;
  standardUncertaintyLitres: number;
}

export interface Place {
  place: string;
  litres: number;
}

export interface ZoneVolume {
  /** The key of the zone. */
  zone: string;
  litres: number;
}

/** A can on the shelf. */
export interface Stock {
  /** The key of its size; `null` if that is not known. */
  can: string | null;
  /** What it holds when it is full, litres. */
  canLitres: number | null;
  /** The key of how full it looks; `null` for a full one. */
  level: string | null;
  /** Whether it was weighed: its level does not count then. */
  isWeighed: boolean;
  /** What is likely in it, litres. */
  likelyLitres: number | null;
}

/** The cans on hand and what they are good for. */
export interface OnHand {
  cans: Stock[];
  verdict: Verdict;
  /** The probability that they are enough, 0 to 1. */
  probabilityEnough: number;
  /** What is likely left over, litres. */
  leftLitres: number;
  /** What is likely lacking, litres. */
  lackingLitres: number;
  /** What has to be had besides to be as sure as is wanted, litres. */
  besidesLitres: number;
  /** For how many coats they are surely enough. */
  mostCoats: number;
  /** The keys of the zones for which they are surely enough. */
  enoughForZones: string[];
}

export type Verdict = "enough" | "tight" | "short";

/** Which cans to buy, or why that cannot be said: `"problem" in toBuy` tells the two apart. */
export type ToBuy = CansToBuy | { problem: string };

export interface CansToBuy {
  /** The volume that is surely enough, litres. */
  needLitres: number;
  /** The cheapest set where prices are known, else the fewest cans; empty if nothing need be bought. */
  cans: Cans[];
  /** What they cost in hundredths of the currency; `null` where no price is known. */
  priceHundredths: number | null;
  /** What is likely left over then, of the cans and of what is in hand, litres. */
  leftLitres: number;
  /** What is at least left over then, as surely as is wanted, litres. */
  leftAtLeastLitres: number;
  /** Whether no better set can be. */
  proven: boolean;
}

export interface Cans {
  /** The key of the size. */
  can: string;
  /** What one holds, litres. */
  canLitres: number;
  count: number;
}

/** What all pieces together take of one material in one colour. */
export interface Together {
  material: string;
  name: string;
  /** `#rrggbb`, of what comes in colours. */
  colour: string | null;
  /** The names of the pieces, each with its zones where it does not go on all of them. */
  pieces: string[];
  likelyLitres: number;
  toBuy: ToBuy;
}

/** The whole finish done in one way. */
export interface Way {
  way: string;
  label: string;
  materials: WayMaterial[];
  /** What never stays on the piece. */
  lost: Place[];
  /** With the tool in hand, cleaning included. */
  minutes: number;
  minutesStandardUncertainty: number;
  /** What its coats look like, and what can go wrong. */
  remarks: string[];
  /** Whether the maker has the tool. */
  atHand: boolean;
}

/** What one material takes when it is done in one way. */
export interface WayMaterial {
  /** The name of the material in the takeoff of the piece. */
  id: string;
  likelyLitres: number;
  /** With the tool in hand, edges and cleaning included. */
  minutes: number;
  minutesStandardUncertainty: number;
  /** On the cans on hand; `null` if there are none. */
  verdict: Verdict | null;
  toBuy: ToBuy;
  /** The dry film of the zone that takes the most, metres; `null` if it builds none. */
  dryFilmMetres: number | null;
  dryFilmStandardUncertaintyMetres: number | null;
  /** The coats that reach the film of the way that leaves the thickest. */
  coatsForEqualFilm: number;
  likelyAtEqualFilmLitres: number;
}

/** How the amount of one material comes about. */
export interface MaterialWorking {
  /** The name of the material in the takeoff of the piece. */
  id: string;
  layers: LayerWorking[];
  /** What each place in the tools keeps. */
  kept: Quantity[];
  /** The sum of both at the best estimates, litres. */
  sumLitres: number;
}

export interface LayerWorking {
  zone: string;
  /** Its place in the scheme, from 0. */
  layer: number;
  /** Whether it is that of the narrow parts. */
  narrow: boolean;
  litres: Formula;
  /** `null` for what builds no film. */
  dryFilm: Formula | null;
}

export interface Formula {
  /** With `+ - * / ( )` and the symbols of the terms. */
  formula: string;
  terms: Quantity[];
  result: Quantity;
}

export interface Quantity {
  symbol: string;
  meaning: string;
  value: number;
  standardUncertainty: number;
  /** The sign of the unit; empty for a plain number. */
  unit: string;
  /** Where it comes from; `null` for what was worked out, measured or planned. */
  source: string | null;
  /** How sure that is. */
  certainty: string | null;
}

/**
 * A workshop as a save file holds it; the format is described with the tool. What may be left out takes a usual value,
 * and what is not known here is kept by the tool.
 */
export interface Workshop {
  kind: "coatwright-workshop";
  /** The format. A newer one than the module knows is refused. */
  version: number;
  title?: string;
  note?: string;
  units?: Units;
  /** How sure a can must be, in hundredths: 80, 90, 95 or 99. */
  confidence?: number;
  inches?: "fractions" | "decimals";
  currency?: string;
  /** How a new piece is finished. */
  finish?: Scheme;
  /** Materials of the maker's own. */
  materials?: OwnMaterial[];
  books?: Books;
  pieces: SavedPiece[];
}

/** A piece as a save file holds it. */
export interface SavedPiece {
  id: string;
  name?: string;
  count?: number;
  /** The key of its kind. */
  furniture: string;
  /** The last number that an entry was given as its `id`. */
  ids?: number;
  /** Which usual sizes, styles, rows and coats stand in for what is left out; 1 if it is not there. */
  edition?: number;
  /** The results that its maker last saw or was told about; 1 if it is not there. */
  shown?: number;
  readings?: Record<string, Reading>;
  styles?: Record<string, string>;
  counts?: Record<string, number>;
  /** How the front is divided, from the left. */
  bays?: Bay[];
  /** The same for the upper case of a hutch. */
  upper?: Bay[];
  /** What the maker altered; see the description of the save file. */
  changes?: Record<string, unknown>[];
  zones?: Record<string, { name?: string; painted?: boolean; scheme?: Scheme }>;
  /** What differs from the default, by the name of a surface. */
  surfaces?: Record<string, { zone?: string; painted?: boolean }>;
  scheme?: Scheme;
  books?: Books;
}

/** A length as it was written, and the unit of a bare number. */
export interface Reading {
  typed: string;
  unit: "in" | "ft" | "mm" | "cm" | "m";
  /** In meters, where the text alone could mean another length. */
  value?: number;
}

export interface Bay {
  /** Which one it is among the entries of the piece; given by the tool. */
  id?: number;
  /** Its clear width, if it was measured. */
  width?: Reading;
  rows: Row[];
}

export interface Row {
  /** Which one it is among the entries of the piece; given by the tool. */
  id?: number;
  fill?: "drawers" | "doors" | "open";
  columns: number;
  shelves?: number;
  /** Of the fronts or of the opening, if it was measured. */
  height?: Reading;
}

/** How a piece or a zone is finished. */
export interface Scheme {
  /** `#rrggbb` */
  colour?: string;
  /** What the first coat goes onto. */
  ground?: "sealed" | "painted" | "glossy" | "laminate" | "bare" | "porous";
  /** The key of the wood, if it is known. */
  wood?: string;
  signs?: ("old-red-stain" | "knots" | "odour" | "wax" | "bare-spots")[];
  /** What the volumes are worked out from: the film of the tool, or the rate on the label. */
  basis?: "wet-film" | "label-rate";
  /** What goes on, in order. */
  layers?: Layer[];
}

/** Coats of one material. */
export interface Layer {
  /** Which one it is among the entries of the piece; given by the tool. */
  id?: number;
  /** The key of a material, or the `id` of one of the maker's own. */
  material: string;
  /** None is not now. */
  coats: number;
  /** The key of the tool. */
  tool: string;
  /** The key of the tool for narrow parts, if it is another. */
  narrow?: string;
  /** Thinner for a sprayer, in hundredths of the volume. */
  thinned?: number;
}

/** A copy of a known material with its own label and prices. */
export interface OwnMaterial {
  id: string;
  /** The key of the known material. */
  of: string;
  name?: string;
  label?: Record<string, { typed: string; unit: string; value?: number | [number, number] }>;
  /** What a can costs, as typed, by the key of the can. */
  prices?: Record<string, string>;
  /** Hundredths of those prices whose text alone could mean another one. */
  values?: Record<string, number>;
}

/** What a maker writes down in lines: texts by the key of their field; `values` has the numbers of those that could mean another. */
export type Books = Record<string, ({ id: string } & Record<string, string | Record<string, number>>)[]>;
