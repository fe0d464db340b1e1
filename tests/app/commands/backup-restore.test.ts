import { spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { closeDatabases, databaseFile } from "@/app/_server/database";
import { startOwnAcademy } from "@/app/_server/settings/own-academy";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { builtScript } from "../../built-script";

let folder = "";
let copy = "";

function run(command: string, data: string, ...args: string[]) {
  const entry = [builtScript(`app/_commands/${command}.ts`), ...args];
  const env = { ...process.env, PROOFBAND_DATA: data };
  const { status, stdout, stderr } = spawnSync(process.execPath, entry, { env, encoding: "utf8" });
  return { status, said: stdout + stderr };
}

async function digestOf(data: string) {
  process.env.PROOFBAND_DATA = data;
  const db = openDatabase(databaseFile("own"), "read");
  const digests = await digestTables(db);
  db.close();
  return digests;
}

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "proofband-"));
  copy = path.join(folder, "copies", "monday.db");
  process.env.PROOFBAND_DATA = path.join(folder, "data");
  await startOwnAcademy({ name: "Hilltop", ownerName: "Kim", zone: "Europe/Berlin", locale: "en" });
  closeDatabases();
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe("a copy and the way back", () => {
  it("restores every row into an empty folder, and refuses over data unless told to replace them", async () => {
    const data = path.join(folder, "data");
    const other = path.join(folder, "other");
    expect(run("backup", data, copy)).toMatchObject({ status: 0 });
    expect(run("restore", other, copy)).toMatchObject({ status: 0 });
    expect(await digestOf(other)).toEqual(await digestOf(data));
    expect(run("restore", other, copy).said).toContain("There are data in");
    const replaced = run("restore", other, "--replace", copy);
    expect(replaced.status).toBe(0);
    const left = readdirSync(path.join(other, "academy")).filter((name) => name.includes(".replaced-"));
    expect(left.length).toBe(1);
    expect(statSync(databaseFile("own")).mode & 0o777).toBe(0o600);
  });

  it("refuses a copy in which one bit changed, and one without its digests, and touches nothing", () => {
    const data = path.join(folder, "data");
    const other = path.join(folder, "other");
    run("backup", data, copy);
    const bytes = readFileSync(copy);
    const place = bytes.indexOf("Hilltop");
    expect(place).toBeGreaterThan(0);
    bytes.writeUInt8(bytes.readUInt8(place) ^ 1, place);
    chmodSync(copy, 0o600);
    writeFileSync(copy, bytes);
    const changed = run("restore", other, copy);
    expect(changed.status).toBe(1);
    expect(changed.said).toContain("the file was changed after it was made");
    rmSync(`${copy}.digests.json`);
    expect(run("restore", other, copy).said).toContain("digests are missing");
    expect(readdirSync(folder).includes("other")).toBe(false);
  });

  it("never writes over a file, and says how it is called", () => {
    const data = path.join(folder, "data");
    run("backup", data, copy);
    expect(run("backup", data, copy).said).toContain("There is a file already");
    expect(run("backup", data).said).toContain("npm run backup -- FILE");
    expect(run("backup", path.join(folder, "none"), copy.replace("monday", "tuesday")).said).toContain(
      "no own academy",
    );
  });

  it("the doctor finds nothing on sound data, and names what others can open, and what is damaged", () => {
    const data = path.join(folder, "data");
    expect(run("doctor", data)).toMatchObject({ status: 0 });
    chmodSync(data, 0o755);
    const open = run("doctor", data);
    expect(open.status).toBe(1);
    expect(open.said).toContain("chmod 700");
    chmodSync(data, 0o700);
    const bytes = readFileSync(databaseFile("own"));
    writeFileSync(databaseFile("own"), bytes.fill(0, 8192, 12_288));
    const damaged = run("doctor", data);
    expect(damaged.status).toBe(1);
    expect(damaged.said).toContain("own: ");
    expect(damaged.said).toContain("npm run restore");
  });
});
