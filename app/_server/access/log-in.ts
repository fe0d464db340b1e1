import type { Database } from "@/db/client";
import { readClock } from "../clock";
import type { AcademyChoice } from "../database";
import { checkHost } from "../door/reached";
import { ABSOLUTE_SECONDS, type Auth, authOf } from "./auth";

/** Somebody's log-in in one browser. */
export interface LogIn {
  readonly userId: string;
  readonly token: string;
  /** Owner and director show a second proof besides the password. */
  readonly hasSecondStep: boolean;
  /** When it ends if nobody uses it, and when in any case; in milliseconds. */
  readonly ends: { readonly unused: number; readonly latest: number };
}

/** The log-in library for whoever sent a request, by the address under which they reached us. */
export function authFor(db: Database, choice: AcademyChoice, sent: Headers): Promise<Auth> {
  return authOf(db, { choice, transport: checkHost(sent).startsWith("https:") ? "https" : "http" });
}

/** The log-in that a request shows; null: none, or one that has ended. Nothing is written. */
export async function readLogIn(db: Database, choice: AcademyChoice, sent: Headers): Promise<LogIn | null> {
  const auth = await authFor(db, choice, sent);
  const found = await auth.api.getSession({
    headers: sent,
    query: { disableRefresh: true, disableCookieCache: true },
  });
  if (!found) return null;
  const now = readClock().getTime();
  const latest = found.session.createdAt.getTime() + ABSOLUTE_SECONDS * 1000;
  if (now >= latest) return null;
  return {
    userId: found.user.id,
    token: found.session.token,
    hasSecondStep: found.user.twoFactorEnabled === true,
    ends: { unused: Math.min(found.session.expiresAt.getTime(), latest), latest },
  };
}

/**
 * Moves the hour at which a used log-in ends, and says with which cookies. For the outermost door: a page can't set one.
 */
export async function refreshLogIn(db: Database, choice: AcademyChoice, sent: Headers): Promise<readonly string[]> {
  const auth = await authFor(db, choice, sent);
  const { headers } = await auth.api.getSession({ headers: sent, returnHeaders: true });
  return headers.getSetCookie();
}
