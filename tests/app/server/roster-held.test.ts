import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { noteLooks } from "@/app/_server/access/looks";
import { beginJudging, noteJudged } from "@/app/_server/analysis/judging";
import { eraseWhenMeant } from "@/app/_server/erase/erase-desk";
import { admitToStudent, type Viewer, wholeAcademy } from "@/app/_server/gate";
import { heldRoster } from "@/app/_server/roster/held-roster";
import { keptTracks } from "@/app/_server/roster/kept-tracks";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { forgetRosterView, keepRosterView } from "@/app/_server/roster/view-desk";
import { inTransaction, openDatabase } from "@/db/client";
import { deleteDraft, insertDraft, updateDraftBody } from "@/db/write/drafts";
import { insertHeight } from "@/db/write/students";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { addTo, form } from "./inviting";
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

function scopeOf(studentId: string) {
  const scope = admitToStudent(academy.ada, studentId);
  if (!scope) throw new Error("nobody");
  return scope;
}

function film(studentId: string, id: string, at: number): void {
  const { ada } = academy;
  const day = filmDays(ada)[at] ?? "";
  enterFilm(ada, scopeOf(studentId), { id, day, reference: null, now: `${day}T18:00:00.000Z` }, [81, 82, 83]);
}

function grow(studentId: string, cm: number): void {
  insertHeight(academy.db, scopeOf(studentId), { day: filmDays(academy.ada)[0] ?? "", cm });
}

type Words = Readonly<Record<string, string | undefined>>;

const aliases = async (viewer: Viewer, words: Words) =>
  (await loadRoster(viewer, words)).evidence.rows.map(({ alias }) => alias);

