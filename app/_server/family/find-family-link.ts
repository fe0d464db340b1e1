import { createHash, randomBytes } from "node:crypto";
import type { Database } from "@/db/client";
import { findFamilyLink, findFamilyLinkByHash } from "@/db/read/family-links";
import type { FamilyLink } from "@/lib/domain/family-link";
import { ACADEMY_CHOICES, type AcademyChoice, findAcademyDatabase } from "../database";

/** Twice the 128 bits that can't be guessed. */
const TOKEN_BYTES = 32;
/** A page's id opens nothing; it need only be another one each time. */
const ID_BYTES = 16;

/** The secret of a new link, which is told once, and the hash that is kept of it. */
export function newFamilySecret(): { readonly id: string; readonly token: string; readonly tokenHash: string } {
  const token = randomBytes(TOKEN_BYTES).toString("base64url");
  return { id: randomBytes(ID_BYTES).toString("base64url"), token, tokenHash: hashOf(token) };
}

function hashOf(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}

/** A link with the academy that it belongs to. */
export interface FoundFamilyLink {
  readonly db: Database;
  readonly academyId: string;
  readonly choice: AcademyChoice;
  /** Where there is none, one of nobody, so that whatever is asked next takes as long. */
  readonly link: FamilyLink;
  readonly isThere: boolean;
}

const NOBODY: FamilyLink = {
  ...{ id: "", studentId: "", tokenHash: "", label: "", who: "", madeAt: "" },
  ...{ expiresAt: "1970-01-01T00:00:00.000Z", renewedAt: null, renewedBy: null, revokedAt: null, revokedBy: null },
};

// All academies of this server are asked, whatever the first one says.
async function findIn(ask: (db: Database) => FamilyLink | undefined): Promise<FoundFamilyLink | null> {
  let found: FoundFamilyLink | null = null;
  for (const choice of ACADEMY_CHOICES) {
    const academy = await findAcademyDatabase(choice);
    if (!academy) continue;
    const link = ask(academy.db);
    if (link) found = { ...academy, choice, link, isThere: true };
    else found ??= { ...academy, choice, link: NOBODY, isThere: false };
  }
  return found;
}

/** The link of a secret, whatever became of it; null: this server has no academy. */
export function findLinkOfToken(token: string): Promise<FoundFamilyLink | null> {
  const hash = hashOf(token);
  return findIn((db) => findFamilyLinkByHash(db, hash));
}

/** The link of a page, whatever became of it; null: this server has no academy. */
export function findLinkOfPage(pageId: string): Promise<FoundFamilyLink | null> {
  return findIn((db) => findFamilyLink(db, pageId));
}
