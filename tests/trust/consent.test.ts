import { spawnSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { giveConsent, withdrawConsent } from "@/app/_server/consent/consent-desk";
import { standingOf } from "@/app/_server/consent/consent-gate";
import { loadConsent } from "@/app/_server/consent/load-consent";
import { bodyOf } from "@/app/_server/draft/form-draft";
import { confirmImport } from "@/app/_server/import/write-import";
import { addEvent } from "@/app/_server/season/event-desk";
import { saveCorrection } from "@/app/_server/session/correct-desk";
import { addGroup } from "@/app/_server/session/group-desk";
import { saveMove } from "@/app/_server/session/move-desk";
import { addSession } from "@/app/_server/session/session-desk";
import { readDraft } from "@/db/read/drafts";
import { readSessions } from "@/db/read/sessions";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { giverOf } from "@/lib/domain/consent";
import { DOORS, type DoorCase } from "./consent-doors";
import { dayBefore, heldRecords, putConsent, STATES, startDoorCase } from "./consent-states";
import { countCases } from "./count-cases";
import { formOf, sessionFields } from "./own-academy";

const ALIAS = "Zephyrine";
const cases = countCases("P7 no consent in force, no new record", 72);

let at: DoorCase;
let folder: string;
let remove: () => void;

beforeAll(async () => {
  process.env.PORT = "3000";
  ({ at, folder, remove } = await startDoorCase(ALIAS));
}, 60_000);
afterAll(() => remove());

const ago = (days: number): string => dayBefore(at, days);
const put = (state: string): void => putConsent(at, state);
const held = () => heldRecords(at);

const WHY: Readonly<Record<string, RegExp>> = {
  none: /no consent to measure on file/,
  withdrawn: /was withdrawn on/,
  lapsed: /consent to measure ended/,
  "own-age": /Their own consent is needed now/,
  "not-yet": /begins on/,
};

/** What is said where a form came back: above it, or at a field. */
function saidOf(draftId: string): string {
  const row = readDraft(at.viewer.db, at.viewer.scope, draftId);
  if (!row) throw new Error("the form was not kept");
  const { refusal, errors, entries } = bodyOf(row);
  expect(entries.length).toBeGreaterThan(0);
  return [refusal, ...Object.values(errors)].join(" ");
}

describe.each(Object.keys(STATES))("P7: a consent that is %s", (state) => {
  beforeAll(() => put(state));

  it.each(Object.keys(DOORS))("takes nothing new through: %s", async (name) => {
    const before = await held();
    const came = await DOORS[name]?.(at);
    expect(["refused", "nothing-ready"]).toContain(came?.kind);
    expect(await held()).toEqual(before);
    if (came?.draftId !== undefined && name !== "a draw of re-reads") expect(saidOf(came.draftId)).toMatch(/consent/i);
    cases.add();
  });

  it("says on the form why, and what to do", async () => {
    const came = await DOORS["a session"]?.(at);
    const said = saidOf(came?.draftId ?? "");
    expect(said).toMatch(WHY[state] ?? /^$/);
    expect(said).toMatch(/what you typed is kept.*Ask anew/);
  });

  it("shares nothing", () => {
    expect(standingOf(at.mine, at.mine.student, "share").kind).toBe(state);
    cases.add();
  });

  it("is asked anew, and the form that was kept is then saved as it was typed", async () => {
    const fields = sessionFields(at.mine.today);
    const refused = await addSession(at.mine, formOf(fields));
    if (refused.kind !== "refused") throw new Error("taken");
    expect(loadConsent(at.mine).message.text).toMatch(/May we measure, from/);
    const { today, academy } = at.viewer;
    const giverIs = giverOf({
      day: today,
      birthYear: STATES[state]?.born ?? null,
      ownConsentAge: academy.ownConsentAge,
    });
    const terms = { givenBy: "asked anew", giverIs, from: today, until: dayFromNumber(dayNumber(today) + 300) };
    const given = giveConsent(at.mine, formOf({ kinds: "measure", ...terms, onPaper: "yes" }));
    expect(given.kind).toBe("saved");
    const films = readSessions(at.viewer.db, at.mine.student).length;
    const again = await addSession(at.mine, formOf({ ...fields, draft: refused.draftId, version: "1" }));
    expect(again.kind).toBe("added");
    expect(readSessions(at.viewer.db, at.mine.student)).toHaveLength(films + 1);
    // A no to sharing stays one: nobody was asked about that.
    expect(standingOf(at.mine, at.mine.student, "share").kind).toBe(state);
    at.viewer.db.sqlite.prepare("DELETE FROM session WHERE id = ?").run(again.kind === "added" ? again.sessionId : "");
    cases.add();
  });
});

describe("P7: without a consent in force", () => {
  beforeAll(() => put("withdrawn"));

  it.each(["none", "withdrawn", "lapsed", "own-age"])("%s: the command takes nothing, and says why", async (state) => {
    put(state);
    const file = path.join(folder, `${state}.csv`);
    writeFileSync(file, `student,date,club,swing,fundamental,value\n${ALIAS},${ago(2)},7-iron,1,hinge,88.5\n`);
    const before = await held();
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ["--import", "tsx", "app/_commands/import.ts", file, "--consent", "mother", "--confirm"],
      { encoding: "utf8", env: { ...process.env, PROOFBAND_DATA: folder }, timeout: 50_000 },
    );
    expect(status).toBe(1);
    expect(stdout + stderr).toMatch(state === "none" ? /May Zephyrine be measured/ : /so the readings are set aside/);
    expect(await held()).toEqual(before);
    cases.add();
  });

  it("a file saves the others' rows, and those that were set aside come in alone once it was asked anew", async () => {
    put("lapsed");
    const head = "student,date,club,swing,fundamental,value\n";
    const hers = `${ALIAS},${ago(4)},7-iron,1,hinge,87\n`;
    const draft = (text: string) => ({
      ...{ fileName: "two.csv", file: Buffer.from(head + text).toString("base64"), answers: [] },
    });
    const films = (of: DoorCase["mine"]) => readSessions(at.viewer.db, of.student).length;
    const before = [films(at.mine), films(at.other)];
    const both = draft(`${hers}Lark,${ago(4)},7-iron,1,hinge,86\n`);
    expect((await confirmImport(at.viewer, both)).kind).toBe("imported");
    expect([films(at.mine), films(at.other)]).toEqual([before[0], (before[1] ?? 0) + 1]);
    const terms = { givenBy: "mother", giverIs: "guardian", from: ago(0), until: ago(-90), onPaper: "yes" };
    expect(giveConsent(at.mine, formOf({ kinds: "measure", ...terms })).kind).toBe("saved");
    expect((await confirmImport(at.viewer, draft(hers))).kind).toBe("imported");
    expect(films(at.mine)).toBe((before[0] ?? 0) + 1);
    cases.add();
  });

  it("a group is saved without whoever may not be measured, once that is said", async () => {
    put("lapsed");
    const ids = [at.mine, at.other].map(({ student }) => student.studentId);
    const read = Object.fromEntries(ids.map((id) => [`r.@${id}.1.hinge`, "88"]));
    const group = { students: ids.join(","), day: at.viewer.today, clubGroup: "iron", leaveOut: "yes" };
    const films = readSessions(at.viewer.db, at.mine.student).length;
    const added = await addGroup(at.viewer, formOf({ draft: randomUUID(), ...group, ...read }));
    expect(added.kind).toBe("added");
    expect(readSessions(at.viewer.db, at.mine.student)).toHaveLength(films);
    cases.add();
  });

  it("what is on file can be put right, taken away, and a pause for pain be said", async () => {
    put("withdrawn");
    const seen = at.viewer.db.sqlite
      .prepare<[], { id: number; typed: string }>(
        `SELECT reading.id, reading.typed FROM reading JOIN swing ON swing.id = swing_id
         WHERE swing.session_id = 'film3' AND swing.number = 1`,
      )
      .get();
    const mend = {
      "was.1.hinge": seen?.typed ?? "",
      "seen.1.hinge": `${seen?.id}:0`,
      "r.1.hinge": "70",
      why: "misread",
    };
    expect((await saveCorrection(at.mine, "film3", formOf(mend))).kind).toBe("saved");
    const pause = { kind: "injury", day: at.viewer.today, place: "back" };
    expect((await addEvent(at.mine, formOf(pause))).kind).toBe("added");
    const give = { to: at.other.student.studentId, why: "hers", signs: "keep" };
    const wish = { kind: "move", sessionId: "film4" } as const;
    expect((await saveMove(at.mine, wish, formOf(give))).kind).toBe("saved");
    cases.add(3);
  });

  it("a no said under one name isn't outlived by a yes under the other: they can't be joined before it is settled", async () => {
    put("withdrawn");
    const wish = { kind: "merge", sessionId: null } as const;
    const join = { to: at.other.student.studentId, why: "one person", signs: "keep" };
    const came = await saveMove(at.mine, wish, formOf({ draft: randomUUID(), ...join }));
    expect(came.kind === "refused" ? saidOf(came.draftId) : came.kind).toMatch(/withdrawn under one of the two/);
    cases.add();
  });

  it("withdrawing ends every paper of that kind, one that is still to begin too, and no other kind", () => {
    put("none");
    const paper = (from: number, until: number) => {
      const terms = { givenBy: "mother", giverIs: "guardian", from: ago(-from), until: ago(-until), onPaper: "yes" };
      const data = formOf(terms);
      for (const kind of ["measure", "share"]) data.append("kinds", kind);
      expect(giveConsent(at.mine, data).kind).toBe("saved");
    };
    paper(0, 100);
    paper(101, 200);
    const no = { kinds: "measure", withdrawnOn: at.viewer.today, withdrawnBy: "father" };
    expect(withdrawConsent(at.mine, formOf(no)).kind).toBe("saved");
    expect(standingOf(at.mine, at.mine.student, "measure").kind).toBe("withdrawn");
    expect(standingOf(at.mine, at.mine.student, "share").kind).toBe("given");
    const later = { ...at.mine, today: ago(-150) };
    expect(standingOf(later, at.mine.student, "measure").kind).toBe("withdrawn");
    cases.add();
  });
});

describe("with a consent in force", () => {
  beforeAll(() => {
    put("none");
    const { today } = at.viewer;
    const terms = { givenBy: "mother", giverIs: "guardian", from: today, until: today, onPaper: "yes" };
    expect(giveConsent(at.mine, formOf({ kinds: "measure", ...terms })).kind).toBe("saved");
    // The pause of above is taken back: while practice rests no film is asked for, consent or not.
    at.viewer.db.sqlite.exec("UPDATE event SET voided_at = recorded_at WHERE kind = 'injury'");
  });

  it.each(Object.keys(DOORS))("on its only day every door takes what it refused: %s", async (name) => {
    const came = await DOORS[name]?.(at);
    expect(["refused", "nothing-ready", "not-there", "not-open"]).not.toContain(came?.kind);
  });
});
