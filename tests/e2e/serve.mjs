import { cpSync, rmSync } from "node:fs";
import path from "node:path";
import { ensureBuilt, ROOT } from "../../app/_commands/ensure.mjs";
import { runChild, stopAndLeave, stopWithParent } from "../../app/_commands/run-child.mjs";

// Serves the demo at every port of PORTS. It is filled and judged once, in folders of this run alone, and copied.

const FOLDER = path.join(ROOT, ".tmp", "e2e-data");
const MADE = path.join(FOLDER, "made");
const ports = process.env.PORTS.split(",");

function run(args, env) {
  return runChild(process.execPath, args, { cwd: ROOT, env: { ...process.env, NODE_ENV: "production", ...env } });
}

async function serve(port, place) {
  const data = path.join(FOLDER, String(place));
  cpSync(MADE, data, { recursive: true });
  // Where one server ends there is nothing left to test.
  run([path.join("app", "_commands", "start.mjs")], { PORT: port, PROOFBAND_DATA: data }).then(giveUp);
  const address = `http://127.0.0.1:${port}/api/health`;
  while (!(await fetch(address).catch(() => undefined))?.ok) await new Promise((resolve) => setTimeout(resolve, 100));
}

function giveUp() {
  stopAndLeave("SIGTERM", 1);
}

stopWithParent();
await ensureBuilt();
rmSync(FOLDER, { recursive: true, force: true });
const prepare = ["--import", "tsx", path.join("app", "_commands", "prepare.ts")];
if ((await run(prepare, { PROOFBAND_DATA: MADE })) !== 0) giveUp();
else {
  // The tests wait for the last alone: all the others answer when it is started.
  await Promise.all(ports.slice(0, -1).map(serve));
  await serve(ports.at(-1), ports.length - 1);
}
