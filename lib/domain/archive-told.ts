import type { FamilyLink, FamilyRequest } from "./family-link";
import type { Told } from "./told";
import type { Waiting } from "./waiting";

/**
 * What an archive tells of a student beside the record: who had them in charge, what the family was shown and asked, who looked,
 * what was announced. It stands in tables of the archive and not in its structure, because it is history of one academy and can't
 * be put back in another: a link that opened there opens nothing here, and nobody here looked.
 */
export interface ToldOfStudent {
  readonly charges: readonly ToldCharge[];
  readonly familyLinks: readonly ToldLink[];
  readonly familyOpenings: readonly ToldOpening[];
  readonly familyRequests: readonly ToldRequest[];
  readonly told: readonly ToldText[];
  readonly waiting: readonly ToldWaiting[];
  readonly fairAllocations: readonly ToldFairAllocation[];
  readonly recordViews: readonly ToldView[];
  readonly retentionNotices: readonly ToldNotice[];
  readonly carriedLooks: readonly ToldCarriedLook[];
  readonly changes: readonly ToldChange[];
}

/** Each row bears the id of the student whose archive it stands in, also one that was made for who turned out to be the same. */
interface Of {
  readonly studentId: string;
}

/** Somebody's time in charge; people are called by their names. */
export interface ToldCharge extends Of {
  readonly coach: string;
  readonly kind: string;
  readonly from: string | null;
  readonly note: string | null;
  readonly fromDay: string;
  readonly untilDay: string | null;
  readonly who: string;
  readonly recordedAt: string;
  readonly endedAt: string | null;
  readonly endedBy: string | null;
}

/** A page that was made for the family; not the secret that opened it, nor anything by which that could be known. */
export type ToldLink = Of & Omit<FamilyLink, "tokenHash">;

export interface ToldOpening extends Of {
  readonly linkId: string;
  readonly label: string;
  readonly openedAt: string;
}

export type ToldRequest = Of & Omit<FamilyRequest, "id">;

/** What the family was told, as it was sent. */
export type ToldText = Of &
  Omit<Told, "id" | "findings"> & {
    /** JSON: the changes that it tells, by fundamental. */
    readonly findings: string;
  };

/** A stretch without a drill on purpose. */
export type ToldWaiting = Of & Omit<Waiting, "id">;

export interface ToldView extends Of {
  readonly who: string;
  readonly role: string;
  readonly what: string;
  readonly place: string;
  readonly viewedAt: string;
}

export interface ToldNotice extends Of {
  readonly kind: string;
  readonly linkId: string | null;
  readonly announcedAt: string;
  readonly dueDay: string;
  readonly heldAt: string | null;
  readonly heldBy: string | null;
  readonly why: string | null;
}

/** Which of two drills the student drew in a test by the lot, and what came of it. */
export interface ToldFairAllocation extends Of {
  readonly fundamentalId: string;
  readonly clubGroup: string;
  readonly firstDrill: string;
  readonly secondDrill: string;
  /** 0: the first drill; 1: the second. */
  readonly arm: number;
  /** In the fundamental's unit; null: no look has taken it in. */
  readonly gain: number | null;
  readonly day: string;
  readonly who: string;
  readonly recordedAt: string;
}

/** A look as another academy said it. */
export interface ToldCarriedLook extends Of {
  readonly sessionId: string;
  readonly fundamentalId: string;
  readonly clubGroup: string;
  readonly saidBy: string;
  readonly policyVersion: string;
  readonly noiseModelName: string;
  /** JSON: what was said. */
  readonly body: string;
}

/** What was moved, split, merged or changed of a student's record. */
export interface ToldChange extends Of {
  /** `this`: it was this student's record; `other`: it became this student's. */
  readonly record: "this" | "other";
  readonly kind: string;
  readonly who: string;
  readonly why: string;
  readonly changedAt: string;
  readonly undoneAt: string | null;
  readonly undoneBy: string | null;
}
