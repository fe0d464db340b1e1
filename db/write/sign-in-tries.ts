import { eq, inArray } from "drizzle-orm";
import type { Database } from "../client";
import { signInTry } from "../schema-people";

/** Wrong passwords under one digest; the times are milliseconds since 1970. */
export type SignInTry = typeof signInTry.$inferSelect;

export function readSignInTry(db: Database, key: string): SignInTry | undefined {
  return db.orm.select().from(signInTry).where(eq(signInTry.key, key)).get();
}

export function upsertSignInTry(db: Database, tried: SignInTry): void {
  db.orm.insert(signInTry).values(tried).onConflictDoUpdate({ target: signInTry.key, set: tried }).run();
}

export function deleteSignInTries(db: Database, keys: readonly string[]): void {
  db.orm
    .delete(signInTry)
    .where(inArray(signInTry.key, [...keys]))
    .run();
}
