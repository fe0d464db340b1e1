import { and, eq, isNull } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { ownKeys } from "../read/access-tokens";
import { accessToken } from "../schema-entry";

/** A key to be kept: never the key itself, only its SHA-256. */
export interface NewAccessToken {
  readonly id: string;
  readonly name: string;
  readonly tokenHash: string;
  readonly who: string;
  readonly createdAt: string;
}

export function insertAccessToken(db: Database, scope: AcademyScope, made: NewAccessToken): void {
  db.orm
    .insert(accessToken)
    .values({ academyId: scope.academyId, userId: scope.userId, ...made })
    .run();
}

/** `unchanged`: there is no such key in force. */
export function updateTokenRevoked(
  db: Database,
  scope: AcademyScope,
  id: string,
  now: string,
): { readonly kind: "revoked" | "unchanged" } {
  const { changes } = db.orm
    .update(accessToken)
    .set({ revokedAt: now })
    .where(and(eq(accessToken.id, id), ownKeys(scope), isNull(accessToken.revokedAt)))
    .run();
  return { kind: changes === 1 ? "revoked" : "unchanged" };
}

export function updateTokenUsed(db: Database, scope: AcademyScope, id: string, now: string): void {
  db.orm
    .update(accessToken)
    .set({ lastUsedAt: now })
    .where(and(eq(accessToken.id, id), eq(accessToken.academyId, scope.academyId)))
    .run();
}
