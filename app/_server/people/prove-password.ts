import { verifyPassword } from "better-auth/crypto";
import { readPasswordHash } from "@/db/read/log-ins";
import { readPerson } from "@/db/read/people";
import { countTry, forgetTries } from "../access/back-off";
import { readClock } from "../clock";
import type { Viewer } from "../gate";

/** What a typed password comes to. */
export type Proof =
  | { readonly kind: "right" }
  | { readonly kind: "wrong" }
  | { readonly kind: "wait"; seconds: number };

/**
 * Whether a typed password is the viewer's own. Tries are counted as at the log-in, apart from those made there: who sits down
 * at an open browser must not guess on.
 */
export async function provePassword({ db, userId }: Viewer, password: string): Promise<Proof> {
  const person = userId === null ? undefined : readPerson(db, userId);
  const hash = person ? readPasswordHash(db, person.userId) : null;
  if (!person || hash === null) return { kind: "wrong" };
  const browser = `open ${person.userId}`;
  const seconds = countTry(db, person.email, browser, readClock().getTime());
  if (seconds > 0) return { kind: "wait", seconds };
  if (!(await verifyPassword({ hash, password }))) return { kind: "wrong" };
  forgetTries(db, person.email, browser);
  return { kind: "right" };
}
