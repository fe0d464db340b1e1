import { rmSync } from "node:fs";

// A folder of its own each time, so that no run rests on what an earlier one left.
rmSync(process.env.PROOFBAND_DATA, { recursive: true, force: true });
await import("../../app/_commands/start.mjs");
