import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { insertEvent } from "@/db/write/events";
import type { AcademyScope } from "@/lib/domain/scope";
import { academyScope, NOW, studentScope } from "../academy-fixture";
import { openFilledAcademy } from "../filled-academy";

/*
 * TRUST.md 7: whoever has no student in charge reads nothing of any. Every reading function that is handed an academy's scope
 * stands here, with what it is asked besides and with what a scope without students may make of it.
 */

interface Asked {
  readonly args: readonly unknown[];
  /**
   * `cut`: something for the whole academy, nothing without students. `hidden`: the same of what names no student. `own`: goes by whose it is, not by the students.
   * `academy`: nobody's data, the same for everybody; names no student. `caller`: names students and is asked for by code that
   * has proved a student already. `told`: counts of one's own and of others apart, which small-group.ts tells or leaves out.
   */
  readonly is: "cut" | "hidden" | "own" | "academy" | "caller" | "told";
}

const cut = (...args: unknown[]): Asked => ({ args, is: "cut" });
const hidden = (...args: unknown[]): Asked => ({ args, is: "hidden" });
const own = (...args: unknown[]): Asked => ({ args, is: "own" });
const academy = (...args: unknown[]): Asked => ({ args, is: "academy" });
const caller = (...args: unknown[]): Asked => ({ args, is: "caller" });
const wish = { fundamentalId: "hinge", view: "face-on", reader: "Coach", level: "b" };

const ASKED: Readonly<Record<string, Asked>> = {
  "academies readAcademy": academy(),
  "academy-films readAcademyFilms": cut("2020-01-01"),
  "access-tokens readAccessTokens": own(),
  "archive-rules readArchivedRules": caller(),
  "archive-student readArchivedRereads": caller([]),
  "archive-student readArchivedStudentIds": cut(),
  "asking readAskings": cut(),
  "built-on-import readBuiltOnImport": caller({ id: "i1", createdAt: NOW, door: "page" }),
  "club-groups readClubGrouping": academy(),
  "club-groups readGroupClubs": academy("iron"),
  "club-groups readGroupUse": { args: [], is: "told" },
  "club-groups readRegroupings": academy(),
  "compared readComparedAnalyses": cut({ fundamentalId: "hinge", policyVersion: "p1" }),
  "compared readComparedAssignments": cut("hinge"),
  "compared readDrilledFundamentals": hidden(),
  "current-analyses readCurrentLines": cut("p1"),
  "current-analyses readCurrentSummaries": cut("p1"),
  "current-analyses readStaleStudents": cut("p9"),
  "drafts readDraft": own("f1"),
  "drafts readDraftLength": own("f1"),
  "drafts readDraftsOf": own("imp"),
  "drill-use readDrillUse": hidden(),
  "drills readDrillCounts": hidden(),
  "drills readDrills": academy(),
  "drills-due readDrillsDue": cut("2031-12-31"),
  "erasures readErasure": academy("e1"),
  "erasures readErasureCount": academy(),
  "erasures readErasures": academy(),
  "family-links readEndingLinks": cut({ now: "2031-01-01", by: "2032-01-01" }),
  "family-links readOpenRequests": cut(),
  "film-plans readAcademyFilmPlans": cut(),
  "film-plans readPromisedFilms": cut("2032-01-01"),
  "fair-tests readFairTests": academy(),
  "goal-bands readGoalBands": cut(),
  "group-sessions readGroupSessions": cut(),
  "handing readInheritedCharges": cut("u1"),
  "handing readOpenMatters": caller("s1"),
  "history readAliases": cut(),
  "import-batches readImportBatch": academy("hash-1"),
  "import-batches readImportBatchById": own("i1"),
  "import-batches readImportBatches": own(),
  "import-batches readImportedStudents": cut("i1"),
  "import-sources readImportSources": academy(),
  "keeping readClockSeen": academy(),
  "keeping readEndedLinks": caller("2032-01-01"),
  "keeping readNotices": caller(),
  "keeping readRecordTimes": caller(),
  "keeping readVisibleNotices": cut(),
  "kept-files readKept": own("i1"),
  "noise-models readNoiseModels": academy(),
  "note-codings readNoteCodings": academy(),
  "own-fundamentals readOwnFundamentals": academy(),
  "own-fundamentals readOwnReadingCounts": academy(),
  "pauses readPauses": cut("2031-01-04"),
  "owning-rules readOwningRules": academy(),
  "planned-films readPlannedFilms": cut(),
  "preferences readPreference": academy("Owner", "letter-keys"),
  "preferences readPreferencesUnder": academy("Owner", "letter"),
  "priorities readPriorities": cut(),
  "readings readAcademyReadings": cut(),
  "receipts readReceipt": academy("k1"),
  "record-changes readAcademyChanges": caller(),
  "recorded readDrilledStudents": cut({ from: "2020-01-01", to: "2040-01-01" }),
  "recorded readWaitingStudents": cut({ from: "2020-01-01", to: "2040-01-01" }),
  "rereads readFilmReach": cut({ fundamentalId: "hinge", view: "face-on" }),
  "rereads readFirstReaders": academy(),
  "rereads readReaderErrors": academy(),
  "rereads readRereadCandidates": cut(wish),
  "rereads readRereadDraws": hidden(),
  "rereads readRereadItems": hidden("r1"),
  "rereads readRereadPairs": hidden(),
  "rereads readRereadStudents": cut("r1"),
  "roster-lists readRosterDigest": caller("2031-01-03", "p1"),
  "roster-lists readRosterList": caller("2031-01-03", "p1"),
  "seen readLastSeen": academy("owner"),
  "sessions readLastSessionDays": cut(),
  "sessions readLatestClubs": cut(),
  "sessions readLatestContacts": cut(3),
  "sessions readSessionIds": caller(),
  "sessions readSessionStandings": cut(),
  "sessions readSessionStudent": caller("x1"),
  "students readAcademyConsents": cut(),
  "students readStudentNames": cut(),
  "students readStudents": cut(),
  "students readStudentsHere": cut(),
  "tracks readTrackKeys": cut(),
  "under-way readDrillsUnderWay": cut("2031-01-03"),
  "under-way readPausesUnderWay": cut("2031-01-03"),
  "waiting readAcademyWaiting": cut("hinge"),
};

