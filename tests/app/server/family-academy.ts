import { meet } from "@/app/_server/access/meet";
import { heldLinkKey } from "@/app/_server/family/family-keys";
import { type HeldFamilyLink, makeFamilyLink } from "@/app/_server/family/link-desk";
import { openFamily } from "@/app/_server/family/open-family";
import { admitFamily, type FamilyViewer } from "@/app/_server/family-gate";
import { admitToStudent, type StudentViewer } from "@/app/_server/gate";
import { takeHeld } from "@/app/_server/people/shown-once";
import { addStudent } from "@/app/_server/season/student-desk";
import { insertConsent } from "@/db/write/students";
import { wordsFor } from "@/lib/words/catalogue";
import { formOf } from "./first-student";
import type { PeopleAcademy } from "./people-academy";
import { sentTo } from "./people-academy";

/** The public address that these academies have stated; requests reach them by their local one all the same. */
export const PUBLIC = "https://range.example";

/** States the public address, or none; a process is shared by files of tests, so that each takes back what it stated. */
export function stateAddress(address: string | null): void {
  if (address === null) delete process.env.PROOFBAND_ORIGIN;
  else process.env.PROOFBAND_ORIGIN = address;
}

/** A student with a consent to share, added by the owner or by whoever is named; `consent` none: with none to share. */
export function addShared(
  academy: PeopleAcademy,
  alias: string,
  {
    birthYear = "",
    consent = "share",
    by = academy.ownerId,
  }: { readonly birthYear?: string; readonly consent?: "share" | "none"; readonly by?: string } = {},
): StudentViewer {
  const viewer = academy.viewer(by);
  const who = { alias, birthYear, hand: "right", clubs: "", zone: "UTC" };
  const added = addStudent(viewer, formOf({ ...who, consentGivenBy: "mother", consentOnPaper: "yes" }));
  if (added.kind !== "added") throw new Error(alias);
  const again = academy.viewer(by);
  const student = admitToStudent(again, added.studentId);
  if (!student) throw new Error(alias);
  if (consent === "share") share({ ...again, student });
  return { ...again, student };
}

/** Puts a consent to share on file. */
export function share({ db, student }: StudentViewer, until: string | null = null): string {
  const given = { kind: "share", givenBy: "mother", giverIs: "guardian", from: "2020-01-01" } as const;
  const stamp = { now: new Date().toISOString(), newId: () => crypto.randomUUID() };
  return insertConsent(db, student, { ...given, until, withdrawnOn: null }, stamp);
}

/** A link made as the coach's page makes it. */
export function linkFor(viewer: StudentViewer, label: string): { readonly id: string; readonly token: string } {
  const made = makeFamilyLink(viewer, formOf({ label }));
  if (made.kind !== "made") throw new Error(`no link for ${label}`);
  const held = takeHeld<HeldFamilyLink>(heldLinkKey(viewer, made.id));
  return { id: made.id, token: held?.path.slice("/family/open/".length) ?? "" };
}

/** Follows a link, as whatever opens messages does. */
export function follow(token: string, headers: Headers = sentTo()): Promise<Response> {
  return openFamily(new Request(`http://127.0.0.1:3000/family/open/${token}`, { headers }), token);
}

/** What a browser shows that has followed a link, with what it showed before. */
export async function cookieOf(token: string, before = ""): Promise<string> {
  const line = (await follow(token)).headers.getSetCookie()[0] ?? "";
  return [before, line.split(";")[0]].filter((each) => each !== "").join("; ");
}

/** The family behind a cookie at a page; null: there is no such page for it. */
export function familyAt(pageId: string, cookie: string): Promise<FamilyViewer | null> {
  return admitFamily("/family/[pageId]", sentTo({ cookie }), pageId, { locale: null });
}

/** A link of a student made and opened: the family on its page, and what its browser shows. */
export async function openedFamily(
  viewer: StudentViewer,
): Promise<{ readonly family: FamilyViewer; readonly cookie: string }> {
  const { id, token } = linkFor(viewer, "mother’s phone");
  const cookie = await cookieOf(token);
  const family = await familyAt(id, cookie);
  if (!family) throw new Error("no family");
  return { family, cookie };
}

/** How the outermost door meets a request for a page. */
export function meetAt(pathname: string, cookie: string, method = "GET") {
  const request = { method, pathname, search: "", headers: sentTo({ cookie }) };
  return meet(request, { choice: null, locale: "en" }, wordsFor("en"));
}
