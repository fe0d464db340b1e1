import { type Dirent, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { Dialect } from "./read-tokens";

const ROOT = path.resolve(import.meta.dirname, "../..");
const ROOMS = ["lib", "db", "app", "seed", "tests"];
const CODE = /\.(ts|tsx|mjs)$/;
/** Tools' own configuration at the root belongs to no room. */
const TOOLS = /\.config\.(ts|mjs)$|^next-env\.d\.ts$/;
/** Written by a tool, not by hand. */
const GENERATED = /^db\/migrations\//;

export interface ProjectFile {
  /** Path from the root, with forward slashes. */
  readonly name: string;
  readonly text: string;
  readonly dialect: Dialect;
}

/** Every source file and style sheet of the house, in order of its name. */
export function readProject(): ProjectFile[] {
  const names = [...ROOMS.flatMap(inside), ...readdirSync(ROOT).filter((name) => CODE.test(name) && !TOOLS.test(name))];
  return names
    .filter((name) => (CODE.test(name) || name.endsWith(".css")) && !GENERATED.test(name))
    .sort()
    .map((name) => ({
      name,
      text: readFileSync(path.join(ROOT, name), "utf8"),
      dialect: name.endsWith(".tsx") ? "markup" : "script",
    }));
}

export function isCode({ name }: ProjectFile): boolean {
  return CODE.test(name);
}

function inside(folder: string): string[] {
  let entries: Dirent[];
  try {
    entries = readdirSync(path.join(ROOT, folder), { withFileTypes: true });
  } catch {
    return [];
  }
  return entries.flatMap((entry) => {
    const name = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return entry.name.startsWith(".") || entry.name === "node_modules" ? [] : inside(name);
    return [name];
  });
}
