import { isAPIError } from "better-auth/api";
import { authFor } from "../access/log-in";
import type { Viewer } from "../gate";
import { askPassword, DONE, type Outcome, refused, requireOwn } from "./account-desk";
import { holdOnce, seeHeld, takeHeld } from "./shown-once";

/** A second step that was begun: to be put into a code program, and proved by a code of it. */
export interface Begun {
  /** The secret and what it is for, as code programs read it. */
  readonly uri: string;
  readonly secret: string;
  readonly codes: readonly string[];
}

/** A press that may move the log-in: what became of it, and the cookies for the browser. */
export interface Moved {
  readonly outcome: Outcome;
  readonly cookies: Headers;
}

const begunKey = ({ choice, userId }: Viewer): string => `second step ${choice} ${userId}`;
const codesKey = ({ choice, userId }: Viewer): string => `kept codes ${choice} ${userId}`;

function stay(outcome: Outcome): Moved {
  return { outcome, cookies: new Headers() };
}

/** Makes a secret for whoever shows their password; the log-in asks for no code until one was proved. */
export async function beginSecondStep(viewer: Viewer, sent: Headers, data: FormData): Promise<Outcome> {
  const password = String(data.get("password") ?? "");
  const asked = await askPassword(viewer, password);
  if (asked.kind === "refused") return asked;
  const auth = await authFor(viewer.db, viewer.choice, sent);
  const made = await auth.api.enableTwoFactor({ body: { password }, headers: sent }).catch(passOver);
  // It is on already: another window was faster.
  if (made === null) return DONE;
  if (made.method !== "totp") throw new Error(`a second step by ${made.method}`);
  const secret = new URL(made.totpURI).searchParams.get("secret") ?? "";
  holdOnce(begunKey(viewer), { uri: made.totpURI, secret, codes: made.backupCodes } satisfies Begun);
  return DONE;
}

function passOver(error: unknown): null {
  if (isAPIError(error)) return null;
  throw error;
}

/** Turns the second step on, when a code shows that the secret has arrived; then the kept codes are shown once. */
export async function proveSecondStep(viewer: Viewer, sent: Headers, data: FormData): Promise<Moved> {
  const begun = seeHeld<Begun>(begunKey(viewer));
  if (!begun) return stay(refused("too-late"));
  const code = String(data.get("code") ?? "").replace(/\s/g, "");
  if (!/^\d{6}$/.test(code)) return stay(refused("code"));
  const auth = await authFor(viewer.db, viewer.choice, sent);
  const done = await auth.api.verifyTOTP({ body: { code }, headers: sent, returnHeaders: true }).catch(passOver);
  if (!done) return stay(refused("code"));
  takeHeld(begunKey(viewer));
  holdOnce(codesKey(viewer), begun.codes);
  return { outcome: DONE, cookies: done.headers };
}

/** Turns the second step off, for whoever shows their password. */
export async function dropSecondStep(viewer: Viewer, sent: Headers, data: FormData): Promise<Moved> {
  const password = String(data.get("password") ?? "");
  const asked = await askPassword(viewer, password);
  if (asked.kind === "refused") return stay(asked);
  const auth = await authFor(viewer.db, viewer.choice, sent);
  const done = await auth.api.disableTwoFactor({ body: { password }, headers: sent, returnHeaders: true });
  takeHeld(codesKey(viewer));
  return { outcome: DONE, cookies: done.headers };
}

/** A second step that was begun and not proved yet. */
export function findBegun(viewer: Viewer): Begun | null {
  requireOwn(viewer);
  return seeHeld<Begun>(begunKey(viewer));
}

/** The kept codes of a second step that was just turned on, once; null: they were shown. */
export function takeCodes(viewer: Viewer): readonly string[] | null {
  return takeHeld<readonly string[]>(codesKey(viewer));
}
