import { expect, test } from "vitest";
import { readTold } from "@/db/read/told";
import { insertTold, updateToldVoided } from "@/db/write/told";
import { openAcademy, revisionOf, studentScope } from "../academy-fixture";

const findings = [
  { fundamentalId: "hinge", kind: "changed", said: "better", change: { from: "2031-01-03", to: "2031-01-09" } },
] as const;
const told = { clubGroup: "iron", kind: "message", text: "Ari: good news.", findings, day: "2031-02-01" } as const;
const at = (hour: string) => `2031-02-01T${hour}:00:00.000Z`;
const by = (hour: string) => ({ who: "Owner", recordedAt: at(hour) });

test("what was told is kept as sent, once, taken back and put back; the data stay as they were", async () => {
  const db = await openAcademy();
  const before = revisionOf(db);
  const mine = studentScope();
  expect(insertTold(db, mine, { id: "t1", ...told, ...by("09") })).toBe("kept");
  // A second press, and the same text in another form or to another family.
  expect(insertTold(db, mine, { id: "t2", ...told, ...by("10") })).toBe("kept-before");
  expect(insertTold(db, mine, { id: "t3", ...told, kind: "letter", ...by("10") })).toBe("kept");
  expect(insertTold(db, studentScope("s2"), { id: "t4", ...told, ...by("10") })).toBe("kept");
  expect(readTold(db, mine).map(({ id, kind }) => [id, kind])).toEqual([
    ["t1", "message"],
    ["t3", "letter"],
  ]);
  expect(readTold(db, mine)[0]).toEqual({ id: "t1", ...told, ...by("09"), voidedAt: null });
  expect(updateToldVoided(db, mine, { toldId: "t1", voidedAt: at("11") })).toBe("updated");
  expect(updateToldVoided(db, mine, { toldId: "t1", voidedAt: at("12") })).toBe("unchanged");
  expect(readTold(db, mine)[0]?.voidedAt).toBe(at("11"));
  // What was taken back may be told anew.
  expect(insertTold(db, mine, { id: "t5", ...told, ...by("13") })).toBe("kept");
  expect(updateToldVoided(db, mine, { toldId: "t1", voidedAt: null })).toBe("updated");
  // Of another student, or of none.
  expect(updateToldVoided(db, mine, { toldId: "t4", voidedAt: at("14") })).toBe("unchanged");
  expect(updateToldVoided(db, mine, { toldId: "t9", voidedAt: at("14") })).toBe("unchanged");
  expect(revisionOf(db)).toBe(before);
});
