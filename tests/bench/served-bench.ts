import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { type Measured, measureLater } from "./measured";

const HOST = "127.0.0.1";
const READY_WITHIN_MS = 60_000;

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

/** What a request takes from the built server, the whole answer read; nothing where no build is there. */
export async function servedFigures(pages: readonly string[], readings: number): Promise<readonly Measured[]> {
  if (!existsSync(path.join(".next", "BUILD_ID"))) {
    console.error("no build is there, so no page was asked of a server; npm run build makes one");
    return [];
  }
  const port = await freePort();
  const args = [path.join("node_modules", "next", "dist", "bin", "next"), "start", "-H", HOST, "-p", String(port)];
  const env = { ...process.env, NODE_ENV: "production" as const, PORT: String(port) };
  const server = spawn(process.execPath, args, { env, stdio: "ignore" });
  try {
    const address = `http://${HOST}:${port}`;
    await waitUntilServing(address);
    const figures: Measured[] = [];
    for (const page of pages) {
      const first = await fetch(`${address}${page}`);
      if (first.status !== 200) {
        console.error(`${page} answered ${first.status}; is the build of this state? It was left out.`);
        continue;
      }
      let bytes = 0;
      const figure = await measureLater(
        `served ${page} at ${readings} readings`,
        { times: 9, unmeasured: 2 },
        () => `${Math.round(bytes / 1024)} KiB`,
        async () => {
          const answer = await fetch(`${address}${page}`);
          bytes = (await answer.arrayBuffer()).byteLength;
        },
      );
      figures.push(figure);
    }
    return figures;
  } finally {
    server.kill("SIGTERM");
  }
}
