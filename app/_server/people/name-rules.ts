import type { Database } from "@/db/client";
import { readInvitations } from "@/db/read/invitations";
import { findUserByEmail } from "@/db/read/log-ins";
import { readPeople } from "@/db/read/people";
import { currentInstant } from "../clock";

/** A name stands in tables, and beside what its bearer read. */
const LONGEST_NAME = 80;
const EMAIL = /^[^\s@]+@[^\s@]+$/;
const LONGEST_EMAIL = 254;

/** A name as it is kept. */
export function cleanName(text: unknown): string {
  return String(text ?? "")
    .normalize("NFC")
    .replace(/[\p{Cc}\p{Cf}]/gu, "")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, LONGEST_NAME);
}

/** An address as it is kept: with it one logs in, in whatever letters it is typed. */
export function cleanEmail(text: unknown): string {
  return String(text ?? "")
    .normalize("NFC")
    .trim()
    .toLowerCase();
}

/** Where a name is looked for, and whose it may be. */
export interface NamesAsked {
  readonly db: Database;
  readonly academyId: string;
  /** Whose it is already; null: nobody's yet. */
  readonly userId: string | null;
  /** The invitation it stands in; null: in none. */
  readonly invitationId?: string | null;
}

function openInvitations({ db, academyId, invitationId = null }: NamesAsked) {
  const now = currentInstant();
  return readInvitations(db, academyId).filter(
    (each) =>
      each.kind === "join" &&
      each.id !== invitationId &&
      each.usedAt === null &&
      each.revokedAt === null &&
      each.expiresAt > now,
  );
}

/**
 * What is wrong with a name; null: nothing. A name is one person's in an academy, also after they have left and while they are
 * only invited: by it one knows who read a value.
 */
export function nameIssue(asked: NamesAsked, name: string): "empty" | "taken" | null {
  if (name === "") return "empty";
  const plain = name.toLowerCase();
  const names = [
    ...readPeople(asked.db, asked.academyId).filter(({ userId }) => userId !== asked.userId),
    ...openInvitations(asked),
  ].map((each) => each.name.toLowerCase());
  return names.includes(plain) ? "taken" : null;
}

/** What is wrong with an address; null: nothing. */
export function emailIssue(asked: NamesAsked, email: string): "bad" | "taken" | null {
  if (!EMAIL.test(email) || email.length > LONGEST_EMAIL) return "bad";
  const owner = findUserByEmail(asked.db, email);
  if (owner !== undefined && owner !== asked.userId) return "taken";
  return openInvitations(asked).some((each) => each.email === email) ? "taken" : null;
}
