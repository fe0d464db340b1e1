import { createServer } from "node:net";
import path from "node:path";
import { binary, ensureBuilt, ensureInstalled, ROOT, requireNode } from "./ensure.mjs";
import { runChild, stopAndLeave, stopWithParent } from "./run-child.mjs";
import { Refusal, refuse, say } from "./say.mjs";

const HOST = "127.0.0.1";
const READY_WITHIN_MS = 60_000;

function requirePort() {
  const port = Number(process.env.PORT || 3000);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) throw refuse("start.portWrong", { port: process.env.PORT });
  return port;
}

function requireFreePort(port) {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", (error) => {
      const key = error.code === "EADDRINUSE" ? "start.portInUse" : "start.portRefused";
      reject(refuse(key, { port, other: port < 65_000 ? port + 1 : 3000 }));
    });
    probe.listen(port, HOST, () => probe.close(() => resolve()));
  });
}

async function waitUntilServing(address) {
  const until = Date.now() + READY_WITHIN_MS;
  while (Date.now() < until) {
    const answer = await fetch(`${address}/api/health`).catch(() => undefined);
    if (answer?.ok) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}

async function start() {
  requireNode();
  const port = requirePort();
  await requireFreePort(port);
  await ensureInstalled();
  await ensureBuilt();
  const data = path.resolve(ROOT, process.env.PROOFBAND_DATA || "data");
  const env = { ...process.env, NODE_ENV: "production", PORT: String(port), PROOFBAND_DATA: data };
  const prepare = ["--import", "tsx", path.join("app", "_commands", "prepare.ts")];
  const prepared = await runChild(process.execPath, prepare, { cwd: ROOT, env });
  if (prepared !== 0) throw refuse("start.notPrepared");
  const serve = [binary("next"), "start", "-H", HOST, "-p", String(port)];
  const served = runChild(process.execPath, serve, { cwd: ROOT, env });
  const address = `http://${HOST}:${port}`;
  const first = await Promise.race([served, waitUntilServing(address)]);
  if (first === false) throw refuse("start.notServing");
  if (first === true) console.log(say("start.serving", { address, data }));
  process.exitCode = await served;
  console.error(say("start.ended"));
}

stopWithParent();
try {
  await start();
} catch (error) {
  if (error instanceof Refusal) console.error(`\n${error.message}`);
  else if (error.code === "ENOSPC") console.error(`\n${say("ensure.diskFull", { folder: ROOT })}`);
  else console.error(error);
  stopAndLeave("SIGTERM", 1);
}
