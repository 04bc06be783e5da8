// Draws the PNG icons of www/icons from www/icon.svg. Run it after a change of the drawing, and commit what it made:
//   node www/draw-icons.mjs [path of a Chromium]
// It needs Node 20.15 or newer.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { crc32, deflateSync } from "node:zlib";

const GROUND = "#efebe2";
// A mask may cut off all but the middle circle, four fifths of the width (W3C Web Application Manifest, "Icon masks");
// at 11/16 the drawer lies within it. These shares put every edge of the drawing between two pixels.
const ICONS = [
  { name: "icon-192", size: 192, ground: "none", share: 1 },
  { name: "icon-512", size: 512, ground: "none", share: 1 },
  { name: "maskable-512", size: 512, ground: GROUND, share: 11 / 16 },
  { name: "icon-180", size: 180, ground: GROUND, share: 4 / 5 },
];

const here = import.meta.dirname;
const drawing = readFileSync(join(here, "icon.svg"), "utf8").replace(/<\/?svg[^>]*>/g, "");

function svg({ size, ground, share }) {
  const edge = 32 * (1 - share);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64" width="${size}" height="${size}">
    <path fill="${ground}" d="M0 0h64v64H0z"/><g transform="translate(${edge} ${edge}) scale(${share})">${drawing}</g></svg>`;
}

// The browser draws; what it drew comes back as the text of the page, four bytes for each pixel.
function pixels() {
  const pictures = ICONS.map((icon) => [icon.size, `data:image/svg+xml,${encodeURIComponent(svg(icon))}`]);
  const page = `<pre></pre><script type="module">
    const lines = [];
    for (const [size, address] of ${JSON.stringify(pictures)}) {
      const image = new Image();
      await new Promise((loaded) => Object.assign(image, { onload: loaded, src: address }));
      const context = new OffscreenCanvas(size, size).getContext("2d");
      context.drawImage(image, 0, 0);
      lines.push(new Uint8Array(context.getImageData(0, 0, size, size).data.buffer).toHex());
    }
    document.querySelector("pre").textContent = lines.join("\\n");
  </script>`;
  const folder = mkdtempSync(join(tmpdir(), "icons-"));
  const file = join(folder, "page.html");
  writeFileSync(file, page);
  const flags = ["--headless", "--no-sandbox", "--disable-gpu", `--user-data-dir=${folder}`, "--virtual-time-budget=9000"];
  const dom = execFileSync(process.argv[2] ?? "chromium", [...flags, "--dump-dom", `file://${file}`], {
    encoding: "utf8",
    maxBuffer: 1 << 26,
    stdio: ["ignore", "pipe", "ignore"],
  });
  rmSync(folder, { recursive: true });
  return dom.match(/<pre>([^<]+)</)[1].split("\n").map((line) => Buffer.from(line, "hex"));
}

function chunk(name, data) {
  const body = Buffer.concat([Buffer.from(name), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

// A PNG of few colours: two bits for each pixel if four are enough, or else four.
function png(size, pixels) {
  const colours = [];
  const places = [];
  for (let at = 0; at < pixels.length; at += 4) {
    const colour = pixels.readUInt32BE(at);
    if (!colours.includes(colour)) colours.push(colour);
    places.push(colours.indexOf(colour));
  }
  if (colours.length > 16) throw new Error(`${colours.length} colours: an edge does not lie between two pixels`);
  const bits = colours.length > 4 ? 4 : 2;
  const rows = [];
  for (let row = 0; row < size; row += 1) {
    rows.push(0);
    for (let column = 0; column < size; column += 8 / bits) {
      const few = places.slice(row * size + column, row * size + column + 8 / bits);
      rows.push(few.reduce((byte, place) => (byte << bits) | place, 0));
    }
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([bits, 3, 0, 0, 0], 8);
  const paints = colours.flatMap((colour) => [colour >>> 24, (colour >>> 16) & 255, (colour >>> 8) & 255]);
  const opacity = colours.map((colour) => colour & 255);
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    chunk("IHDR", head),
    chunk("PLTE", Buffer.from(paints)),
    ...(opacity.some((part) => part < 255) ? [chunk("tRNS", Buffer.from(opacity))] : []),
    chunk("IDAT", deflateSync(Buffer.from(rows), { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

const drawn = pixels();
ICONS.forEach(({ name, size }, place) => {
  const data = png(size, drawn[place]);
  writeFileSync(join(here, "icons", `${name}.png`), data);
  console.log(`${name}.png ${data.length} bytes`);
});
