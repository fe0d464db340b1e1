import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { keepFormDraft } from "@/app/_server/draft/form-draft";
import type { StudentViewer } from "@/app/_server/gate";
import { keepGroup } from "@/app/_server/session/group-desk";
import { loadSessionForm } from "@/app/_server/session/load-forms";
import { loadGroupPage } from "@/app/_server/session/load-group";
import { loadSessionPage } from "@/app/_server/session/load-history";
import { addSession, sessionDraft } from "@/app/_server/session/session-desk";
import { readReadBackCandidates } from "@/db/read/read-backs";
import { readCaptures, readSessions } from "@/db/read/sessions";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { admitNew, formOf } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let mine: StudentViewer;
let remove: () => void;
beforeAll(async () => {
  const { viewer, remove: end } = await startAcademy();
  remove = end;
  mine = await admitNew(viewer, "Pim", "right");
});
afterAll(() => remove());

const BEHIND = BUILT_IN.filter((each) => each.view === "down-the-line" && each.derivedFrom === null).map(
  ({ id }) => id,
);
const columnsOf = async (entries: Readonly<Record<string, string>>) => {
  const id = keepFormDraft(mine, sessionDraft(mine.student.studentId), formOf(entries), {}, "");
  const model = await loadSessionForm(mine, id);
  const ids = model.grid?.columns.map((column) => column.fundamentalId as string) ?? [];
  return { model, ids, behind: ids.filter((each) => (BEHIND as readonly string[]).includes(each)) };
};

describe("a view that was not filmed", () => {
  it("takes its columns away, but for one that holds a value; with neither view filmed all stay", async () => {
    expect((await columnsOf({})).behind).toEqual(BEHIND);
    const without = await columnsOf({ "notFilmed.down-the-line": "yes" });
    expect(without.behind).toEqual([]);
    expect(without.ids).toContain("hinge");
    expect(without.model.grid?.first).toBeLessThanOrEqual(without.ids.length);
    const answers = without.model.parts.flatMap((part) => part.answer?.heading ?? []);
    expect(answers[1]).toBe("Not filmed: nothing of it is read, and nothing is asked.");
    const typed = await columnsOf({ "notFilmed.down-the-line": "yes", "r.2.foot-line": "3" });
    expect(typed.behind).toEqual(["foot-line"]);
    const neither = await columnsOf({ "notFilmed.down-the-line": "yes", "notFilmed.face-on": "yes" });
    expect(neither.behind).toEqual(BEHIND);
  });

  it("takes them away in every grid of a group", async () => {
    const data = formOf({
      ...{ students: mine.student.studentId, columns: "", swings: "5" },
      ...{ draft: crypto.randomUUID(), "notFilmed.down-the-line": "yes" },
    });
    const step = await loadGroupPage(mine, { draft: keepGroup(mine, data) });
    if (step.kind !== "form") throw new Error("the choice again");
    const grid = step.form.parts.find((part) => part.margin === "Pim")?.grid;
    expect(grid?.columns.map((column) => column.fundamentalId)).toContain("hinge");
    expect(grid?.columns.filter((column) => (BEHIND as readonly string[]).includes(column.fundamentalId))).toEqual([]);
  });

  it("is kept as a session without its film: said on its page, and not filmed for a reading back", async () => {
    const entries = { day: "2026-03-01", clubGroup: "iron", "notFilmed.down-the-line": "yes", "r.1.hinge": "88" };
    const refused = await addSession(mine, formOf({ ...entries, "r.1.foot-line": "3" }));
    expect(refused.kind).toBe("refused");
    const added = await addSession(mine, formOf(entries));
    if (added.kind !== "added") throw new Error("refused");
    expect(readCaptures(mine.db, mine.student).map((film) => film.view)).toEqual(["face-on"]);
    expect(readSessions(mine.db, mine.student)).toHaveLength(1);
    const facts = loadSessionPage(mine, added.sessionId, undefined)?.parts.flatMap((part) => part.facts);
    expect(facts?.find((fact) => fact.name === "Not filmed")?.value).toBe("down the line");
    const behind = { fundamentalId: "foot-line", view: "down-the-line" } as const;
    expect(readReadBackCandidates(mine.db, mine.student, behind).map((each) => each.filmed)).toEqual(["no"]);
  });
});
