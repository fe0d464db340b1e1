import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findFormDraft } from "@/app/_server/draft/form-draft";
import type { StudentViewer } from "@/app/_server/gate";
import { saveMove } from "@/app/_server/session/move-desk";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { CONSENT_KINDS } from "@/lib/domain/consent";
import { admitNew, formOf } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let mine: StudentViewer;
let twin: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  const academy = await startAcademy();
  remove = academy.remove;
  mine = await admitNew(academy.viewer, "Zephyrine", "right");
  twin = await admitNew(academy.viewer, "Zephi", "right");
});
afterAll(() => remove());

const ago = (days: number): string => dayFromNumber(dayNumber(mine.today) - days);

function file({ db, student }: StudentViewer, kind: string, from: string, withdrawnOn: string | null): void {
  db.sqlite
    .prepare(
      `INSERT INTO consent (id, student_id, kind, given_by, giver_is, from_day, withdrawn_on, recorded_at)
       VALUES (?, ?, ?, 'mother', 'guardian', ?, ?, ?)`,
    )
    .run(randomUUID(), student.studentId, kind, from, withdrawnOn, `${from}T12:00:00.000Z`);
}

/** What is wrong where one is joined to the other; empty: nothing. */
async function refusedWith(): Promise<string> {
  const data = formOf({ to: twin.student.studentId, why: "one person", signs: "keep" });
  const came = await saveMove(mine, { kind: "merge", sessionId: null }, data);
  if (came.kind !== "refused") return "";
  return findFormDraft(mine, `merge-form ${mine.student.studentId}`, came.draftId)?.errors.to ?? "";
}

describe("two students of whom one has a consent withdrawn", () => {
  const cases = CONSENT_KINDS.flatMap((kind) =>
    [true, false].flatMap((isKept) => ([0, 5] as const).map((ahead) => ({ kind, isKept, ahead }))),
  );
  it.each(cases)(
    "aren't joined while it stands under the other: $kind, withdrawn on the kept one: $isKept, beginning in $ahead days",
    async ({ kind, isKept, ahead }) => {
      mine.db.sqlite.prepare("DELETE FROM consent").run();
      const [no, yes] = isKept ? [twin, mine] : [mine, twin];
      file(no, kind, ago(90), ago(3));
      file(yes, kind, ago(-ahead), null);
      expect(await refusedWith()).toMatch(/withdrawn under one of the two.*under the other/);
    },
  );

  it("are, once it is withdrawn under both", async () => {
    mine.db.sqlite.prepare("DELETE FROM consent").run();
    for (const each of [mine, twin]) file(each, "share", ago(90), ago(3));
    expect(await refusedWith()).toBe("");
  });
});
