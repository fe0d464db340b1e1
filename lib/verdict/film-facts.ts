import type { FilmFacts } from "@/lib/capture/camera-shift";
import type { Reading, Session } from "@/lib/domain/session";
import { huberCentre } from "@/lib/stats/huber-centre";
import { FINGERPRINT } from "./fingerprint-thresholds";
import type { StudentRecord } from "./student-record";
import { swingReadings } from "./swing-readings";

/**
 * What a session's own readings tell of the bodies in its films: the robust centre of each fundamental of either view, the
 * width of the stance, and whether a stick lay along the target line.
 *
 * @param readings of the session, those in force
 */
export function filmFacts(record: StudentRecord, session: Session, readings: readonly Reading[]): FilmFacts {
  const middles = new Map<string, number>();
  for (const fundamental of record.fundamentals) {
    const read = swingReadings(readings, fundamental).map((swing) => swing.read);
    if (read.length > 0) middles.set(fundamental.id, huberCentre(read, FINGERPRINT.fullReach * fundamental.readerSd));
  }
  const behind = record.captures.find((kept) => kept.sessionId === session.id && kept.view === "down-the-line");
  return {
    readings: middles,
    stanceCm: session.stanceWidthCm,
    stickInPicture: behind?.seen.pointingStickLean == null ? "not known" : "yes",
  };
}
