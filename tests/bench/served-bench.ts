import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { type Measured, measureLater } from "./measured";

const HOST = "127.0.0.1";
const READY_WITHIN_MS = 60_000;

/** Of each page, so that the nineteenth of twenty is a 95th percentile. */
const SERVED_TIMES = 20;

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, HOST, () => {
      const address = probe.address();
      probe.close(() =>
        address && typeof address === "object" ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}

async function waitUntilServing(address: string): Promise<void> {
  const until = performance.now() + READY_WITHIN_MS;
  while (performance.now() < until) {
    const answer = await fetch(`${address}/api/health`).catch(() => undefined);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error("the built server doesn't answer");
}

/** With what somebody of the demo logs in. */
export interface Account {
  readonly email: string;
  readonly password: string;
}

/** The cookies of a log-in at the demo. */
export async function signIn(address: string, { email, password }: Account): Promise<string> {
  const chosen = "proofband-academy=demo";
  const answer = await fetch(`${address}/api/sign-in`, {
    method: "POST",
    redirect: "manual",
    headers: { origin: address, cookie: chosen },
    body: new URLSearchParams({ email, password, to: "" }),
  });
  if (answer.status !== 303) throw new Error(`nobody could log in: ${answer.status}`);
  return [chosen, ...answer.headers.getSetCookie().map((line) => line.split(";")[0])].join("; ");
}

/** The built server over the data folder in force, as soon as it answers; null: no build is there. */
export async function serveBuilt(): Promise<{ readonly address: string; stop(): void } | null> {
  if (!existsSync(path.join(".next", "BUILD_ID"))) return null;
  const port = await freePort();
  const args = [path.join("node_modules", "next", "dist", "bin", "next"), "start", "-H", HOST, "-p", String(port)];
  const env = { ...process.env, NODE_ENV: "production" as const, PORT: String(port) };
  const server = spawn(process.execPath, args, { env, stdio: "ignore" });
  const stop = () => void server.kill("SIGTERM");
  const address = `http://${HOST}:${port}`;
  try {
    await waitUntilServing(address);
  } catch (error) {
    stop();
    throw error;
  }
  return { address, stop };
}

/** What a request takes from the built server, the whole answer read; nothing where no build is there. */
export async function servedFigures(
  pages: readonly string[],
  label: string,
  account: Account,
): Promise<readonly Measured[]> {
  const server = await serveBuilt();
  if (server === null) {
    console.error("no build is there, so no page was asked of a server; npm run build makes one");
    return [];
  }
  const { address } = server;
  try {
    const asked = { headers: { cookie: await signIn(address, account) }, redirect: "manual" } as const;
    const figures: Measured[] = [];
    for (const page of pages) {
      const first = await fetch(`${address}${page}`, asked);
      if (first.status !== 200) {
        console.error(`${page} answered ${first.status}; is the build of this state? It was left out.`);
        continue;
      }
      let bytes = 0;
      const figure = await measureLater(
        `served ${page} ${label}`,
        { times: SERVED_TIMES, unmeasured: 2 },
        () => `${Math.round(bytes / 1024)} KiB`,
        async () => {
          const answer = await fetch(`${address}${page}`, asked);
          bytes = (await answer.arrayBuffer()).byteLength;
        },
      );
      figures.push(figure);
    }
    return figures;
  } finally {
    server.stop();
  }
}
