import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { familyNotices } from "@/app/_server/family/family-notices";
import { settleFamilyRequest } from "@/app/_server/family/link-desk";
import { loadFamilyRequest } from "@/app/_server/family/load-family-request";
import type { StudentViewer } from "@/app/_server/gate";
import { readFamilyRequests } from "@/db/read/family-links";
import { insertFamilyRequest } from "@/db/write/family-links";
import { addShared, linkFor, PUBLIC } from "./family-academy";
import { formOf } from "./first-student";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
let dot: StudentViewer;
beforeEach(async () => {
  vi.stubEnv("PROOFBAND_ORIGIN", PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot");
});
afterEach(() => {
  academy.remove();
  vi.unstubAllEnvs();
});

describe("what a family asks for", () => {
  it("is settled once, with an answer", () => {
    const { id } = linkFor(dot, "mother");
    const add = dot.db.sqlite.prepare(
      "INSERT INTO family_request (id, student_id, link_id, kind, asked_at) VALUES ('r1', ?, ?, 'export', '2026-01-05T08:00:00.000Z')",
    );
    add.run(dot.student.studentId, id);
    expect(familyNotices(dot)?.items.map(({ text }) => text)).toEqual(["the family waits for an answer"]);
    expect(settleFamilyRequest(dot, "r1", formOf({ answer: "" })).kind).toBe("refused");
    expect(settleFamilyRequest(dot, "r1", formOf({ answer: "Handed over on paper." })).kind).toBe("settled");
    expect(settleFamilyRequest(dot, "r1", formOf({ answer: "Another answer." })).kind).toBe("refused");
    expect(readFamilyRequests(dot.db, dot.student)[0]).toMatchObject({
      settledBy: dot.name,
      answer: "Handed over on paper.",
    });
    expect(familyNotices(dot)).toBeNull();
  });

  it("answered by two coaches has the first one’s answer; the second one is told whose, when and what, and keeps their text", async () => {
    const asked = { id: "r1", linkId: linkFor(dot, "mother").id, askedAt: "2026-01-05T08:00:00.000Z" };
    insertFamilyRequest(dot.db, dot.student, { ...asked, kind: "export" });
    await academy.add({ userId: "lark", name: "Lark", roles: ["director", "coach"] });
    const lark: StudentViewer = { ...academy.viewer("lark"), student: dot.student };
    expect(settleFamilyRequest(lark, "r1", formOf({ answer: "On paper, on Friday.", draft: randomUUID() }))).toEqual({
      kind: "settled",
    });
    const second = formOf({ answer: "By post.", draft: randomUUID() });
    const refused = settleFamilyRequest(dot, "r1", second);
    if (refused.kind !== "refused") throw new Error("their text is lost");
    expect(settleFamilyRequest(dot, "r1", second).kind).toBe("refused");
    expect(readFamilyRequests(dot.db, dot.student)[0]).toMatchObject({
      settledBy: "Lark",
      answer: "On paper, on Friday.",
    });
    const { parts } = loadFamilyRequest(dot, "r1", { draftId: refused.draftId });
    const form = parts.flatMap(({ forms }) => forms)[0]?.form;
    expect(form?.refusal).toMatch(
      /^Lark answered before you, .*\d+:\d\d.*: “On paper, on Friday.” What you wrote is kept/,
    );
    expect(JSON.stringify(form)).toContain(`"value":"By post."`);
    const without = loadFamilyRequest(dot, "r1", { draftId: randomUUID() });
    expect(without.parts.flatMap(({ forms }) => forms)).toEqual([]);
    expect(JSON.stringify(without)).toContain("On paper, on Friday.");
  });
});
