import { spawn } from "node:child_process";
import { once } from "node:events";
import path from "node:path";
import { expect, it } from "vitest";
import { closeDatabases } from "@/app/_server/database";
import { addSession } from "@/app/_server/session/session-desk";
import { openDatabase } from "@/db/client";
import { startAcademy } from "../app/server/own-academy-data";
import { startChild } from "./child";
import { formOf, sessionFields, viewerOfAri } from "./own-academy";
import { findBytes } from "./search-bytes";

// D7, second half, of an erasure: the command beside a server waits while the server writes, and succeeds.

const WRITING_MS = 3000;

async function erase(folder: string, ...args: string[]): Promise<string> {
  const script = ["--import", "tsx", path.join("app", "_commands", "erase.ts"), ...args];
  const command = spawn(process.execPath, script, {
    env: { ...process.env, PROOFBAND_DATA: folder },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  for (const stream of [command.stdout, command.stderr])
    stream.on("data", (part) => {
      said += String(part);
    });
  const [status] = await once(command, "close");
  return `${status} ${said}`;
}

it("D7: an erasure by command says first what goes, then waits for a writing server, and is whole", async () => {
  const { folder, remove } = await startAcademy();
  const ari = await viewerOfAri();
  await addSession(ari, formOf(sessionFields("2026-09-01")));
  const { studentId } = ari.student;
  closeDatabases();
  const server = startChild("serving-process.ts", [String(WRITING_MS)], { PROOFBAND_DATA: folder });
  try {
    await server.saying("serving");
    expect(await erase(folder)).toMatch(/^2 Not understood/);
    expect(await erase(folder, "--alias", "Bo", "--reason", "asked", "--yes")).toMatch(/^2 There is no student Bo/);
    expect(await erase(folder, "--alias", "Ari", "--reason", "asked")).toMatch(
      /^0 Of Ari this goes:[\s\S]*Readings: 4/,
    );
    expect(findBytes(folder, [studentId]).length).toBeGreaterThan(0);
    server.process.kill("SIGUSR2");
    await server.saying("writing");
    expect(await erase(folder, "--student", studentId, "--reason", "asked", "--yes")).toMatch(
      /^0 [\s\S]*Erased: 1 session/,
    );
    expect(server.lines).toContain("written");
    const db = openDatabase(path.join(folder, "academy", "proofband.db"), "read");
    expect(db.sqlite.prepare("SELECT count(*) FROM student").pluck().get()).toBe(0);
    expect(db.sqlite.prepare("SELECT who FROM erasure").pluck().get()).toBe("this machine");
    db.close();
    expect(findBytes(folder, [studentId])).toEqual([]);
    console.log("D7: one erasure beside a writing server");
  } finally {
    server.process.kill("SIGKILL");
    await server.ended;
    remove();
  }
}, 120_000);
