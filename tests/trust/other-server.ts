import { type ChildProcess, spawn } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { openDatabase } from "@/db/client";
import { served } from "../e2e/served";
import { type Answer, sendOver } from "./raw-request";

/** A production server of its own beside that of the tests, whose log can be read. */
export interface OtherServer {
  readonly port: number;
  readonly data: string;
  /** All that it has written out. */
  log(): string;
  /** Sends exactly these headers; `body` as it stands. */
  send(method: string, address: string, headers?: Record<string, string>, body?: string | Buffer): Promise<Answer>;
  /** Ends it; its data go with it unless they are to be kept. */
  stop(data?: "keep"): Promise<void>;
}

const READY_WITHIN_MS = 60_000;

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const { port } = probe.address() as { readonly port: number };
      probe.close(() => resolve(port));
    });
  });
}

/** An empty data folder. */
export function newDataFolder(): string {
  return mkdtempSync(path.join(tmpdir(), "proofband-other-"));
}

/** A data folder with the demo as it stands in the tests’ own server, with its log-ins: the secret that signs them comes along. */
export async function copyOfDemo(): Promise<string> {
  const data = newDataFolder();
  mkdirSync(path.join(data, "demo"), { mode: 0o700 });
  copyFileSync(path.join(served.data, "secret"), path.join(data, "secret"));
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"), "read");
  try {
    await db.sqlite.backup(path.join(data, "demo", "proofband.db"));
  } finally {
    db.close();
  }
  // Of a size of its own, whatever uploads have come and gone.
  const copy = openDatabase(path.join(data, "demo", "proofband.db"));
  copy.sqlite.exec("VACUUM");
  copy.close();
  return data;
}

function sendTo(port: number): OtherServer["send"] {
  return (method, path, headers = {}, body = "") =>
    sendOver(port, { method, path, headers: { Host: `127.0.0.1:${port}`, ...headers }, body });
}

async function untilServing(send: OtherServer["send"], child: ChildProcess, log: () => string): Promise<void> {
  const until = Date.now() + READY_WITHIN_MS;
  while (Date.now() < until) {
    const answer = await send("GET", "/api/health").catch(() => undefined);
    if (answer?.status === 200) return;
    if (child.exitCode !== null) throw new Error(`the server ended: ${log()}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the server does not answer: ${log()}`);
}

/**
 * Starts the build on a data folder. It is ended by its own process group, and its folder goes with it.
 *
 * @param origin the public address that is stated; empty: none
 * @param shell what the shell does before, `umask 000` say
 */
export async function startOther(data: string, { origin = "", shell = ":" } = {}): Promise<OtherServer> {
  const port = await freePort();
  const next = path.join(served.root, "node_modules", "next", "dist", "bin", "next");
  const command = `${shell}; exec "$0" "$1" start -H 127.0.0.1 -p ${port}`;
  const env = { ...process.env, NODE_ENV: "production" as const, PORT: String(port), PROOFBAND_DATA: data };
  const child = spawn("sh", ["-c", command, process.execPath, next], {
    cwd: served.root,
    env: { ...env, PROOFBAND_ORIGIN: origin },
    stdio: ["ignore", "pipe", "pipe"],
    detached: true,
  });
  let written = "";
  for (const stream of [child.stdout, child.stderr])
    stream?.on("data", (chunk: Buffer) => {
      written += chunk.toString("utf8");
    });
  const log = () => written;
  const send = sendTo(port);
  const ended = new Promise<void>((resolve) => child.once("close", () => resolve()));
  const stop = async (after?: "keep"): Promise<void> => {
    if (child.pid !== undefined && child.exitCode === null) process.kill(-child.pid, "SIGTERM");
    await ended;
    if (after !== "keep") rmSync(data, { recursive: true, force: true });
  };
  try {
    await untilServing(send, child, log);
  } catch (error) {
    await stop();
    throw error;
  }
  return { port, data, log, send, stop };
}
