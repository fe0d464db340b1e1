import { createHmac, timingSafeEqual } from "node:crypto";
import type { AcademyChoice } from "../database";
import { installationSecret } from "./secret";

/** A browser is remembered for so long after a log-in. */
export const KNOWN_SECONDS = 365 * 24 * 3600;

export function knownCookie(choice: AcademyChoice, transport: "https" | "http"): string {
  return `${transport === "https" ? "__Host-" : ""}proofband-${choice}.known`;
}

function seal(email: string): Buffer {
  return createHmac("sha256", installationSecret()).update(`known browser\n${email.trim().toLowerCase()}`).digest();
}

/** What a browser keeps after a log-in; it names nobody and lets nobody in. */
export function markOf(email: string): string {
  return seal(email).toString("base64url");
}

/**
 * Whether a browser has logged in to this account before; its mark, or null. One that is written otherwise and comes to the same
 * is the same: tries are counted under it, and would begin anew for each way of writing it.
 */
export function knownTo(email: string, mark: string | undefined): string | null {
  if (mark === undefined) return null;
  const given = Buffer.from(mark, "base64url");
  const wanted = seal(email);
  return given.length === wanted.length && timingSafeEqual(given, wanted) ? markOf(email) : null;
}
