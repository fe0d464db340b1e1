import type { Fundamental } from "@/lib/domain/fundamental";
import { type Capture, NOTHING_SEEN } from "@/lib/domain/session";
import type { StudentRecord } from "./student-record";

/**
 * The camera record of a fundamental's view in a session, with the sd stated for the fundamental.
 *
 * @returns null where neither is on file; a stated sd alone makes a record of an unknown placement
 */
export function sessionCapture(record: StudentRecord, sessionId: string, fundamental: Fundamental): Capture | null {
  const kept = record.captures.find((entry) => entry.sessionId === sessionId && entry.view === fundamental.view);
  const stated = record.statedCaptureSds.find(
    (entry) => entry.sessionId === sessionId && entry.fundamentalId === fundamental.id,
  );
  if (kept) return { ...kept, statedSd: stated?.sd ?? null };
  if (!stated) return null;
  return {
    view: fundamental.view,
    placement: "unknown",
    placementLabel: null,
    squareness: "unknown",
    offBy: null,
    seen: NOTHING_SEEN,
    placedBy: null,
    statedSd: stated.sd,
    setAsideReason: null,
    filmReference: null,
  };
}
