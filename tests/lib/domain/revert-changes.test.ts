import { describe, expect, it } from "vitest";
import { type RecordChange, type RowState, rowName } from "@/lib/domain/record-change";
import { revertChanges } from "@/lib/domain/revert-changes";

const row = (id: string, values: RowState["values"]): RowState => ({ table: "session", key: { id }, values });
const change = (
  id: number,
  before: RowState,
  after: RowState,
  changedAt: string,
  undoneAt: string | null = null,
): RecordChange => ({
  ...{ id, kind: "session-facts", studentId: "s", otherStudentId: null, sessionId: null, who: "", why: "" },
  ...{ before: [before], after: [after], mark: { reading: 0, correction: 0 }, changedAt, undoneAt, undoneBy: null },
});
function at(knownAt: string, now: Record<string, string | number | null>, changes: readonly RecordChange[]) {
  const rows = new Map([[rowName(row("a", null)), now]]);
  revertChanges(rows, changes, knownAt);
  return rows.get(rowName(row("a", null)));
}

describe("changes taken back in memory", () => {
  const first = change(1, row("a", { day: 1 }), row("a", { day: 2 }), "t1");
  const second = change(2, row("a", { day: 2 }), row("a", { day: 3 }), "t2", "t3");

  it("a row is as the changes up to then left it, undoings counted: 1, 2, 3, 2", () => {
    const now = { id: "a", day: 2, note: "n" };
    const days = ["t0", "t1", "t2", "t3"].map((knownAt) => at(knownAt, { ...now }, [second, first])?.day);
    expect(days).toEqual([1, 2, 3, 2]);
    expect(at("t0", { ...now }, [first, second])?.note).toBe("n");
  });

  it("a row that a change made is gone before it, and one that it removed is there", () => {
    const made = change(1, row("a", null), row("a", { day: 1 }), "t1");
    expect(at("t0", { id: "a", day: 1 }, [made])).toBeUndefined();
    const rows = new Map();
    revertChanges(rows, [change(1, row("a", { day: 1 }), row("a", null), "t1")], "t0");
    expect([...rows.values()]).toEqual([{ id: "a", day: 1 }]);
  });

  it("names a row alike however its key is ordered", () => {
    const [one, other] = [
      { a: 1, b: 2 },
      { b: 2, a: 1 },
    ];
    expect(rowName({ table: "x", key: one })).toBe(rowName({ table: "x", key: other }));
  });
});
