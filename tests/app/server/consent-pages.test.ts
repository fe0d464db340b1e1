import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { saveDeparture, withdrawConsent } from "@/app/_server/consent/consent-desk";
import { loadConsent, loadConsentForm, loadWithdrawal } from "@/app/_server/consent/load-consent";
import { bodyOf } from "@/app/_server/draft/form-draft";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadSeason } from "@/app/_server/season/load-season";
import { loadPractice } from "@/app/_server/season/practice-desk";
import { loadRecordPage, loadSessionForm } from "@/app/_server/session/load-forms";
import { loadKeepingForm, loadKeepingRoom, saveKeeping } from "@/app/_server/settings/keeping-desk";
import { AskingText } from "@/app/_ui/consent/asking-text";
import { Roster } from "@/app/_ui/roster/roster";
import { readAcademy } from "@/db/read/academies";
import { readDraft } from "@/db/read/drafts";
import { readStudent } from "@/db/read/students";
import { admitFilmed, admitNew, formOf } from "./corrected-season";
import { enterAsOwner, startAcademy } from "./own-academy-data";

let viewer: Viewer;
let zephyrine: StudentViewer;
let lark: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  viewer = await enterAsOwner(viewer);
  zephyrine = await admitFilmed(viewer, "Zephyrine");
  lark = await admitNew(viewer, "Lark", "left");
});
afterAll(() => remove());

const roster = (who?: string) => loadRoster(viewer, { sort: "name", page: undefined, who });
const aliases = async (who?: string) => (await roster(who)).evidence.rows.map((row) => row.studentId);
function errorsOf(draftId: string): Readonly<Record<string, string>> {
  const row = readDraft(viewer.db, viewer.scope, draftId);
  return row ? bodyOf(row).errors : {};
}

describe("who has left", () => {
  it("is hidden on the roster with all that is told of them, counted, and shown where that is wished", async () => {
    expect(await aliases()).toHaveLength(2);
    expect((await roster()).departed).toBeNull();
    expect(saveDeparture(zephyrine, formOf({ departedOn: viewer.today })).kind).toBe("saved");
    expect(readStudent(viewer.db, zephyrine.student).departedOn).toBe(viewer.today);
    const hidden = await roster();
    expect(JSON.stringify(loadRecordPage(viewer))).not.toContain("Zephyrine");
    expect(JSON.stringify(hidden)).not.toContain("Zephyrine");
    expect(hidden.departed).toEqual({
      href: "/students?sort=name&who=all",
      label: "One student has left: show that record too",
    });
    const shown = await roster("all");
    expect(shown.evidence.rows).toHaveLength(2);
    expect(shown.departed?.href).toBe("/students?sort=name");
    for (const { href } of shown.evidence.sort.links) expect(href).toContain("who=all");
  });

  it("comes back with an empty field, and a day to come is refused with what was typed", async () => {
    const ahead = saveDeparture(zephyrine, formOf({ draft: randomUUID(), departedOn: "2999-01-01" }));
    expect(ahead.kind === "refused" ? errorsOf(ahead.draftId).departedOn : "").toMatch(/after today/);
    expect(saveDeparture(zephyrine, formOf({ departedOn: "" })).kind).toBe("saved");
    expect(await aliases()).toHaveLength(2);
  });

  it("an academy whose students have all left isn't taken for an empty one", async () => {
    for (const student of [zephyrine, lark]) saveDeparture(student, formOf({ departedOn: viewer.today }));
    const empty = await roster();
    expect([empty.start, empty.evidence.rows.length]).toEqual([null, 0]);
    const markup = renderToStaticMarkup(
      createElement(Roster, {
        model: empty,
        seenAction: "/x",
        dealtAction: "/x",
        viewActions: { keep: "/keep", forget: "/forget" },
      }),
    );
    expect(markup).toContain("2 students have left");
    for (const student of [zephyrine, lark]) saveDeparture(student, formOf({ departedOn: "" }));
  });
});

