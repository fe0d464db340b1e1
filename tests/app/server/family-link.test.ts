import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { findFormDraft } from "@/app/_server/draft/form-draft";
import { heldLinkKey } from "@/app/_server/family/family-keys";
import { familyNotices, studentFamilyNotices } from "@/app/_server/family/family-notices";
import { makeFamilyLink, mayMakeLinks, renewFamilyLink, revokeFamilyLink } from "@/app/_server/family/link-desk";
import { loadFamilyLinks } from "@/app/_server/family/load-family-links";
import { noteOpening } from "@/app/_server/family/note-opening";
import type { StudentViewer } from "@/app/_server/gate";
import { readFamilyLinks } from "@/db/read/family-links";
import { addShared, cookieOf, familyAt, follow, linkFor, meetAt, PUBLIC, share } from "./family-academy";
import { formOf } from "./first-student";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

const DAY = 24 * 3_600_000;

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
  vi.useRealTimers();
});

const errorOf = (viewer: StudentViewer, label: string): string => {
  const made = makeFamilyLink(viewer, formOf({ label }));
  if (made.kind !== "refused") return "";
  return findFormDraft(viewer, `family-link ${viewer.student.studentId}`, made.draftId)?.errors.label ?? "";
};
const page = (viewer: StudentViewer, wish = {}) => loadFamilyLinks(viewer, randomUUID(), wish);
const pressesOf = (viewer: StudentViewer): string[] =>
  page(viewer).parts.flatMap(({ forms }) => forms.map(({ act }) => act));

