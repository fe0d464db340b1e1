import { afterAll, beforeAll, expect, it } from "vitest";
import { readUploadedArchive } from "@/app/_server/archive/archive-desk";
import { admitToStudent } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { readEvents } from "@/db/read/events";
import { readConsents, readStudents } from "@/db/read/students";
import { type Archive, archiveText } from "@/lib/domain/archive";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { carriedText } from "@/lib/domain/carried-look";
import { consentInForce } from "@/lib/domain/consent";
import { oneStudent, SAID } from "../../lib/ingest/carried-archive";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";

let academy: HandingAcademy;
beforeAll(async () => {
  academy = await startHandingAcademy();
}, 60_000);
afterAll(() => academy.remove());

it("a coach without students takes one in: the student is theirs, the academy's rules stay, the reader changes that day", async () => {
  const cy = academy.viewer("cy");
  expect(readStudents(cy.db, cy.scope)).toEqual([]);
  const archive = oneStudent({ carried: [carriedText(SAID)] });
  const season = { ...archive, rules: { ...archive.rules, seasonStart: "2026-02-01" } };
  const file = Buffer.from(archiveText(season)).toString("base64");
  const written = await confirmImport(cy, { fileName: "jun.json", file, answers: [] });
  expect(written).toMatchObject({ kind: "imported", students: 1, sessions: 1 });
  const names = (userId: string) => {
    const viewer = academy.viewer(userId);
    return readStudents(viewer.db, viewer.scope).map(({ alias }) => alias);
  };
  expect([names("cy"), names("bo"), names(academy.ownerId)]).toEqual([["Jun"], ["Nia"], ["Jun", "Nia"]]);
  expect(academy.viewer("cy").academy.seasonStart).not.toBe("2026-02-01");
  const jun = admitToStudent(academy.viewer("cy"), "s-far");
  if (!jun) throw new Error("no Jun");
  expect(readEvents(academy.db, jun)).toMatchObject([{ kind: "reader-change", day: cy.today, note: "Cy" }]);
});

it("its consents come as history, said in the preview: to measure and to share is asked for anew, whoever wrote the file", async () => {
  const cy = academy.viewer("cy");
  const made = oneStudent({});
  const given = { givenBy: "mother", giverIs: "guardian", withdrawnOn: null, withdrawnBy: null } as const;
  const row = { ...given, fromDay: "2026-01-01", recordedAt: "2026-01-01T10:00:00.000Z" };
  const consents = [
    { ...row, id: "c-measure", kind: "measure" as const, untilDay: null },
    { ...row, id: "c-share", kind: "share" as const, untilDay: "2099-12-31" },
    { ...row, id: "c-over", kind: "share" as const, untilDay: "2026-02-01" },
  ];
  const [jun] = made.students as [Archive["students"][number]];
  const sessions = jun.sessions.map((session) => ({ ...session, id: "film-jo" }));
  const jo = { ...jun, id: "s-jo", alias: "Jo", sessions, consents };
  const archive = { ...made, saidBy: cy.academy.name, students: [jo] };
  const draft = {
    fileName: "jo.json",
    file: Buffer.from(archiveText(archive)).toString("base64"),
    answers: [],
  };
  const { result } = await readUploadedArchive(cy, draft, "archive");
  expect(result.kind === "archive" && result.differences).toContainEqual({ code: "consents", args: { count: 3 } });
  expect(cy.words.say("archive-import.difference.consents", { count: 3 })).toContain("3 consents are kept as history");
  expect(await confirmImport(cy, draft)).toMatchObject({ kind: "imported", students: 1 });
  const before = dayFromNumber(dayNumber(cy.today) - 1);
  const student = admitToStudent(academy.viewer("cy"), "s-jo");
  if (!student) throw new Error("no Jo");
  const kept = readConsents(academy.db, student);
  expect(kept.map(({ kind, until }) => [kind, until]).toSorted()).toEqual([
    ["measure", before],
    ["share", "2026-02-01"],
    ["share", before],
  ]);
  const asked = { day: cy.today, birthYear: 2012, ownConsentAge: 16 };
  for (const kind of ["measure", "share"] as const) expect(consentInForce(kept, kind, asked)).toBe(false);
});
