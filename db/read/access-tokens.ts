import { and, asc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { accessToken } from "../schema-entry";

/** A key as kept, without its hash. */
export type AccessToken = Omit<typeof accessToken.$inferSelect, "academyId" | "tokenHash">;

const { id, name, who, userId, createdAt, lastUsedAt, revokedAt, tokenHash, academyId } = accessToken;
const fields = { id, name, who, userId, createdAt, lastUsedAt, revokedAt };

/** Everybody sees the own keys; a program on this machine sees all. */
export function ownKeys(scope: AcademyScope) {
  const here = eq(academyId, scope.academyId);
  return scope.userId === null ? here : and(here, eq(userId, scope.userId));
}

/** In the order of making, revoked ones too. */
export function readAccessTokens(db: Database, scope: AcademyScope): AccessToken[] {
  return db.orm.select(fields).from(accessToken).where(ownKeys(scope)).orderBy(asc(createdAt), asc(id)).all();
}

/** A key and whose it is, by the hash of what was shown; revoked ones too. For the gate, which has no scope yet. */
export function findAccessToken(
  db: Database,
  hash: string,
): (AccessToken & { readonly academyId: string; readonly tokenHash: string }) | undefined {
  return db.orm
    .select({ ...fields, academyId, tokenHash })
    .from(accessToken)
    .where(and(eq(tokenHash, hash)))
    .get();
}
