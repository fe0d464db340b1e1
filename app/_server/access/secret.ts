import { randomBytes } from "node:crypto";
import { linkSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { dataFolder, ensurePrivateFolder } from "../database";

/** Twice the 128 bits that can't be guessed. */
const SECRET_BYTES = 32;

const KEY = Symbol.for("proofband.secret");
const shared = globalThis as { [KEY]?: { readonly folder: string; readonly secret: string } };

// A secret that a pulled plug cut short could be guessed; another one would quietly end every second step.
function requireWhole(secret: string): string {
  if (Buffer.from(secret, "base64url").length < SECRET_BYTES)
    throw new Error(`the secret of the data folder is cut short: ${secret.length} characters`);
  return secret;
}

function readOrMake(folder: string): string {
  const file = path.join(folder, "secret");
  try {
    return requireWhole(readFileSync(file, "utf8").trim());
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
  }
  ensurePrivateFolder(folder);
  // Written aside and then named: two processes that start at once must not end with two secrets.
  const aside = path.join(folder, `.secret-${process.pid}`);
  writeFileSync(aside, `${randomBytes(SECRET_BYTES).toString("base64url")}\n`, { mode: 0o600, flush: true });
  try {
    linkSync(aside, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  } finally {
    rmSync(aside, { force: true });
  }
  return requireWhole(readFileSync(file, "utf8").trim());
}

/** What signs this installation's cookies: random, made once, kept in the data folder for its owner's eyes alone. */
export function installationSecret(): string {
  const folder = dataFolder();
  if (shared[KEY]?.folder !== folder) shared[KEY] = { folder, secret: readOrMake(folder) };
  return shared[KEY].secret;
}
