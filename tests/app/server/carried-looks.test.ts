import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { loadFundamental } from "@/app/_server/season/load-fundamental";
import { loadKnown } from "@/app/_server/season/load-known";
import { loadSeason } from "@/app/_server/season/load-season";
import { readCarriedLooks } from "@/db/read/carried-looks";
import { readEvents } from "@/db/read/events";
import { readLookNoise } from "@/db/read/looks";
import { readStudents } from "@/db/read/students";
import { insertSession } from "@/db/write/sessions";
import { undoImport } from "@/db/write/undo-import";
import type { Archive } from "@/lib/domain/archive";
import type { SaidLook } from "@/lib/domain/carried-look";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import { NOTHING_SEEN } from "@/lib/domain/session";
import type { EnteredSession } from "@/lib/domain/session-entry";
import { saidLooks } from "@/lib/ingest/carry-looks";
import { sayLook } from "@/lib/report/build-carried";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { admitted, draftOf, NIA, seedDemo, studentOf } from "./carried-academies";
import { startAcademy } from "./own-academy-data";

let demo: Viewer;
let own: Viewer;
let remove: () => void;
let archive: Archive;
let batchId = "";

/** The student with most proved changes on the list of the demo. */
async function richest(): Promise<StudentViewer> {
  const found = await Promise.all(
    readStudents(demo.db, demo.scope).map(async ({ alias }) => {
      const viewer = studentOf(demo, alias);
      const { tracks } = await loadStudentVerdicts(viewer);
      return { viewer, listed: tracks.filter(({ verdict }) => verdict.listed === true).length };
    }),
  );
  const [first] = found.toSorted((a, b) => b.listed - a.listed);
  if (!first || first.listed === 0) throw new Error("nothing is listed in the demo");
  return first.viewer;
}

beforeAll(async () => {
  const started = await startAcademy();
  remove = started.remove;
  seedDemo(started.folder);
  started.viewer.db.sqlite.prepare("UPDATE academy SET fixed_today = '2026-10-20'").run();
  [demo, own] = [await admitted("demo"), await admitted("own")];
  archive = (await loadArchive(demo, (await richest()).student)).archive;
  // B is not empty, and has noise of its own: Nia's, from its start model.
  await confirmImport(own, NIA);
}, 240_000);
afterAll(() => remove());

const theirs = () => archive.students[0] as Archive["students"][number];
/** The club group of A's films. */
const club = () => theirs().snapshots[0]?.clubGroup ?? "iron";
const mine = () => studentOf(own, theirs().alias);
const fundamentals = new Map(orderedFundamentals([]).map((each) => [each.id as string, each]));

/** What A says of each track, look by look, in the words of its own pages. */
function saidByA(): ReadonlyMap<
  string,
  readonly (Pick<SaidLook, "date" | "logBayesFactor"> & ReturnType<typeof sayLook>)[]
> {
  return new Map(
    theirs().snapshots.map((snapshot) => {
      const fundamental = fundamentals.get(snapshot.fundamentalId);
      if (!fundamental) throw new Error(snapshot.fundamentalId);
      const looks = saidLooks(snapshot).map((look) => ({
        date: look.date,
        logBayesFactor: look.logBayesFactor,
        ...sayLook(demo.words, fundamental, look),
      }));
      return [`${snapshot.fundamentalId} ${snapshot.clubGroup}`, looks];
    }),
  );
}