const folder = path.join(import.meta.dirname, "../../../db/read");

/** Every exported reading function that is handed an academy's scope, as "file function". */
function found(): string[] {
  return readdirSync(folder)
    .flatMap((file) => {
      const text = readFileSync(path.join(folder, file), "utf8");
      return [...text.matchAll(/^export function\*? (\w+)\(([^)]*)\)/gm)]
        .filter(([, name = "", args = ""]) => /^read/.test(name) && /\bAcademy(Scope|Key)\b/.test(args))
        .map(([, name]) => `${file.replace(/\.ts$/, "")} ${name}`);
    })
    .sort();
}

const withoutStudents = { academyId: "a1", userId: "nobody", students: [] } as unknown as AcademyScope;
const stranger = { academyId: "a1", userId: "nobody", students: ["s2"] } as unknown as AcademyScope;

let db: Database;

async function ask(name: string, scope: AcademyScope): Promise<string> {
  const [file = "", call = ""] = name.split(" ");
  const room = (await import(path.join(folder, `${file}.ts`))) as Record<string, (...args: unknown[]) => unknown>;
  const answer = room[call]?.(db, scope, ...(ASKED[name]?.args ?? []));
  const isList = typeof answer === "object" && answer !== null && Symbol.iterator in answer;
  return JSON.stringify(isList ? [...(answer as Iterable<unknown>)] : (answer ?? null));
}

beforeAll(async () => {
  db = await openFilledAcademy();
  db.sqlite.exec("UPDATE session SET group_id = 'g', solid = 3, balls = 4, reader = 'Coach'");
  db.sqlite.exec("UPDATE reread_item SET reading_id = (SELECT min(id) FROM reading)");
  insertEvent(db, studentScope(), { id: "e9", kind: "pause", day: "2031-01-03", note: "", rebaselines: [] });
  db.sqlite.exec(
    "INSERT INTO film_plan SELECT 'fp0', student_id, club_group, '2031-01-01', due_on, body, who, recorded_at, NULL, NULL FROM film_plan",
  );
  db.sqlite.exec("UPDATE waiting SET voided_at = NULL");
  db.sqlite.exec("UPDATE reread_draw SET finished_on = '2031-03-02'");
  db.sqlite.exec("UPDATE charge SET from_coach_id = 'u2'");
  db.sqlite.exec("UPDATE event SET kind = 'break', end_day = NULL WHERE id = 'e1'");
  db.sqlite.exec("UPDATE analysis SET data_revision = (SELECT revision FROM student WHERE id = student_id)");
  db.sqlite.prepare("UPDATE note_coding SET coding = ?").run(JSON.stringify({ as: "mention" }));
});

describe("what is read of an academy", () => {
  it("stands here, all of it and nothing else", () => {
    expect(found()).toEqual(Object.keys(ASKED).sort());
  });

  it.each(Object.keys(ASKED).filter((name) => ASKED[name]?.is === "cut"))(
    "%s: something of the whole academy, nothing of Ulla without her in charge",
    async (name) => {
      expect(await ask(name, academyScope())).toMatch(/s1|Ulla|"readings":[1-9]/);
      for (const scope of [withoutStudents, stranger])
        expect(await ask(name, scope)).not.toMatch(/"s1"|Ulla|"readings":[1-9]/);
    },
  );

  it.each(Object.keys(ASKED).filter((name) => ASKED[name]?.is === "hidden"))(
    "%s: something of the whole academy, nothing without her in charge",
    async (name) => {
      expect(await ask(name, academyScope())).toMatch(/^\[[{[]/);
      for (const scope of [withoutStudents, stranger]) expect(await ask(name, scope)).toBe("[]");
    },
  );

  it.each(Object.keys(ASKED).filter((name) => ASKED[name]?.is === "own"))(
    "%s: nothing of what others began",
    async (name) => {
      expect(await ask(name, withoutStudents)).toMatch(/^(null|0|\[\]|"gone")$/);
    },
  );

  it.each(Object.keys(ASKED).filter((name) => ASKED[name]?.is === "academy"))(
    "%s: names no student to anybody",
    async (name) => {
      for (const scope of [academyScope(), withoutStudents]) expect(await ask(name, scope)).not.toMatch(/"s1"|Ulla/);
      expect(await ask(name, withoutStudents)).toBe(await ask(name, academyScope()));
    },
  );

  it("nothing of one academy is read by another's scope", async () => {
    const other = { ...academyScope("a2") } as AcademyScope;
    for (const name of Object.keys(ASKED)) {
      if (name === "archive-student readArchivedRereads") continue;
      const answer = await ask(name, other);
      expect([name, /"s1"|"Ferdi"|"s2"/.test(answer)]).toEqual([name, false]);
    }
  });
});
