import { createHmac } from "node:crypto";
import { type Database, inTransaction } from "@/db/client";
import { deleteSignInTries, readSignInTry, upsertSignInTry } from "@/db/write/sign-in-tries";
import { installationSecret } from "./secret";

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;

/**
 * Wrong passwords are answered at once up to `free`; each further one doubles the wait, from `first` to `longest`. Within a
 * quarter of an hour that lets eight be looked at, of the ten that TRUST.md S5 allows. After `forgotten` without one the count
 * begins anew.
 */
export const ACCOUNT_WAIT = { free: 3, first: 15 * SECOND, longest: 15 * MINUTE, forgotten: 24 * HOUR } as const;

/**
 * One password tried over many accounts: wrong ones of all accounts together, from browsers that none of them knows. More than
 * an academy's people mistype in a minute, and each further one waits.
 */
export const SPRAY_WAIT = { free: 30, first: 5 * SECOND, longest: 5 * MINUTE, forgotten: 10 * MINUTE } as const;

type Rule = typeof ACCOUNT_WAIT | typeof SPRAY_WAIT;

/** What a try counts against: the account alone, the account from a browser that has logged in to it, or everybody. */
interface Counter {
  readonly key: string;
  readonly rule: Rule;
}

// Kept without names: whoever reads the table learns nobody's address.
function keyOf(...parts: readonly string[]): string {
  return createHmac("sha256", installationSecret()).update(parts.join("\n")).digest("base64url");
}

function countersOf(email: string, browser: string | null): readonly Counter[] {
  const account = email.trim().toLowerCase();
  if (browser !== null) return [{ key: keyOf("known", account, browser), rule: ACCOUNT_WAIT }];
  return [
    { key: keyOf("account", account), rule: ACCOUNT_WAIT },
    { key: keyOf("all"), rule: SPRAY_WAIT },
  ];
}

/** The wait after so many wrong ones, in milliseconds. */
export function waitAfter(wrong: number, { free, first, longest }: Rule): number {
  return wrong < free ? 0 : Math.min(longest, first * 2 ** Math.min(wrong - free, 20));
}

/**
 * Whether a password is looked at now. Asked and counted in one step, as a wrong one: of many tries sent at once no two may
 * pass for one. Whoever was right takes it back by `forgetTries`.
 *
 * @param browser what a browser that has logged in to this account shows; null: one that hasn't
 * @returns seconds to wait; 0: look at it
 */
export function countTry(db: Database, email: string, browser: string | null, now: number): number {
  return inTransaction(db, () => {
    const counters = countersOf(email, browser).map(({ key, rule }) => {
      const kept = readSignInTry(db, key);
      const fresh = { key, wrong: 0, firstAt: now, lastAt: now, waitUntil: 0 };
      // A clock that was set back makes nobody wait longer than the longest wait.
      const stale = !kept || now - kept.lastAt > rule.forgotten || kept.waitUntil - now > rule.longest;
      return { rule, kept: stale ? fresh : kept };
    });
    const wait = Math.max(...counters.map(({ kept }) => kept.waitUntil - now));
    if (wait > 0) return Math.ceil(wait / SECOND);
    for (const { rule, kept } of counters) {
      const wrong = kept.wrong + 1;
      upsertSignInTry(db, { ...kept, wrong, lastAt: now, waitUntil: now + waitAfter(wrong, rule) });
    }
    return 0;
  });
}

/**
 * The right password: what was counted for this account is forgotten, also from elsewhere. Of what is counted for everybody only
 * this one try is taken back: else whoever has an account could wipe out between two guesses that others were guessed at.
 */
export function forgetTries(db: Database, email: string, browser: string | null): void {
  inTransaction(db, () => {
    const elsewhere = countersOf(email, null);
    const accounts = [...countersOf(email, browser), ...elsewhere].filter(({ rule }) => rule === ACCOUNT_WAIT);
    deleteSignInTries(
      db,
      accounts.map(({ key }) => key),
    );
    // From a known browser nothing was counted for everybody.
    if (browser === null) for (const { key } of elsewhere.filter(({ rule }) => rule === SPRAY_WAIT)) takeBack(db, key);
  });
}

function takeBack(db: Database, key: string): void {
  const kept = readSignInTry(db, key);
  if (!kept) return;
  const wrong = Math.max(0, kept.wrong - 1);
  const waitUntil = Math.min(kept.waitUntil, kept.lastAt + waitAfter(wrong, SPRAY_WAIT));
  upsertSignInTry(db, { ...kept, wrong, waitUntil });
}
