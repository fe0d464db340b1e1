import { and, desc, eq } from "drizzle-orm";
import type { Database } from "../client";
import { account, authSession, user } from "../schema-people";

/** Somebody's log-in in one browser. */
export interface KeptLogIn {
  readonly token: string;
  readonly createdAt: Date;
  readonly expiresAt: Date;
  /** What the browser calls itself; null: it said nothing. */
  readonly userAgent: string | null;
}

const { token, createdAt, expiresAt, userAgent } = authSession;

/** Somebody's log-ins, the latest first; also such as have ended by their hour. */
export function readLogIns(db: Database, userId: string): KeptLogIn[] {
  return db.orm
    .select({ token, createdAt, expiresAt, userAgent })
    .from(authSession)
    .where(eq(authSession.userId, userId))
    .orderBy(desc(createdAt))
    .all();
}

/** What the log-in library made of somebody's password; null: they have none. */
export function readPasswordHash(db: Database, userId: string): string | null {
  const found = db.orm
    .select({ password: account.password })
    .from(account)
    .where(and(eq(account.userId, userId), eq(account.providerId, "credential")))
    .get();
  return found?.password ?? null;
}

/** Whose account bears an address, in small letters; undefined: nobody's. */
export function findUserByEmail(db: Database, email: string): string | undefined {
  return db.orm.select({ id: user.id }).from(user).where(eq(user.email, email)).get()?.id;
}
