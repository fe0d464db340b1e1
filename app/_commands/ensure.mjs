import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, statfsSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { runChild } from "./run-child.mjs";
import { refuse, say } from "./say.mjs";
import { withLock } from "./with-lock.mjs";

export const ROOT = path.resolve(import.meta.dirname, "..", "..");
const INSTALL_STAMP = path.join(ROOT, "node_modules", ".stamp");
const BUILD_STAMP = path.join(ROOT, ".next", ".stamp");
const BUILT_FROM = [
  "app",
  "lib",
  "db",
  "public",
  "proxy.ts",
  "instrumentation.ts",
  "next.config.mjs",
  "tsconfig.json",
  "package.json",
  "package-lock.json",
];
const NOT_BUILT = new Set([path.join(ROOT, "app", "_commands")]);
const INSTALL_NEEDS_BYTES = 1.2e9;
const BUILD_NEEDS_BYTES = 2e8;

process.env.NEXT_TELEMETRY_DISABLED = "1";

export function requireNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major !== 20 || minor < 19) throw refuse("ensure.node", { version: process.versions.node });
}

function filesUnder(entry) {
  if (NOT_BUILT.has(entry) || !existsSync(entry)) return [];
  if (statSync(entry).isFile()) return [entry];
  return readdirSync(entry)
    .sort()
    .flatMap((name) => filesUnder(path.join(entry, name)));
}

function digest(files) {
  const hash = createHash("sha256").update(`${process.version} ${process.platform} ${process.arch}`);
  for (const file of files) hash.update(`\0${path.relative(ROOT, file)}\0`).update(readFileSync(file));
  return hash.digest("hex");
}

function isStamped(stamp, wanted) {
  return existsSync(stamp) && readFileSync(stamp, "utf8") === wanted;
}

function requireSpace(bytes) {
  const { bavail, bsize } = statfsSync(ROOT);
  const free = bavail * bsize;
  if (free < bytes) {
    throw refuse("ensure.space", { need: Math.ceil(bytes / 1e6), free: Math.floor(free / 1e6), folder: ROOT });
  }
}

// Some tools leave a full disk as a mere failure, so what they print is read for it.
async function runOrRefuse(command, args, key, env) {
  let said = "";
  const status = await runChild(command, args, {
    cwd: ROOT,
    env,
    onOutput: (text) => {
      said = (said + text).slice(-20_000);
    },
  });
  if (status === 0) return;
  throw /ENOSPC|no space left/i.test(said) ? refuse("ensure.diskFull", { folder: ROOT }) : refuse(key, { status });
}

function installEnvironment() {
  const { NODE_ENV: _ignored, ...env } = process.env;
  return env;
}

// Two that install or build at once would take each other's files away.
function inTurn(work) {
  return withLock(path.join(ROOT, ".tmp", "ensuring"), work, () => console.log(say("ensure.waiting")));
}

export async function ensureInstalled() {
  const wanted = digest([path.join(ROOT, "package-lock.json")]);
  if (!isStamped(INSTALL_STAMP, wanted)) await inTurn(() => install(wanted));
}

async function install(wanted) {
  // Whoever was waited for may have done it.
  if (isStamped(INSTALL_STAMP, wanted)) return;
  console.log(say("ensure.installing"));
  requireSpace(INSTALL_NEEDS_BYTES);
  await runOrRefuse("npm", ["ci", "--include=dev"], "ensure.installFailed", installEnvironment());
  writeFileSync(INSTALL_STAMP, wanted);
}

export async function ensureBuilt() {
  const wanted = digest(BUILT_FROM.flatMap((name) => filesUnder(path.join(ROOT, name))));
  if (!isStamped(BUILD_STAMP, wanted)) await inTurn(() => build(wanted));
}

async function build(wanted) {
  if (isStamped(BUILD_STAMP, wanted)) return;
  console.log(say("ensure.building"));
  requireSpace(BUILD_NEEDS_BYTES);
  const env = { ...installEnvironment(), CI: "true" };
  await runOrRefuse(process.execPath, [binary("next"), "build"], "ensure.buildFailed", env);
  mkdirSync(path.dirname(BUILD_STAMP), { recursive: true });
  writeFileSync(BUILD_STAMP, wanted);
}

export function findChromium() {
  const folders = (process.env.PATH ?? "").split(path.delimiter);
  return folders.map((folder) => path.join(folder, "chromium")).find((file) => existsSync(file));
}

export async function ensureChromium() {
  if (findChromium()) return;
  if (process.getuid?.() !== 0) throw refuse("ensure.chromiumNeedsRoot");
  console.log(say("ensure.chromium"));
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  await runOrRefuse("apt-get", ["update", "-q"], "ensure.chromiumFailed", env);
  const packages = ["chromium", "fonts-liberation"];
  const args = ["install", "-q", "-y", "--no-install-recommends", ...packages];
  await runOrRefuse("apt-get", args, "ensure.chromiumFailed", env);
}

const ENTRIES = {
  next: "next/dist/bin/next",
  biome: "@biomejs/biome/bin/biome",
  tsc: "typescript/bin/tsc",
  vitest: "vitest/vitest.mjs",
  playwright: "playwright/cli.js",
};

// By file, not by name: the folder of commands isn't on the path when node is called directly.
export function binary(name) {
  return path.join(ROOT, "node_modules", ENTRIES[name]);
}