describe("a link for the family", () => {
  it("is offered only once the academy has stated its public address and somebody has agreed to share", () => {
    expect(pressesOf(dot)).toEqual(["make"]);
    vi.stubEnv("PROOFBAND_ORIGIN", "");
    expect(pressesOf(dot)).toEqual([]);
    expect(JSON.stringify(page(dot))).toContain("PROOFBAND_ORIGIN set to the public address");
    expect(errorOf(dot, "mother")).toContain("No link can be made just now");
    vi.stubEnv("PROOFBAND_ORIGIN", PUBLIC);
    const bare = addShared(academy, "Bea", { consent: "none" });
    expect(pressesOf(bare)).toEqual([]);
    expect(errorOf(bare, "mother")).toContain("No link can be made just now");
    expect(readFamilyLinks(bare.db, bare.student)).toEqual([]);
    const demo: StudentViewer = { ...dot, choice: "demo" };
    expect(JSON.stringify(page(demo))).toContain("The demo makes no links");
    expect(errorOf(demo, "mother")).toContain("No link can be made just now");
  });

  it("says for whom it is, in at most 60 characters without hidden marks, and differs from those in force", () => {
    linkFor(dot, "mother’s phone");
    expect([
      errorOf(dot, ""),
      errorOf(dot, "x".repeat(61)),
      errorOf(dot, "a\u202Eb"),
      errorOf(dot, "mother’s phone"),
    ]).toEqual([
      "Say for whom it is.",
      "At most 60 characters.",
      "There is a mark in it that can’t be seen. Type it anew.",
      "A link for them is in force already. Renew that one, or say how this one differs.",
    ]);
    expect(readFamilyLinks(dot.db, dot.student)).toHaveLength(1);
  });

  it("is shown this once, under the public address; sent twice it is made once", () => {
    const form = formOf({ label: "father", draft: randomUUID() });
    const made = makeFamilyLink(dot, form);
    expect(makeFamilyLink(dot, form)).toEqual(made);
    if (made.kind !== "made") throw new Error("refused");
    const shown = page(dot, { made: made.id }).parts.flatMap(({ once }) => once?.lines ?? []);
    expect(shown).toEqual([expect.stringMatching(/^https:\/\/range\.example\/family\/open\/[\w-]{43}$/)]);
    expect(page(dot, { made: made.id }).parts.flatMap(({ once }) => once?.lines ?? [])).toEqual([]);
  });

  it("made by one coach is shown to no other", () => {
    const made = makeFamilyLink(dot, formOf({ label: "father" }));
    if (made.kind !== "made") throw new Error("refused");
    expect(heldLinkKey({ ...dot, userId: "another" }, made.id)).not.toBe(heldLinkKey(dot, made.id));
  });

  it("ends after the academy’s days; renewed it ends as late as one made that day, with who and when", async () => {
    const { id, token } = linkFor(dot, "mother");
    const now = Date.now();
    const end = () => Date.parse(readFamilyLinks(dot.db, dot.student)[0]?.expiresAt ?? "");
    expect(Math.round((end() - now) / DAY)).toBe(180);
    expect(familyNotices(dot)).toBeNull();
    vi.useFakeTimers({ now: now + 174 * DAY, toFake: ["Date"] });
    expect(familyNotices(dot)?.items.map(({ student, text }) => [student.href, text])).toEqual([
      [`/students/${dot.student.studentId}/family`, expect.stringContaining("the family’s link for mother ends on")],
    ]);
    expect(studentFamilyNotices(dot)).toHaveLength(1);
    expect(page(dot).parts[0]?.margin).toBe("Ends soon");
    expect(renewFamilyLink(dot, id)).toBe("renewed");
    expect(Math.round((end() - now) / DAY)).toBe(354);
    expect(readFamilyLinks(dot.db, dot.student)[0]).toMatchObject({ renewedBy: dot.name, revokedAt: null });
    expect(familyNotices(dot)).toBeNull();
    vi.setSystemTime(now + 353 * DAY);
    expect((await follow(token)).status).toBe(303);
    vi.setSystemTime(now + 355 * DAY);
    expect((await follow(token)).status).toBe(404);
    expect(renewFamilyLink(dot, id)).toBe("unchanged");
    expect(JSON.stringify(page(dot))).toContain("ended");
  });

  it("is another coach’s to renew, take back or answer as little as it is theirs to make", () => {
    const { id } = linkFor(dot, "mother");
    const bea = addShared(academy, "Bea");
    expect([renewFamilyLink(bea, id), revokeFamilyLink(bea, id)]).toEqual(["unchanged", "unchanged"]);
    expect(readFamilyLinks(dot.db, dot.student)[0]).toMatchObject({ renewedAt: null, revokedAt: null });
  });

  it("taken back, or without consent any more, it is out with the next request, and says so in the list", async () => {
    const { id, token } = linkFor(dot, "mother");
    const other = linkFor(dot, "father");
    const cookie = await cookieOf(other.token, await cookieOf(token));
    expect((await meetAt(`/family/${id}`, cookie)).kind).toBe("pass");
    expect(revokeFamilyLink(dot, id)).toBe("revoked");
    expect(revokeFamilyLink(dot, id)).toBe("unchanged");
    expect([(await meetAt(`/family/${id}`, cookie)).kind, (await meetAt(`/family/${other.id}`, cookie)).kind]).toEqual([
      "refused",
      "pass",
    ]);
    expect((await follow(token)).status).toBe(404);
    dot.db.sqlite.prepare("UPDATE consent SET withdrawn_on = ? WHERE kind = 'share'").run(dot.today);
    expect([await familyAt(other.id, cookie), (await follow(other.token)).status]).toEqual([null, 404]);
    expect(JSON.stringify(page(dot))).toContain("opens nothing: no consent to share");
    share(dot);
    expect((await follow(other.token)).status).toBe(303);
  });

  it("does not come back to life when the machine’s clock is set back", async () => {
    const { id, token } = linkFor(dot, "mother");
    const cookie = await cookieOf(token);
    const later = new Date(Date.now() + 200 * DAY).toISOString();
    dot.db.sqlite.prepare("UPDATE academy SET clock_seen_at = ?").run(later);
    expect([await familyAt(id, cookie), (await follow(token)).status]).toEqual([null, 404]);
    // What is made meanwhile counts its days from the latest time seen, and opens.
    expect((await follow(linkFor(dot, "father").token)).status).toBe(303);
  });

  it("nor does one whose consent has lapsed since, and the coach is told so and renews nothing", async () => {
    const { id, token } = linkFor(dot, "mother");
    const cookie = await cookieOf(token);
    const seen = (days: number): void => {
      const at = new Date(Date.now() + days * DAY);
      dot.db.sqlite.prepare("UPDATE academy SET clock_seen_at = ?").run(at.toISOString());
    };
    dot.db.sqlite.prepare("UPDATE consent SET until_day = ? WHERE kind = 'share'").run(dot.today);
    expect(await familyAt(id, cookie)).not.toBeNull();
    seen(3);
    expect([await familyAt(id, cookie), (await follow(token)).status]).toEqual([null, 404]);
    expect(mayMakeLinks(dot)).toBe("no-consent");
    expect(JSON.stringify(page(dot))).toContain("opens nothing: no consent to share");
    dot.db.sqlite.prepare("UPDATE consent SET until_day = NULL").run();
    seen(175);
    expect(familyNotices(dot)?.items).toHaveLength(1);
    seen(200);
    expect([familyNotices(dot), renewFamilyLink(dot, id)]).toEqual([null, "unchanged"]);
    expect(pressesOf(dot)).toEqual(["make"]);
    expect(errorOf(dot, "mother")).toBe("");
  });

  it("a student who turned out to be another is opened by no link of the first", async () => {
    const { id, token } = linkFor(dot, "mother");
    const cookie = await cookieOf(token);
    const bea = addShared(academy, "Bea");
    dot.db.sqlite
      .prepare("UPDATE student SET merged_into = ? WHERE id = ?")
      .run(bea.student.studentId, dot.student.studentId);
    expect([await familyAt(id, cookie), (await follow(token)).status]).toEqual([null, 404]);
  });
});

describe("openings", () => {
  it("are the page read with the cookie, ten minutes apart; each leaves who looked, and following the link leaves none", async () => {
    const { id, token } = linkFor(dot, "mother");
    const count = (table: string): number =>
      dot.db.sqlite.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get() ?? -1;
    for (let times = 0; times < 5; times++) expect((await follow(token)).status).toBe(303);
    const cookie = await cookieOf(token);
    for (const method of ["HEAD", "GET"]) await meetAt(`/family/${id}`, cookie, method);
    expect([count("family_opening"), count("record_view")]).toEqual([0, 0]);
    const family = await familyAt(id, cookie);
    if (!family) throw new Error("no family");
    const now = Date.now();
    for (const [minutes, openings] of [
      [0, 1],
      [9, 1],
      [11, 2],
      [12, 2],
      [22, 3],
      [5, 4],
    ] as const) {
      vi.useFakeTimers({ now: now + minutes * 60_000, toFake: ["Date"] });
      noteOpening(family);
      expect([minutes, count("family_opening"), count("record_view")]).toEqual([minutes, openings, openings]);
    }
    const view = dot.db.sqlite.prepare("SELECT * FROM record_view").get();
    expect(view).toMatchObject({ who: "mother", role: "family", what: "page", place: "/family/[pageId]" });
    expect(JSON.stringify(page(dot))).toContain("4 times, last");
  });
});
