import { createHash, randomBytes, randomUUID } from "node:crypto";
import { type Database, inTransaction } from "@/db/client";
import { findInvitation, type Invitation } from "@/db/read/invitations";
import { insertInvitation, updatePasswordLinksRevoked } from "@/db/write/invitations";
import type { Role } from "@/lib/domain/person";
import { currentInstant } from "../clock";
import { findAcademyDatabase } from "../database";
import { latestInstant } from "../keeping/watch-clock";

/** Twice the 128 bits that can't be guessed. */
const TOKEN_BYTES = 32;
const DAY_MS = 24 * 3600 * 1000;
/** A link lies in somebody's messages until it is opened: a week, and a forgotten one opens nothing. */
export const LINK_DAYS = 7;
const TOKEN = /^[\w-]{43}$/;

function hashOf(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}

/** Whom a link lets in, or whose password it renews. */
export type LinkFor =
  | {
      readonly kind: "join";
      readonly name: string;
      readonly email: string;
      readonly roles: readonly Role[];
      readonly assists: readonly string[];
    }
  | { readonly kind: "password"; readonly name: string; readonly email: string; readonly userId: string };

/** A link that was made: its path is told this once, and only its hash is kept. */
export interface MadeLink {
  readonly id: string;
  readonly path: string;
}

/** Makes a one-time link. A new one for a password takes the place of those that were made before. */
export function makeLink(db: Database, academyId: string, who: string, wanted: LinkFor): MadeLink {
  const token = randomBytes(TOKEN_BYTES).toString("base64url");
  const id = randomUUID();
  const madeAt = currentInstant();
  // Counted from the latest time seen: by a clock that has gone back it would have ended before anybody opened it.
  const from = Date.parse(latestInstant({ db, scope: { academyId } }));
  const lists =
    wanted.kind === "join"
      ? { roles: wanted.roles.join(","), assists: wanted.assists.join(","), userId: null }
      : { roles: "", assists: "", userId: wanted.userId };
  inTransaction(db, () => {
    if (wanted.kind === "password") updatePasswordLinksRevoked(db, wanted.userId, madeAt);
    insertInvitation(db, {
      ...{ id, academyId, kind: wanted.kind, tokenHash: hashOf(token) },
      ...{ name: wanted.name, email: wanted.email, ...lists, who },
      madeAt,
      expiresAt: new Date(from + LINK_DAYS * DAY_MS).toISOString(),
    });
  });
  return { id, path: `/join/${token}` };
}

/**
 * Whether a link can still be used.
 *
 * @param now the latest time seen (`latestInstant`), so that a clock that goes back opens nothing again
 */
export function isOpen(link: Invitation, now: string): boolean {
  return link.usedAt === null && link.revokedAt === null && link.expiresAt > now;
}

/** A link in force by its token, with the academy it belongs to; null: absent, used, expired or revoked, which look alike. */
export async function findOpenLink(
  token: string,
): Promise<{ readonly db: Database; readonly link: Invitation } | null> {
  if (!TOKEN.test(token)) return null;
  const found = await findAcademyDatabase("own");
  const link = found ? findInvitation(found.db, hashOf(token)) : undefined;
  if (!found || !link || link.academyId !== found.academyId) return null;
  const now = latestInstant({ db: found.db, scope: { academyId: link.academyId } });
  return isOpen(link, now) ? { db: found.db, link } : null;
}
