import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { admitToStudent, type Viewer } from "@/app/_server/gate";
import { loadListedTracks } from "@/app/_server/roster/listing";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadRosterCsv } from "@/app/_server/roster/load-roster-csv";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { forgetRosterView, keepRosterView } from "@/app/_server/roster/view-desk";
import { readPreference } from "@/db/read/preferences";
import { updateDeparted } from "@/db/write/students";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { addTo } from "./inviting";
import { enterFilm, filmDays } from "./reread-season";

let academy: HandingAcademy;
let tove = "";

beforeEach(async () => {
  academy = await startHandingAcademy();
  tove = addTo(academy.ada, "Tóve");
  film(academy.nia, "one", 0);
  film(tove, "two", 7);
  await loadRules(academy.ada);
});
afterEach(() => academy.remove());

function film(studentId: string, id: string, at: number): void {
  const { ada } = academy;
  const scope = admitToStudent(ada, studentId);
  if (!scope) throw new Error("nobody");
  const day = filmDays(ada)[at] ?? "";
  enterFilm(ada, scope, { id, day, reference: null, now: `${day}T18:00:00.000Z` }, [81, 82, 83]);
}

type Words = Readonly<Record<string, string | undefined>>;

const aliases = async (viewer: Viewer, words: Words) =>
  (await loadRoster(viewer, words)).evidence.rows.map(({ alias }) => alias);

const csvOf = async (viewer: Viewer, words: Words) =>
  (await loadRosterCsv(viewer, words)).text
    .trimEnd()
    .split("\r\n")
    .slice(1)
    .map((line) => line.split(",")[0]);

describe("what a roster's address asks for", () => {
  it("is searched without marks, filtered, sorted and had as a file of exactly those rows", async () => {
    const { ada } = academy;
    expect(await aliases(ada, { q: "TOVE" })).toEqual(["Tóve"]);
    expect(await aliases(ada, { coach: academy.ownerId })).toEqual(["Tóve"]);
    expect(await aliases(ada, { coach: "nobody" })).toEqual([]);
    ada.db.sqlite.prepare("DELETE FROM charge WHERE student_id = ?").run(tove);
    expect(await aliases(ada, { coach: "nobody" })).toEqual(["Tóve"]);
    expect(await aliases(ada, { coach: "bo" })).toEqual(["Nia"]);
    expect(await aliases(ada, { stale: "42" })).toEqual(["Nia"]);
    expect(await aliases(ada, { fundamental: "hinge", sort: "last" })).toEqual(["Tóve", "Nia"]);
    expect(await aliases(ada, { sort: "stale" })).toEqual(["Nia", "Tóve"]);
    expect(await csvOf(ada, { sort: "stale" })).toEqual(["Nia", "Tóve"]);
    expect(await csvOf(ada, { q: "TOVE" })).toEqual(["Tóve"]);
    const page = await loadRoster(ada, { q: "TOVE", sort: "last" });
    expect(page.evidence.download.href).toBe("/api/roster/csv?q=TOVE&sort=last");
    expect(page.evidence.tools.state).toBe("1 of 2 students, by last film");
  });

  it("reaches nobody whom the viewer may not see, whatever is asked", async () => {
    const bo = academy.viewer("bo");
    for (const words of [{ sort: "name" }, { q: "t" }, { coach: "nobody" }, { who: "all" }, { fundamental: "hinge" }]) {
      expect(await aliases(bo, words)).not.toContain("Tóve");
      expect(await csvOf(bo, words)).not.toContain("Tóve");
      expect(JSON.stringify(await loadRoster(bo, words))).not.toContain(tove);
    }
    expect(await aliases(academy.viewer("cy"), { sort: "name" })).toEqual([]);
    expect([...loadListedTracks(bo.db, bo.scope).keys()]).toEqual([academy.nia]);
  });

  it("nobody found: says which filter to drop, and the file is a head alone", async () => {
    const { tools, rows } = (await loadRoster(academy.ada, { q: "tove", stale: "42" })).evidence;
    expect(rows).toEqual([]);
    expect(tools.none?.ways.map(({ href }) => href)).toEqual([
      "/students?stale=42&sort=work#roster",
      "/students?q=tove&sort=work#roster",
    ]);
    expect(await csvOf(academy.ada, { q: "tove", stale: "42" })).toEqual([]);
  });

  it("whoever has left is shown where that is asked, with every other wish in force", async () => {
    const scope = admitToStudent(academy.ada, tove);
    if (!scope) throw new Error("nobody");
    updateDeparted(academy.ada.db, scope, academy.ada.today);
    await loadRules(academy.ada);
    expect(await aliases(academy.ada, { sort: "name" })).toEqual(["Nia"]);
    const page = await loadRoster(academy.ada, { sort: "name", q: "o" });
    expect(page.departed?.href).toBe("/students?q=o&sort=name&who=all");
    expect(await aliases(academy.ada, { sort: "name", q: "o", who: "all" })).toEqual(["Tóve"]);
  });
});

describe("a kept view", () => {
  it("opens the roster where nothing is asked, says so, and is its viewer's alone", async () => {
    const { ada } = academy;
    keepRosterView(ada, "stale=42&sort=last&q=tove");
    expect(readPreference(ada.db, ada.scope, academy.ownerId, "roster-view")).toBe("stale=42&sort=last");
    const { evidence } = await loadRoster(ada, {});
    expect(evidence.rows.map(({ alias }) => alias)).toEqual(["Nia"]);
    expect(evidence.tools).toMatchObject({ kept: "This is the view that you keep.", forget: "Forget my view" });
    expect(await aliases(ada, { sort: "name" })).toEqual(["Nia", "Tóve"]);
    expect((await loadRoster(ada, { sort: "name" })).evidence.tools.back?.href).toBe("/students");
    expect((await loadRoster(academy.viewer("bo"), {})).evidence.tools.forget).toBeNull();
    expect(await csvOf(ada, {})).toHaveLength(2);
    forgetRosterView(ada);
    expect(await aliases(ada, {})).toHaveLength(2);
  });

  it("keeps nothing of what isn't a view, and nothing but a view of what is", async () => {
    const { ada } = academy;
    keepRosterView(ada, "page=3");
    keepRosterView(ada, "x".repeat(100_000));
    expect(readPreference(ada.db, ada.scope, academy.ownerId, "roster-view")).toBeUndefined();
    keepRosterView(ada, `sort=name&verdict=<b>&page=9&coach=${"y".repeat(500)}`);
    expect(readPreference(ada.db, ada.scope, academy.ownerId, "roster-view")).toBe("sort=name");
  });
});
