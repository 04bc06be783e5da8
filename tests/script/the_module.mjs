// The built module, and the programs beside it, as `cargo xtask test --only script` names them.
import { execFileSync, spawnSync } from "node:child_process";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

function named(variable) {
  const path = process.env[variable];
  if (!path) {
    throw new Error(`${variable} names nothing. Type: cargo xtask test --only script`);
  }
  return path;
}

/** The folder with the module and the examples of its README. */
export const folder = named("COATWRIGHT_SCRIPT");

/** All that the module gives. */
export const coatwright = await import(pathToFileURL(join(folder, "coatwright/coatwright.js")).href);

/** What the command line prints for a save file; it fails too when a piece cannot be measured up, and prints all the same. */
export function commandLine(file, ...options) {
  const most = 256 * 1024 * 1024;
  const words = ["takeoff", file, "--json", ...options];
  return JSON.parse(spawnSync(named("COATWRIGHT_XTASK"), words, { encoding: "utf8", maxBuffer: most }).stdout);
}

/** Checks a source for TypeScript in that folder; gives what there is to complain about. */
export function complaints(source) {
  const options = ["--strict", "--noEmit", "--target", "es2022", "--module", "esnext", "--moduleResolution", "bundler"];
  try {
    execFileSync(process.execPath, [named("COATWRIGHT_TYPESCRIPT"), ...options, source], { cwd: folder });
    return "";
  } catch (error) {
    return String(error.stdout ?? error);
  }
}