describe("one student's archive in an academy that is not empty", () => {
  it("is taken in once; the looks come with it, the change of reader is dated, and the same file adds nothing", async () => {
    const written = await confirmImport(own, draftOf(archive), "archive");
    if (written.kind !== "imported") throw new Error(written.kind);
    batchId = written.batchId;
    const rows = readCarriedLooks(own.db, mine().student);
    const looks = theirs().sessions.flatMap((session) => session.looks);
    expect(rows.length).toBe(looks.length);
    expect(new Set(rows.map(({ saidBy }) => saidBy))).toEqual(new Set([demo.academy.name]));
    const change = readEvents(own.db, mine().student)
      .filter((event) => event.kind === "reader-change")
      .at(-1);
    expect(change).toMatchObject({ day: own.today, note: own.name, rebaselines: [] });
    expect((await confirmImport(own, draftOf(archive), "archive")).kind).toBe("already-imported");
    expect(readCarriedLooks(own.db, mine().student)).toEqual(rows);
    console.log(`carried looks: ${rows.length} of ${theirs().snapshots.length} tracks`);
  });

  it("the season page and each fundamental's show what A said, in the very words and figures of A", async () => {
    const season = await loadSeason(mine(), club());
    let compared = 0;
    for (const [track, looks] of saidByA()) {
      const [fundamentalId = "", clubGroup] = track.split(" ");
      const page = await loadFundamental(mine(), fundamentalId, clubGroup);
      const by = demo.academy.name;
      expect(page.carried?.table.rows.map(({ cells }) => cells)).toEqual(
        looks.map((look) => [sayDay(own.words, look.date, "day-year"), by, look.said, look.fits, look.whole]),
      );
      compared += looks.length;
      if (clubGroup !== club()) continue;
      const name = sayFundamental(own.words, fundamentals.get(fundamentalId) as never);
      const last = looks.at(-1);
      expect(season.carried?.table.rows.find(({ cells }) => cells[0] === name)?.cells.slice(3)).toEqual([
        last?.said,
        last?.fits,
        last?.whole,
      ]);
    }
    expect(compared).toBeGreaterThan(60);
    console.log(`carried looks compared in words and figures: ${compared}`);
  });

  it("the latest look reads as A's own page of what was known reads", async () => {
    const a = studentOf(demo, theirs().alias);
    const known = await loadKnown(a, { club: club() });
    const then = new Map(known.parts[0]?.tables[0]?.rows.map(({ cells }) => [cells[0], cells[3]]));
    const season = await loadSeason(mine(), club());
    const rows = season.carried?.table.rows ?? [];
    expect(rows.length).toBeGreaterThan(4);
    for (const { cells } of rows) expect([cells[0], cells[3]]).toEqual([cells[0], then.get(cells[0])]);
  });

  it("the page of what was known shows them up to its day, and none before the first film", async () => {
    const middle = theirs().sessions[5]?.day ?? "";
    const known = await loadKnown(mine(), {
      on: middle,
      club: club(),
      fundamental: theirs().snapshots[0]?.fundamentalId,
    });
    const part = known.parts.find(({ margin }) => margin === own.words.say("carried.margin"));
    expect(part?.tables[0]?.rows.length).toBeGreaterThan(2);
    expect(part?.tables[0]?.rows.length).toBeLessThan(theirs().sessions.length);
    const before = await loadKnown(mine(), { on: "2020-01-01", club: club() });
    expect(before.parts.some(({ margin }) => margin === own.words.say("carried.margin"))).toBe(false);
  });

  it("B judges with its own noise: each look by the model in force on the day of the import", async () => {
    const names = new Set(readLookNoise(own.db, mine().student).map(({ noiseModelName }) => noiseModelName));
    const models = own.db.sqlite
      .prepare<[], { name: string; body: string }>("SELECT name, body FROM noise_model")
      .all();
    const bodies = new Map(archive.rules.noiseModels.map((model) => [model.name, model.body]));
    expect(models.filter(({ name, body }) => bodies.get(name) === body && JSON.parse(body).kind === "learned")).toEqual(
      [],
    );
    expect([...names].filter((name) => !models.some((model) => model.name === name))).toEqual([]);
    const { tracks } = await loadStudentVerdicts(mine());
    const figures = tracks.flatMap(({ verdict }) => (verdict.looks ?? []).map((look) => look.logBayesFactor));
    const said = [...saidByA().values()].flat().map((look) => look.logBayesFactor);
    expect(figures.length).toBe(said.length);
    expect(figures).not.toEqual(said);
  });

  it("a later film is judged here; what A said stays word for word", async () => {
    const before = (await loadFundamental(mine(), "hinge", club())).carried?.table.rows;
    const session: EnteredSession = {
      ...({ day: "2026-10-01", sequence: 1, clubGroup: club(), club: null, reader: "Coach Lark" } as const),
      ...({ circumstance: "unaided", aid: null, stanceWidthCm: null, daysSincePractice: null, marks: [] } as const),
      ...{ note: null, solid: null, balls: null, setAsideReason: null, statedCaptureSds: [] },
      captures: [
        {
          ...({ view: "face-on", placement: "unknown", placementLabel: null, squareness: "unknown" } as const),
          ...{ offBy: null, setAsideReason: null, seen: NOTHING_SEEN, placedBy: null, filmReference: null },
        },
      ],
      swings: [1, 2, 3].map((number) => ({
        ...{ number, note: null },
        readings: [{ fundamentalId: "hinge", value: 70, typed: "70", unit: "deg", signRule: "neutral" } as const],
      })),
    };
    insertSession(own.db, mine().student, session, {
      now: "2026-10-01T10:00:00.000Z",
      newId: () => "later",
      batchId: null,
    });
    const page = await loadFundamental(mine(), "hinge", club());
    expect(page.carried?.table.rows.map(({ cells }) => cells)).toEqual(before?.map(({ cells }) => cells));
    const look = readLookNoise(own.db, mine().student).find(({ sessionId }) => sessionId === "later");
    expect(look?.noiseModelName).toMatch(/^hinge/);
  });

  it("B's own archive carries A's words on, and its own of the later film", async () => {
    const again = (await loadArchive(own, mine().student)).archive;
    const carried = again.students[0]?.carried ?? [];
    expect(carried.map(({ saidBy, body }) => `${saidBy} ${body}`)).toEqual(
      readCarriedLooks(own.db, mine().student).map(({ saidBy, body }) => `${saidBy} ${body}`),
    );
    expect(again.saidBy).toBe(own.academy.name);
  });

  it("words in a file are never ours: list, counts and rows of the roster are the same without them", async () => {
    const wish = { sort: undefined, page: undefined };
    const roster = JSON.stringify(await loadRoster(own, wish));
    const rows = own.db.sqlite.prepare("SELECT * FROM carried_look").all() as Record<string, string>[];
    // Every look a listed gain, as a hostile file would have it.
    own.db.sqlite
      .prepare("UPDATE carried_look SET body = json_set(body, '$.verdict', 'gain', '$.listed', json('true'))")
      .run();
    expect(JSON.stringify(await loadRoster(own, wish))).toBe(roster);
    own.db.sqlite.prepare("DELETE FROM carried_look").run();
    expect(JSON.stringify(await loadRoster(own, wish))).toBe(roster);
    const insert = own.db.sqlite.prepare(
      `INSERT INTO carried_look (${Object.keys(rows[0] ?? {}).join(", ")}) VALUES (${Object.keys(rows[0] ?? {})
        .map((name) => `:${name}`)
        .join(", ")})`,
    );
    for (const row of rows) insert.run(row);
  });

  it("undone, the import takes the looks and the event along", () => {
    own.db.sqlite.prepare("DELETE FROM session WHERE id = 'later'").run();
    const { studentId } = mine().student;
    const made = undoImport(own.db, own.scope, batchId, {
      ...{ now: "2026-10-20T20:00:00.000Z", who: "Coach Lark" },
      scopeOf: (id) => {
        const scope = admitToStudent(own, id);
        if (!scope) throw new Error(id);
        return scope;
      },
    });
    expect(made.kind).toBe("undone");
    for (const table of ["carried_look", "event", "look_noise", "session"])
      expect([
        table,
        own.db.sqlite.prepare(`SELECT count(*) FROM ${table} WHERE student_id = ?`).pluck().get(studentId),
      ]).toEqual([table, 0]);
  });
});
