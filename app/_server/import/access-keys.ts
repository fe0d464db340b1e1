import { createHash, randomBytes, randomUUID, timingSafeEqual } from "node:crypto";
import { findAccessToken, readAccessTokens } from "@/db/read/access-tokens";
import { readPeople } from "@/db/read/people";
import { insertAccessToken, updateTokenRevoked, updateTokenUsed } from "@/db/write/access-tokens";
import { mayPass } from "../access/matrix";
import { currentInstant, readClock } from "../clock";
import { ACADEMY_CHOICES, findAcademyDatabase } from "../database";
import { admitMachine, admitPerson, type FoundAcademy, type Viewer } from "../gate";

/** Random bytes of a key: twice the 128 bits that can't be guessed. */
const KEY_BYTES = 32;
/** In front of every key, so that it is known for one where it turns up. */
const PREFIX = "pbk_";
/** Keys in force at one time: more programs than one coach has. */
export const MOST_KEYS = 20;
/** A name is shown in a table. */
const LONGEST_NAME = 60;
/** A key that was made is shown on the next page that asks, within this time. */
const SHOWN_MS = 10 * 60_000;

const SHOWN = Symbol.for("proofband.shown-keys");
const shared = globalThis as {
  [SHOWN]?: Map<string, { readonly name: string; readonly key: string; readonly until: number }>;
};

function hashOf(key: string): string {
  return createHash("sha256").update(key).digest("hex");
}

export type KeyMade =
  | { readonly kind: "made"; readonly id: string }
  | { readonly kind: "no-name" }
  | { readonly kind: "too-many" };

/** Makes a key. What is kept is its hash; the key itself waits in memory, to be shown once. */
export function makeKey(viewer: Viewer, given: string): KeyMade {
  const name = given.normalize("NFC").replace(/\s+/g, " ").trim().slice(0, LONGEST_NAME);
  if (name === "") return { kind: "no-name" };
  const live = readAccessTokens(viewer.db, viewer.scope).filter((token) => token.revokedAt === null);
  if (live.length >= MOST_KEYS) return { kind: "too-many" };
  const key = `${PREFIX}${randomBytes(KEY_BYTES).toString("base64url")}`;
  const id = randomUUID();
  insertAccessToken(viewer.db, viewer.scope, {
    id,
    name,
    tokenHash: hashOf(key),
    who: viewer.name,
    createdAt: currentInstant(),
  });
  shared[SHOWN] ??= new Map();
  shared[SHOWN].set(id, { name, key, until: readClock().getTime() + SHOWN_MS });
  return { kind: "made", id };
}

/** A key that was just made, once; null: it was shown, or it isn't this academy's. */
export function takeShownKey(
  viewer: Viewer,
  id: string | undefined,
): { readonly name: string; readonly key: string } | null {
  const waiting = shared[SHOWN];
  if (id === undefined || !waiting) return null;
  const now = readClock().getTime();
  for (const [each, { until }] of waiting) if (until < now) waiting.delete(each);
  const made = waiting.get(id);
  if (!made || !readAccessTokens(viewer.db, viewer.scope).some((token) => token.id === id)) return null;
  waiting.delete(id);
  return { name: made.name, key: made.key };
}

export function revokeKey(viewer: Viewer, id: string): void {
  updateTokenRevoked(viewer.db, viewer.scope, id, currentInstant());
}

/** Who comes with a key: whoever made it, by the key's name. */
export interface KeyHolder {
  readonly viewer: Viewer;
  readonly keyId: string;
  readonly who: string;
}

// A key from before there were accounts is nobody's: it opens only an academy in which still nobody has one.
async function admitHolder(found: FoundAcademy, userId: string | null): Promise<Viewer | null> {
  const wish = { choice: found.choice, locale: "en" };
  if (userId !== null) {
    const viewer = admitPerson(found, userId, wish);
    // Whoever may make no key any more has none either.
    return viewer && mayPass("/settings/keys makeAccessKey", viewer.roles) ? viewer : null;
  }
  return readPeople(found.db, found.academyId).length === 0 ? admitMachine(wish) : null;
}

/** The holder of a key in force; null: it isn't one, or not any more. */
export async function admitKey(key: string): Promise<KeyHolder | null> {
  if (!key.startsWith(PREFIX) || key.length > 200) return null;
  const hash = hashOf(key);
  for (const choice of ACADEMY_CHOICES) {
    const found = await findAcademyDatabase(choice);
    if (!found) continue;
    const token = findAccessToken(found.db, hash);
    if (!token || token.revokedAt !== null || token.academyId !== found.academyId) continue;
    if (!timingSafeEqual(Buffer.from(token.tokenHash), Buffer.from(hash))) continue;
    const viewer = await admitHolder({ ...found, choice }, token.userId);
    if (viewer) return { viewer, keyId: token.id, who: token.name };
  }
  return null;
}

/** Notes that a key was used. */
export function noteKeyUsed({ viewer, keyId }: KeyHolder): void {
  updateTokenUsed(viewer.db, viewer.scope, keyId, currentInstant());
}
