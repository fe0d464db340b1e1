import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { RecordChange, RowState } from "@/lib/domain/record-change";
import { buildHistory, buildHistoryCsv, type HistoryEntry, type HistorySource } from "@/lib/report/build-history";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const stamp = { at: "2031-03-01T10:00:00.000Z", day: "2031-03-01", who: "Kim" };

const corrected: HistoryEntry = {
  ...{
    ...stamp,
    kind: "correction",
    why: '=HYPERLINK("x")',
    sessionDay: "2031-02-03",
    swing: 2,
    fundamentalId: "hinge",
  },
  ...{ before: { kind: "change", typed: "8O" }, after: { kind: "void", typed: "" } },
};
const made = (more: Partial<RecordChange>): RecordChange => ({
  ...{
    id: 4,
    kind: "session-facts",
    studentId: "a",
    otherStudentId: null,
    sessionId: "s",
    who: "Kim",
    why: "mixed up",
  },
  ...{
    before: [],
    after: [],
    mark: { reading: 0, correction: 0 },
    changedAt: stamp.at,
    undoneAt: null,
    undoneBy: null,
  },
  ...more,
});
const recorded = (change: RecordChange, undoneDay: string | null = null): HistoryEntry => ({
  ...{ ...stamp, kind: "record", why: change.why, sessionDay: "2031-02-03", change, undoneDay },
});
const row = (table: string, key: RowState["key"], values: RowState["values"]): RowState => ({ table, key, values });
const source = (entries: readonly HistoryEntry[]): HistorySource => ({
  student: { id: "a", alias: "Dot" },
  entries,
  fundamentals: BUILT_IN,
  grouping: SHORT_LIST,
  aliases: new Map([
    ["a", "Dot"],
    ["b", "Dottie"],
  ]),
});
const cells = (entry: HistoryEntry) =>
  buildHistory(words, source([entry]), "").parts[0]?.tables[0]?.rows[0]?.cells.slice(1);

describe("the history of a record", () => {
  it("says a void reading, and facts before and after by name, without what follows from others", () => {
    expect(cells(corrected)).toEqual([
      "Reading voided",
      "Mon 3 Feb 2031, swing 2, Wrist hinge",
      "8O",
      "void",
      "Kim",
      '=HYPERLINK("x")',
    ]);
    const before = [
      row("session", { id: "s" }, { day: "2031-02-03", said_club_group: "iron", sequence: 1, note: null }),
    ];
    const film = { session_id: "s", view: "face-on" };
    const facts = made({
      before: [...before, row("capture", film, null)],
      after: [
        row("session", { id: "s" }, { day: "2031-02-04", said_club_group: "driver", sequence: 2, note: "windy" }),
        row("capture", film, { squareness: "off", off_by: 2.5, batch_id: null }),
      ],
    });
    const said = cells(recorded(facts));
    expect(said?.[2]).toMatch(/^day: Mon 3 Feb 2031; club group: .+; note: nothing; square \(face-on\): nothing; /);
    expect(said?.[3]).toMatch(
      /^day: Tue 4 Feb 2031; club group: driver; note: windy; square \(face-on\): off by about; off by \(face-on\): 2.5$/,
    );
  });

  it("says a merge by both names, offers its undoing, and after it says by whom", () => {
    const merge = { kind: "merge-students", studentId: "b", otherStudentId: "a", sessionId: null } as const;
    const page = buildHistory(words, source([recorded(made(merge))]), "");
    expect(cells(recorded(made(merge)))?.slice(2, 4)).toEqual(["Dottie", "Dot"]);
    expect(page.parts[1]?.presses.map((press) => press.label)).toEqual(["Undo: Students merged"]);
    const undone = recorded(made({ ...merge, undoneAt: stamp.at, undoneBy: "Lee" }), "2031-03-02");
    const after = buildHistory(words, source([undone]), "");
    expect(after.parts).toHaveLength(1);
    expect(after.parts[0]?.tables[0]?.rows[0]).toMatchObject({ tone: "quiet" });
    expect(cells(undone)?.[0]).toBe("Students merged; undone by Lee on Sun 2 Mar 2031");
  });

  it("as a file it is safe for spreadsheets, one entry a row", () => {
    const lines = buildHistoryCsv(words, source([corrected, recorded(made({}))]))
      .trim()
      .split("\r\n");
    expect(lines).toHaveLength(3);
    expect(lines[1]).toContain('"\'=HYPERLINK(""x"")"');
  });

  it("with nothing in it says so", () => {
    const page = buildHistory(words, source([]), "");
    expect(page.title).toBe("Nothing was ever changed in the record of Dot");
    expect(page.parts[0]?.tables).toEqual([]);
  });
});