describe("a consent on the pages", () => {
  it("that is withdrawn is told on the season and the roster, and there is nothing more to withdraw", async () => {
    expect((await loadSeason(lark, undefined)).notices.join(" ")).not.toMatch(/consent/i);
    const no = { kinds: "measure", withdrawnOn: viewer.today, withdrawnBy: "father" };
    expect(withdrawConsent(lark, formOf(no)).kind).toBe("saved");
    expect((await loadSeason(lark, undefined)).notices.join(" ")).toMatch(/was withdrawn on/);
    const { consents } = await roster();
    expect(consents?.items.map((item) => item.student.label)).toEqual(["Lark"]);
    expect(() => loadWithdrawal(lark, { draftId: randomUUID() })).toThrow(/NEXT_HTTP_ERROR_FALLBACK;404/);
    expect(loadConsent(lark).parts[2]?.table?.rows[0]?.cells).toContain("father");
    expect(loadConsent(lark).parts[2]?.table?.download?.href).toContain("of=consent");
  });

  it("that is missing is told above a form before anything is typed into it", async () => {
    const told = /was withdrawn on .* nothing new can be recorded until one is entered/;
    expect((await loadSessionForm(lark, randomUUID())).explains).toMatch(told);
    expect(loadPractice(lark, {}).form.explains).toMatch(told);
    expect((await loadSessionForm(zephyrine, randomUUID())).explains).not.toMatch(/consent/);
    expect(loadPractice(zephyrine, {}).form.explains).not.toMatch(/consent/);
  });

  it("the form begins with what is missing, for a year from today", () => {
    const { parts } = loadConsentForm(lark, { draftId: randomUUID() });
    const value = (name: string) => parts[0]?.fields.find((field) => field.name === name)?.value;
    expect(value("kinds")).toBe("measure,share");
    expect(value("from")).toBe(viewer.today);
    expect(value("giverIs")).toBe("guardian");
    const other = loadConsentForm(zephyrine, { draftId: randomUUID() }).parts[0];
    expect(other?.fields.find((field) => field.name === "kinds")?.value).toBe("share");
  });

  it("the message stands in a field that can be copied and is labelled, and once more for paper", () => {
    const { message } = loadConsent(lark);
    const markup = renderToStaticMarkup(createElement(AskingText, { model: message }));
    expect(markup).toMatch(/<label for="asking-text"/);
    expect(markup).toMatch(/<textarea id="asking-text"[^>]*readonly/i);
    expect(markup.split("Dear family of Lark").length).toBe(3);
  });
});

describe("how long an academy keeps things", () => {
  it("is said with bounds and reasons, kept, and holds for the message from then on", () => {
    const room = loadKeepingRoom(viewer);
    expect(room.reasons.paragraphs.join(" ")).toMatch(/Common practice, no source/);
    const form = loadKeepingForm(viewer, randomUUID());
    expect(form.parts[0]?.fields.map(({ name, value }) => [name, value])).toEqual([
      ["keepMonths", "24"],
      ["linkDays", "180"],
      ["ownConsentAge", "16"],
    ]);
    expect(form.parts[0]?.fields[0]?.hint).toContain("From 1 to 120");
    const wish = { keepMonths: "12", linkDays: "90", ownConsentAge: "14" };
    expect(saveKeeping(viewer, formOf(wish)).kind).toBe("saved");
    const academy = readAcademy(viewer.db, viewer.scope);
    expect([academy.keepMonths, academy.linkDays, academy.ownConsentAge]).toEqual([12, 90, 14]);
    expect(loadConsent({ ...lark, academy }).message.text).toContain("12 months");
  });

  it("a lower age of own consent ends a guardian's word at once: born 2010, 14 is surely reached", async () => {
    const academy = readAcademy(viewer.db, viewer.scope);
    expect(loadConsent({ ...zephyrine, academy }).parts[0]?.heading).toMatch(/own word is needed since/);
    expect((await loadSeason({ ...zephyrine, academy }, undefined)).notices.join(" ")).toMatch(/old enough to speak/);
  });

  it("out of bounds is refused with what was typed, and the demo's stands still", () => {
    const wrong = saveKeeping(
      viewer,
      formOf({ draft: randomUUID(), keepMonths: "0", linkDays: "90", ownConsentAge: "14" }),
    );
    expect(wrong.kind === "refused" ? errorsOf(wrong.draftId).keepMonths : "").toMatch(/from 1 to 120/);
    const demo = { ...viewer, academy: { ...viewer.academy, kind: "demo" as const } };
    const wish = { draft: randomUUID(), keepMonths: "12", linkDays: "90", ownConsentAge: "14" };
    expect(saveKeeping(demo, formOf(wish)).kind).toBe("refused");
  });
});
