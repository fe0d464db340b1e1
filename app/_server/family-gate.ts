import { headers } from "next/headers";
import { notFound } from "next/navigation";
import { readAcademy } from "@/db/read/academies";
import { readConsents, readMergedInto, readStudentAcademy, readStudents } from "@/db/read/students";
import { consentInForce } from "@/lib/domain/consent";
import { type FamilyLink, familyLinkState } from "@/lib/domain/family-link";
import type { AcademyScope, PainScope, StudentScope } from "@/lib/domain/scope";
import { LOCALES, wordsFor } from "@/lib/words/catalogue";
import { familyWords } from "@/lib/words/family-words";
import type { RowOf } from "./access/matrix";
import { todayOf } from "./clock";
import { askedToday } from "./consent/consent-gate";
import { checkReached } from "./door/reached";
import { showsProof } from "./family/family-cookie";
import { type FoundFamilyLink, findLinkOfPage } from "./family/find-family-link";
import type { StudentViewer } from "./gate";
import { latestDay, latestInstant } from "./keeping/watch-clock";
import { readWish, type ViewerWish } from "./viewer";

/** A family on its page: it sees one student, by one link, and has no role. */
export interface FamilyViewer extends StudentViewer {
  readonly link: FamilyLink;
  /** They know what hurts: they said it. */
  readonly pain: PainScope;
}

/**
 * The family of a link in force, for whose student there is consent to share; null: there is no such page. Whatever is wrong, as
 * much is asked, so that the time which an answer takes tells nothing of it.
 */
export function admitFamilyLink(found: FoundFamilyLink, { locale }: Pick<ViewerWish, "locale">): FamilyViewer | null {
  const { db, academyId, choice, link } = found;
  const student = { academyId, studentId: link.studentId } as StudentScope;
  const pain = { studentId: link.studentId } as PainScope;
  const scope = { academyId, userId: null, students: [link.studentId] } as unknown as AcademyScope;
  const academy = readAcademy(db, scope);
  const today = todayOf(academy);
  // A clock that was set back opens no link again that has ended, or whose consent has.
  const there = { db, scope, academy };
  const asked = { today: latestDay(there), academy };
  const { birthYear = null, language = "en" } = readStudents(db, scope)[0] ?? {};
  const holds = [
    found.isThere,
    ["open", "ending"].includes(familyLinkState(link, latestInstant(there))),
    readStudentAcademy(db, link.studentId) === academyId,
    readMergedInto(db, student) === null,
    consentInForce(readConsents(db, student), "share", askedToday(asked, { birthYear })),
  ];
  if (holds.includes(false)) return null;
  const page = wordsFor(LOCALES.find((each) => each === locale) ?? academy.locale);
  const words = familyWords(page, { language });
  return { userId: null, roles: [], name: link.label, choice, db, scope, academy, today, words, student, link, pain };
}

/** The family that a request's cookie lets to a page; null: there is no such page for it. */
export async function admitFamily(
  _row: RowOf<"link">,
  sent: Headers,
  pageId: string,
  wish: Pick<ViewerWish, "locale">,
): Promise<FamilyViewer | null> {
  const found = await findLinkOfPage(pageId);
  if (found === null) return null;
  const isShown = showsProof(found.link, pageId, sent);
  const family = admitFamilyLink(found, wish);
  return isShown ? family : null;
}

/** The family whose page is asked for. Ask before anything is sent: afterwards a refusal can't say 404 any more. */
export async function requireFamily(row: RowOf<"link">, pageId: string): Promise<FamilyViewer> {
  const reached = await checkReached();
  const family = reached.kind === "ours" ? await admitFamily(row, await headers(), pageId, await readWish()) : null;
  return family ?? notFound();
}
