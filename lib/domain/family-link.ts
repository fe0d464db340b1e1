/** A page of one student for the family, opened by a secret that isn't kept. Instants are ISO, in UTC. */
export interface FamilyLink {
  /** Stands in the address of the page, and opens nothing. */
  readonly id: string;
  readonly studentId: string;
  /** SHA-256 of the secret, hexadecimal. */
  readonly tokenHash: string;
  /** For whom: "mother's phone". */
  readonly label: string;
  readonly who: string;
  readonly madeAt: string;
  readonly expiresAt: string;
  /** Null: it ends when it was first to end. */
  readonly renewedAt: string | null;
  readonly renewedBy: string | null;
  /** Null: nobody took it back. */
  readonly revokedAt: string | null;
  readonly revokedBy: string | null;
}

/** What a family may ask for from its page. */
export const FAMILY_REQUESTS = ["erase", "export", "who-looked"] as const;

/** Something that a family asked for; the coach settles it. */
export interface FamilyRequest {
  readonly id: string;
  /** The link it came by; null: that one is erased. */
  readonly linkId: string | null;
  readonly kind: (typeof FAMILY_REQUESTS)[number];
  readonly askedAt: string;
  /** Null: open. */
  readonly settledAt: string | null;
  readonly settledBy: string | null;
  readonly answer: string | null;
}

/** Days before its end from which on a coach is told that a link ends (SEASON.md 21). */
export const END_TOLD_DAYS = 7;
const DAY_MS = 24 * 3_600_000;

/** Whether a link opens at an instant: `open`, `ending` (open, and the coach is told so), `ended` or `revoked`. */
export function familyLinkState(
  link: Pick<FamilyLink, "expiresAt" | "revokedAt">,
  now: string,
): "open" | "ending" | "ended" | "revoked" {
  if (link.revokedAt !== null) return "revoked";
  const left = Date.parse(link.expiresAt) - Date.parse(now);
  if (left <= 0) return "ended";
  return left <= END_TOLD_DAYS * DAY_MS ? "ending" : "open";
}
