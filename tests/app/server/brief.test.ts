import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { saveDeparture } from "@/app/_server/consent/consent-desk";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { forgetKeptTracks } from "@/app/_server/roster/kept-tracks";
import { loadEveryone } from "@/app/_server/roster/load-everyone";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { markDealtWith, markSeen } from "@/app/_server/roster/mark-seen";
import { readPutAway } from "@/app/_server/roster/put-away";
import { digestTables } from "@/db/backup";
import { readPreferencesUnder } from "@/db/read/preferences";
import { readLastSeen } from "@/db/read/seen";
import { admitFilmed, admitNew, formOf } from "./corrected-season";
import { enterAsOwner, startAcademy } from "./own-academy-data";

let viewer: Viewer;
let filmed: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  viewer = await enterAsOwner(viewer);
  filmed = await admitFilmed(viewer, "Zephyrine");
  await admitNew(viewer, "Lark", "left");
  await admitNew(viewer, "Wren", "left");
  viewer.db.sqlite.exec("UPDATE student SET created_at = '2020-01-01T00:00:00.000Z' WHERE alias IN ('Lark', 'Wren')");
}, 60_000);
afterAll(() => remove());

const roster = (wish: { readonly who?: string; readonly aside?: string } = {}) =>
  loadRoster(viewer, { sort: "name", page: undefined, ...wish });
const lines = async (aside?: string) =>
  ((await roster({ aside })).brief?.lists ?? []).flatMap(({ word, items }) =>
    items.map(({ student, putAway }) => ({ word, alias: student.label, ...putAway })),
  );
const awayLines = async () => (await lines()).filter(({ word }) => word === "away").map(({ alias }) => alias);

/** Puts a proved change that stands on the list into what is kept of a student's track. */
async function prove({ student: { studentId } }: StudentViewer): Promise<void> {
  // Judged first: what is judged anew would be in its place.
  await roster();
  const rows = viewer.db.sqlite
    .prepare<[string], { id: number; summary: string }>(
      "SELECT rowid AS id, summary FROM analysis WHERE student_id = ?",
    )
    .all(studentId);
  const level = { estimate: 80, low80: 79, high80: 81, low95: 78, high95: 82 };
  const change = {
    ...{ verdict: "gain", shape: "step", from: "2026-01-02", to: "2026-01-09", set80: null, set95: null },
    ...{ size: level, before: level, after: level, moved: null, provedOn: "2026-01-16" },
  };
  for (const { id, summary } of rows) {
    const told = JSON.parse(summary);
    told.verdict = { ...told.verdict, verdict: "gain", change, changes: [change] };
    viewer.db.sqlite.prepare("UPDATE analysis SET summary = ? WHERE rowid = ?").run(JSON.stringify(told), id);
  }
  const ids = rows.map(({ summary }) => JSON.parse(summary).verdict.id as string);
  const body = JSON.stringify(Object.fromEntries(ids.map((id) => [id, { latest: true, looks: [] }])));
  viewer.db.sqlite.prepare("UPDATE roster_list SET body = ?").run(body);
  // No judging ends with another verdict under the same name: what lies in memory can't know of this one.
  forgetKeptTracks(viewer.academy.id);
}

describe("what is dealt with", () => {
  it("a line is put away by its key, comes back by it, and nobody else's brief changes", async () => {
    expect(await awayLines()).toEqual(["Lark", "Wren"]);
    const [lark] = (await lines()).filter(({ alias }) => alias === "Lark");
    await markDealtWith(viewer, formOf({ put: lark?.key ?? "" }));
    expect(await awayLines()).toEqual(["Wren"]);
    expect((await roster()).brief?.aside?.label).toContain("One line is put away");
    expect((await lines("shown")).filter(({ state }) => state === "put-away").map(({ alias }) => alias)).toEqual([
      "Lark",
    ]);
    expect(readPutAway({ ...viewer, userId: "another" }).size).toBe(0);
    await markDealtWith(viewer, formOf({ back: lark?.key ?? "" }));
    expect(await awayLines()).toEqual(["Lark", "Wren"]);
  });

  it("a whole list is put away at once; the next thing is another, and at the end nothing else needs anybody", async () => {
    await markDealtWith(viewer, formOf({ list: "away" }));
    expect(await awayLines()).toEqual([]);
    for (let at = 0; at < 5; at++) {
      const next = (await roster()).brief?.next;
      if (next) await markDealtWith(viewer, formOf({ put: next.putAway.key }));
    }
    const over = await roster();
    expect(over.brief?.next).toBeNull();
    expect(over.consents).toBeNull();
    expect(over.brief?.quiet?.heading).toBe("Nothing else needs you today");
  });

  it("a key of nothing that there is, and a list of no name, change nothing", async () => {
    const before = [...readPutAway(viewer)];
    const strange: Readonly<Record<string, string>>[] = [
      { put: "away nobody 2020-01-01 1" },
      { list: "everything" },
      {},
      { back: "x".repeat(9000) },
    ];
    for (const entries of strange) await markDealtWith(viewer, formOf(entries));
    expect([...readPutAway(viewer)]).toEqual(before);
  });

  it("is kept a row a student, so that erasing one lets go of that one's alone", () => {
    const rows = readPreferencesUnder(viewer.db, viewer.scope, viewer.userId ?? "", "put-away ");
    expect(rows.map(({ name }) => name).every((name) => /^put-away [0-9a-f-]{36}$/.test(name))).toBe(true);
    expect(rows.length).toBeGreaterThan(1);
  });

  it("looking changes nothing", async () => {
    const tables = ["preference", "seen", "analysis", "roster_list", "look_noise"];
    const before = await digestTables(viewer.db, tables);
    await roster();
    await roster({ aside: "shown", who: "all" });
    expect(await digestTables(viewer.db, tables)).toEqual(before);
  });
});

describe("what is newly proved, and who has left", () => {
  it("pressing seen puts away what the roster says is new: of those who are here, whatever the table shows", async () => {
    await prove(filmed);
    expect((await roster()).proved.rows).toHaveLength(1);
    expect(saveDeparture(filmed, formOf({ departedOn: viewer.today })).kind).toBe("saved");
    await prove(filmed);
    const all = await roster({ who: "all" });
    expect(all.evidence.rows).toHaveLength(3);
    expect((await loadEveryone(viewer, { who: "all" })).all.map(({ verdict }) => verdict.listed)).toEqual([true]);
    expect(all.proved.rows).toEqual([]);
    expect(all.brief?.next?.heading ?? "").not.toContain("Zephyrine");
    await markSeen(viewer);
    expect(JSON.parse(readLastSeen(viewer.db, viewer.scope, viewer.userId ?? "")?.body ?? "")).toEqual([]);
    expect(saveDeparture(filmed, formOf({ departedOn: "" })).kind).toBe("saved");
    await prove(filmed);
    expect((await roster()).proved.rows).toHaveLength(1);
    await markSeen(viewer);
    expect((await roster()).proved.rows).toEqual([]);
  });
});
