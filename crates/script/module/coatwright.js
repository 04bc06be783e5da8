// The module for scripts. It loads itself: from the disk where it lies on one, as under Node, and by fetch on a page.
import start, { kinds, piece, takeoff } from "./glue.js";

const wasm = new URL("glue_bg.wasm", import.meta.url);
const isOnDisk = wasm.protocol === "file:";
await start({ module_or_path: isOnDisk ? (await import("node:fs/promises")).readFile(wasm) : wasm });

export { kinds, piece, takeoff };