describe("tracks in memory", () => {
  const kept = () => keptTracks(academy.db, wholeAcademy(academy.ada.scope));

  it("hold while nothing was judged anew, whatever else is written", () => {
    const before = kept();
    academy.db.sqlite.exec("UPDATE academy SET owner_name = 'Ada L'");
    expect(kept()).toBe(before);
    expect([...before.byStudent.keys()].sort()).toEqual([academy.nia, tove].sort());
  });

  it("read again only who was judged anew, and what the page says follows", async () => {
    const before = kept();
    film(tove, "three", 6);
    await loadRules(academy.ada);
    const after = kept();
    expect(after.byStudent.get(academy.nia)).toBe(before.byStudent.get(academy.nia));
    expect(after.byStudent.get(tove)?.tracks[0]?.sessions).toHaveLength(2);
    expect(before.byStudent.get(tove)?.tracks[0]?.sessions).toHaveLength(1);
  });

  it("whoever turns pages asks for the same students; as soon as anything of anybody is written they are worked out anew", async () => {
    const made = vi.fn(async () => ({}));
    const ask = (viewer: Viewer, asked = "x") => heldRoster(viewer, asked, made);
    const [ada, bo] = [academy.ada, academy.viewer("bo")];
    const first = await ask(ada);
    expect(await ask(ada)).toBe(first);
    expect(await ask({ ...ada, today: "2000-01-01" })).not.toBe(first);
    await ask(ada);
    await ask(ada, "other");
    await ask(bo);
    expect(made).toHaveBeenCalledTimes(5);
    await ask(bo);
    expect(made).toHaveBeenCalledTimes(5);
    await ask({ ...bo, scope: { ...bo.scope, students: [] } });
    expect(made).toHaveBeenCalledTimes(6);
    await ask(bo);
    grow(tove, 150);
    await ask(bo);
    expect(made).toHaveBeenCalledTimes(8);
  });

  it("hold while somebody looks at a student, types, or prefers: no roster rests on it", async () => {
    const made = vi.fn(async () => ({}));
    const { ada, db } = academy;
    const first = await heldRoster(ada, "x", made);
    const looks = () => db.sqlite.prepare("SELECT count(*) FROM record_view").pluck().get();
    const before = Number(looks());
    noteLooks(ada, [scopeOf(tove)], "/students/[studentId]");
    expect(Number(looks())).toBe(before + 1);
    const typed = { id: "typed", kind: "student", body: "{}", updatedAt: "2026-09-01T10:00:00.000Z" };
    insertDraft(db, ada.scope, typed);
    updateDraftBody(db, ada.scope, "typed", "[]");
    deleteDraft(db, ada.scope, "typed");
    keepRosterView(ada, "sort=name");
    forgetRosterView(ada);
    expect(await heldRoster(ada, "x", made)).toBe(first);
    expect(made).toHaveBeenCalledTimes(1);
  });

  it("a change within the same transaction as a quiet write isn't quiet, nor is one by another connection", async () => {
    const made = vi.fn(async () => ({}));
    const { ada, db } = academy;
    await heldRoster(ada, "x", made);
    inTransaction(db, () => {
      keepRosterView(ada, "sort=last");
      grow(tove, 151);
    });
    await heldRoster(ada, "x", made);
    expect(made).toHaveBeenCalledTimes(2);
    const other = openDatabase(db.file);
    try {
      other.sqlite.prepare("UPDATE student SET alias = 'Touvé' WHERE id = ?").run(tove);
    } finally {
      other.close();
    }
    await heldRoster(ada, "x", made);
    expect(made).toHaveBeenCalledTimes(3);
  });

  it("nothing is held while something isn't judged yet", async () => {
    const made = vi.fn(async () => ({}));
    const { ada } = academy;
    const over = beginJudging(ada.academy.id);
    await heldRoster(ada, "x", made);
    await heldRoster(ada, "x", made);
    over();
    noteJudged(ada.academy.id, "not-kept");
    await heldRoster(ada, "x", made);
    await heldRoster(ada, "x", made);
    noteJudged(ada.academy.id, "kept");
    expect(made).toHaveBeenCalledTimes(4);
    await heldRoster(ada, "x", made);
    await heldRoster(ada, "x", made);
    expect(made).toHaveBeenCalledTimes(5);
  });

  it("each page says what is on file now: a name, a charge and a consent that change under what is held", async () => {
    const { ada } = academy;
    const bo = academy.viewer("bo");
    const names = async (viewer: Viewer) => (await aliases(viewer, { sort: "name" })).sort();
    const [all, own] = [await names(ada), await names(bo)];
    expect(await names(ada)).toEqual(all);
    academy.db.sqlite.prepare("UPDATE student SET alias = 'Anew' WHERE id = ?").run(tove);
    expect(await names(ada)).toEqual(all.map((each) => (each === "Tóve" ? "Anew" : each)).sort());
    // What one viewer may see never comes out of what another's was made of.
    expect(await names(academy.viewer("bo"))).toEqual(own.map((each) => (each === "Tóve" ? "Anew" : each)).sort());
    const consents = (await loadRoster(ada, {})).consents?.items.length ?? 0;
    academy.db.sqlite.prepare("DELETE FROM consent").run();
    expect((await loadRoster(ada, {})).consents?.items.length).toBe(all.length);
    expect(consents).toBeLessThan(all.length);
  });

  it("nothing is held of what was written to while it was made", async () => {
    const made = vi.fn(async () => grow(tove, 150));
    await heldRoster(academy.ada, "y", made);
    await heldRoster(academy.ada, "y", made);
    expect(made).toHaveBeenCalledTimes(2);
  });

  it("let go of whoever is erased", async () => {
    kept();
    await loadRoster(academy.ada, { sort: "name" });
    await eraseWhenMeant({ ...academy.ada, student: scopeOf(tove) }, form({ reason: "asked", alias: "Tóve" }));
    const key = Symbol.for("proofband.kept-tracks");
    const memory = (globalThis as { [key]?: ReadonlyMap<string, unknown> })[key];
    expect([...(memory?.keys() ?? [])]).not.toContain(academy.ada.academy.id);
    const held = (globalThis as { [key: symbol]: ReadonlyMap<string, unknown> })[Symbol.for("proofband.held-rosters")];
    expect([...(held?.keys() ?? [])].filter((name) => name.startsWith(academy.ada.academy.id))).toEqual([]);
    expect([...kept().byStudent.keys()]).toEqual([academy.nia]);
  });
});
