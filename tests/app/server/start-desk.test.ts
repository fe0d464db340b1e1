import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { receiveStart, startState } from "@/app/_server/access/start-desk";
import { closeDatabases, findAcademyDatabase } from "@/app/_server/database";
import { admitAs, admitMachine } from "@/app/_server/gate";
import { startOwnAcademy } from "@/app/_server/settings/own-academy";
import { readPeople } from "@/db/read/people";
import { readStudents } from "@/db/read/students";
import { insertStudent } from "@/db/write/students";

const PASSWORD = "a bucket of range balls";
const WHOLE = { name: "Range", zone: "UTC", ownerName: "Kim", email: "Kim@Range.example", password: PASSWORD };
const HERE = "127.0.0.1:3000";

function sent(fields: Readonly<Record<string, string>>, host = HERE): Request {
  const body = new URLSearchParams(fields);
  return new Request(`http://${HERE}/api/start`, { method: "POST", headers: { host }, body });
}

async function people() {
  const found = await findAcademyDatabase("own");
  return found ? readPeople(found.db, found.academyId) : [];
}

let folder = "";
const kept = process.env.PORT;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "proofband-"));
  process.env.PROOFBAND_DATA = folder;
  process.env.PORT = "3000";
});
afterEach(() => {
  delete process.env.PROOFBAND_ORIGIN;
  if (kept === undefined) delete process.env.PORT;
  else process.env.PORT = kept;
  closeDatabases();
  rmSync(folder, { recursive: true, force: true });
});

describe("the start of an academy", () => {
  it("makes it with its first account, once", async () => {
    const made = await receiveStart(sent(WHOLE));
    expect([made.status, made.headers.get("location")]).toEqual([303, "/sign-in?new=account"]);
    expect(made.headers.get("set-cookie")).toMatch(/^proofband-academy=own;.*HttpOnly; SameSite=Lax/);
    expect(await people()).toMatchObject([
      { name: "Kim", email: "kim@range.example", roles: ["owner", "director", "coach"], endedAt: null },
    ]);
    const again = await receiveStart(sent({ ...WHOLE, ownerName: "Mallory", email: "m@x.example" }));
    expect([again.status, again.headers.get("location")]).toEqual([303, "/sign-in"]);
    expect(await people()).toHaveLength(1);
  });

  it("says what is wrong with the form as typed, without the password, and begins nothing", async () => {
    for (const [wrong, words] of [
      [{ email: "kim" }, "This is no e-mail address."],
      [{ password: "larchtree" }, "Too short."],
      [{ password: "password1234567" }, "Many people use this one"],
      [{ zone: "Mars/Base" }, "This is no time zone."],
      [{ ownerName: "" }, "Fill this in."],
    ] as const) {
      const answer = await receiveStart(sent({ ...WHOLE, ...wrong }));
      const page = await answer.text();
      expect([answer.status, page.includes(words)]).toEqual([422, true]);
      expect(page).toContain('value="Range"');
      expect(page).not.toContain("password" in wrong ? wrong.password : PASSWORD);
      expect((await startState()).state).toBe("start");
    }
  });

  it("is refused from elsewhere, and to everybody once a public address is stated", async () => {
    expect((await receiveStart(sent(WHOLE, "films.example"))).status).toBe(403);
    // A proxy may call this server by this machine's own name.
    process.env.PROOFBAND_ORIGIN = "https://films.example";
    expect((await receiveStart(sent(WHOLE))).status).toBe(403);
    expect((await startState()).state).toBe("start");
  });

  it("gives an academy from before there were accounts to its first person, with every student in it", async () => {
    await startOwnAcademy({ name: "Old", ownerName: "Kim", zone: "UTC", locale: "en" });
    const machine = await admitMachine({ choice: "own", locale: null });
    if (!machine) throw new Error("no academy");
    const student = { id: "s1", alias: "Dot", birthYear: 2014, hand: "right", zone: "UTC", clubs: "" } as const;
    insertStudent(machine.db, machine.scope, student, null, { now: "2026-11-01T08:00:00.000Z", newId: () => "c1" });
    expect(await startState()).toEqual({ state: "claim", ownerName: "Kim" });
    const { ownerName, email, password } = WHOLE;
    expect((await receiveStart(sent({ ownerName, email, password }))).status).toBe(303);
    const [kim] = await people();
    const viewer = await admitAs("own", kim?.userId ?? "");
    expect(viewer && readStudents(viewer.db, viewer.scope).map(({ alias }) => alias)).toEqual(["Dot"]);
    expect((await startState()).state).toBe("there");
  });
});
