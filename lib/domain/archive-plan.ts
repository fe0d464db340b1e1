import type { ArchivedReread, ArchivedRules, ArchivedStudent } from "./archive";

/** What an archive adds to an academy: all of it or nothing is written. */
export interface ArchivePlan {
  readonly fileName: string;
  /** Digest of the archive's one text, so that the same content is taken in once whatever it was wrapped in. */
  readonly contentHash: string;
  /** First day of the season that the academy takes over; null: it keeps its own. */
  readonly seasonStart: string | null;
  /** Only the rules that are to be added: those that the academy has are not among them. */
  readonly rules: Omit<ArchivedRules, "zone" | "locale" | "seasonStart">;
  /** Under the aliases that they get here. */
  readonly students: readonly ArchivedStudent[];
  readonly rereads: readonly ArchivedReread[];
  /** `others`: students of others are here, so the change of reader is dated and consents end; `nobody`: everything goes on as it was. */
  readonly among: "others" | "nobody";
}
