import { inTransaction } from "@/db/client";
import { readFamilyLinks, readFamilyRequests } from "@/db/read/family-links";
import {
  insertFamilyLink,
  updateFamilyLinkRenewed,
  updateFamilyLinkRevoked,
  updateFamilyRequestSettled,
} from "@/db/write/family-links";
import { familyLinkState } from "@/lib/domain/family-link";
import { collectIssues, neededText } from "@/lib/ingest/form-fields";
import { hasPublicAddress } from "../access/second-step";
import { currentInstant } from "../clock";
import { standingOf } from "../consent/consent-gate";
import { kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { keptAt } from "../draft/kept-at";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { latestDay, latestInstant } from "../keeping/watch-clock";
import { holdOnce } from "../people/shown-once";
import { heldLinkKey } from "./family-keys";
import { newFamilySecret } from "./find-family-link";

/** The forms of this desk among those that are kept. */
export const FAMILY_LINK = "family-link";
export const FAMILY_ANSWER = "family-answer";

const DAY_MS = 24 * 3_600_000;
const LONGEST_LABEL = 60;
const LONGEST_ANSWER = 500;

/** What a field refuses, by the code of its issue. */
const WORDS: Readonly<Record<string, string>> = { missing: "missing", "too-long": "long", "hidden-mark": "marks" };

/** Whether consent to share is in force, held against the same clock as the family's door holds it. */
export function mayShare(viewer: StudentViewer): boolean {
  return standingOf({ ...viewer, today: latestDay(viewer) }, viewer.student, "share").kind === "given";
}

/** Whether a link can be made, and why not. */
export function mayMakeLinks(viewer: StudentViewer): "yes" | "demo" | "no-address" | "no-consent" {
  if (viewer.choice === "demo") return "demo";
  if (!hasPublicAddress()) return "no-address";
  return mayShare(viewer) ? "yes" : "no-consent";
}

/** A link that waits to be shown, once. */
export interface HeldFamilyLink {
  readonly label: string;
  readonly path: string;
  readonly expiresAt: string;
}

// Held against the latest time seen, a link counted from a clock that went back would have ended before it is opened.
function endFrom({ db, scope, academy }: StudentViewer): string {
  return new Date(Date.parse(latestInstant({ db, scope })) + academy.linkDays * DAY_MS).toISOString();
}

interface Made {
  readonly kind: "made";
  readonly id: string;
}

/** Makes a link for the family, once; a refused form is kept. */
export function makeFamilyLink(viewer: StudentViewer, data: FormData): Made | Refused {
  return submitOnce<Made>(viewer, kindOf(FAMILY_LINK, viewer.student.studentId), data, () => enterLink(viewer, data));
}

// Two links for "mother" could not be told apart where it stands who looked and who practised.
function isTaken({ db, scope, student }: StudentViewer, label: string): boolean {
  const now = latestInstant({ db, scope });
  return readFamilyLinks(db, student).some(
    (link) => link.label === label && ["open", "ending"].includes(familyLinkState(link, now)),
  );
}

function enterLink(viewer: StudentViewer, data: FormData): Made | Refused {
  const { db, words, student } = viewer;
  const { issues, add } = collectIssues();
  const label = neededText(data, "label", LONGEST_LABEL, add);
  const said = issues.map(({ code, args }) => words.say(`family-link.${WORDS[code] ?? "missing"}`, args));
  if (said.length === 0 && mayMakeLinks(viewer) !== "yes") said.push(words.say("family-link.not-now"));
  if (said.length === 0 && isTaken(viewer, label)) said.push(words.say("family-link.taken"));
  const kind = kindOf(FAMILY_LINK, student.studentId);
  if (said.length > 0) {
    const errors = { label: said[0] ?? "" };
    return { kind: "refused", draftId: keepFormDraft(viewer, kind, data, errors, words.say("family-link.refusal")) };
  }
  const { id, token, tokenHash } = newFamilySecret();
  const expiresAt = endFrom(viewer);
  insertFamilyLink(db, student, { id, tokenHash, label, who: viewer.name, madeAt: currentInstant(), expiresAt });
  const held: HeldFamilyLink = { label, path: `/family/open/${token}`, expiresAt };
  holdOnce(heldLinkKey(viewer, id), held);
  return { kind: "made", id };
}

/** Takes a link back: whoever has it is out with the next request. */
export function revokeFamilyLink(viewer: StudentViewer, id: string): "revoked" | "unchanged" {
  return updateFamilyLinkRevoked(viewer.db, viewer.student, { id, who: viewer.name, now: currentInstant() });
}

/** Lets a link in force end as late as one made today; one that has ended stays so, also where the clock goes back. */
export function renewFamilyLink(viewer: StudentViewer, id: string): "renewed" | "unchanged" {
  const renewed = { id, who: viewer.name, now: latestInstant(viewer), expiresAt: endFrom(viewer) };
  return updateFamilyLinkRenewed(viewer.db, viewer.student, renewed);
}

interface Settled {
  readonly kind: "settled";
}

function sayAnswered(viewer: StudentViewer, requestId: string): string {
  const { words, db, student } = viewer;
  const standing = readFamilyRequests(db, student).find(({ id }) => id === requestId);
  const { settledBy, settledAt, answer } = standing ?? {};
  if (!settledAt) return words.say("family-answer.refusal");
  return words.say("family-answer.before", {
    ...{ who: settledBy ?? "", at: keptAt(viewer, settledAt), answer: answer ?? "" },
  });
}

/**
 * Settles what a family asked for, once, with an answer that it reads; a refused form is kept, also where somebody else has
 * answered meanwhile: the family reads one answer, and what the second one wrote isn't lost.
 */
export function settleFamilyRequest(viewer: StudentViewer, requestId: string, data: FormData): Settled | Refused {
  const kind = kindOf(FAMILY_ANSWER, "", requestId);
  return submitOnce<Settled>(viewer, kind, data, () => {
    const { db, student, words } = viewer;
    const { issues, add } = collectIssues();
    const answer = neededText(data, "answer", LONGEST_ANSWER, add);
    const [issue] = issues;
    const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
      kind: "refused",
      draftId: keepFormDraft(viewer, kind, data, errors, refusal, student.studentId),
    });
    if (issue) {
      const errors = { answer: words.say(`family-answer.${WORDS[issue.code] ?? "missing"}`, issue.args) };
      return refuse(errors, words.say("family-answer.refusal"));
    }
    const settled = { id: requestId, who: viewer.name, now: currentInstant(), answer };
    const outcome = inTransaction(db, () => updateFamilyRequestSettled(db, student, settled));
    return outcome === "settled" ? { kind: "settled" } : refuse({}, sayAnswered(viewer, requestId));
  });
}

/** Whether a student's family asked for something under that id. */
export function hasRequest({ db, student }: StudentViewer, requestId: string): boolean {
  return readFamilyRequests(db, student).some(({ id }) => id === requestId);
}
