import { spawn } from "node:child_process";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { closeDatabases } from "@/app/_server/database";
import { openDatabase } from "@/db/client";
import { startAcademy } from "../app/server/own-academy-data";
import { builtScript } from "../built-script";
import { startChild } from "./child";
import { viewerOfAri } from "./own-academy";

// D7, second half: a command beside a server waits while the server writes, and succeeds.

/** Longer than a command takes to reach the data, shorter than it waits for them. */
const WRITING_MS = 3500;

it("D7: an import by command, begun while the server writes, waits and is whole", async () => {
  const { folder, remove } = await startAcademy();
  await viewerOfAri();
  closeDatabases();
  const server = startChild("serving-process.ts", [String(WRITING_MS)], { PROOFBAND_DATA: folder });
  try {
    await server.saying("serving");
    const file = path.join(folder, "ari.csv");
    const rows = Array.from(
      { length: 40 },
      (_, at) =>
        `Ari,2026-05-${String(1 + (at % 20)).padStart(2, "0")},7-iron,${1 + Math.floor(at / 20)},hinge,${60 + (at % 7)},deg`,
    );
    writeFileSync(file, ["student,date,club,swing,fundamental,value,unit", ...rows].join("\n"));
    server.process.kill("SIGUSR2");
    await server.saying("writing");
    const command = spawn(process.execPath, [builtScript("app/_commands/import.ts"), file, "--confirm"], {
      env: { ...process.env, PROOFBAND_DATA: folder },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let said = "";
    for (const stream of [command.stdout, command.stderr])
      stream.on("data", (part) => {
        said += String(part);
      });
    const [status] = await once(command, "close");
    expect(`${status} ${said}`).toMatch(/^0 /);
    expect(server.lines).toContain("written");
    const db = openDatabase(path.join(folder, "academy", "proofband.db"), "read");
    expect(db.sqlite.prepare("SELECT count(*) FROM reading").pluck().get()).toBe(40);
    db.close();
    console.log("D7: one command beside a writing server");
  } finally {
    server.process.kill("SIGKILL");
    await server.ended;
    remove();
  }
}, 90_000);
