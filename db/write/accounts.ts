import { and, eq, ne } from "drizzle-orm";
import { type Database, inTransaction } from "../client";
import { account, authSession, twoFactor, user } from "../schema-people";

/** Another name and address for an account. What was entered under the old name keeps it. */
export function updateAccountName(
  db: Database,
  userId: string,
  { name, email, now }: { readonly name: string; readonly email: string; readonly now: Date },
): void {
  db.orm.update(user).set({ name, email, updatedAt: now }).where(eq(user.id, userId)).run();
}

/** Another password, chosen by whoever is logged in with the old one: every log-in but theirs ends. */
export function updateOwnPassword(
  db: Database,
  userId: string,
  changed: { readonly passwordHash: string; readonly keepToken: string; readonly now: Date },
): void {
  inTransaction(db, () => {
    db.orm
      .update(account)
      .set({ password: changed.passwordHash, updatedAt: changed.now })
      .where(and(eq(account.userId, userId), eq(account.providerId, "credential")))
      .run();
    db.orm
      .delete(authSession)
      .where(and(eq(authSession.userId, userId), ne(authSession.token, changed.keepToken)))
      .run();
  });
}

/** Ends all of somebody's log-ins. */
export function deleteLogIns(db: Database, userId: string): void {
  db.orm.delete(authSession).where(eq(authSession.userId, userId)).run();
}

/** Takes the second step off an account, with its kept codes. */
export function deleteSecondStep(db: Database, userId: string, now: Date): void {
  inTransaction(db, () => {
    db.orm.delete(twoFactor).where(eq(twoFactor.userId, userId)).run();
    db.orm.update(user).set({ twoFactorEnabled: false, updatedAt: now }).where(eq(user.id, userId)).run();
  });
}
