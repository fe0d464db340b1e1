import { misplacementShift, offsetCentimetres, rejection } from "@/lib/capture/misplacement";
import { VIEWS, type View } from "@/lib/domain/fundamental";
import type { JudgedSession, JudgedTrack } from "@/lib/domain/judged-track";
import { cameraFingerprints, type Fingerprint } from "./camera-fingerprint";
import { filmedSessions } from "./filmed-sessions";
import type { FilmedSession } from "./fingerprint-residuals";
import { FINGERPRINT } from "./fingerprint-thresholds";
import type { HistorySession, SessionFingerprint, TrackHistory } from "./session-history";
import type { StudentRecord } from "./student-record";

/**
 * The tracks of one student with the camera's fingerprint taken into account.
 *
 * Named sessions carry the estimated shift beside their stated camera sd, or are set aside where a film can't bear it.
 * Nothing else is changed, and nothing at all without three fundamentals of one view in a session. Sessions named in a row
 * keep an error each: sharing one was tried, and withdrew no more false words.
 *
 * @param tracks of one student, as their records alone have them; the same order comes back
 */
export function withFingerprints(record: StudentRecord, tracks: readonly TrackHistory[]): readonly TrackHistory[] {
  const found = new Map<string, Fingerprint>();
  for (const clubGroup of new Set(tracks.map((track) => track.clubGroup)))
    for (const view of VIEWS) {
      const own = tracks.filter((track) => track.clubGroup === clubGroup && track.fundamental.view === view);
      if (own.length < FINGERPRINT.fewestTogether) continue;
      const sessions = filmedSessions(record, view, own, counts);
      cameraFingerprints(view, sessions).forEach((fingerprint, at) => {
        if (fingerprint) found.set(keyOf(view, (sessions[at] as FilmedSession).id), fingerprint);
      });
    }
  return found.size === 0 ? tracks : tracks.map((track) => withFound(track, found));
}

function keyOf(view: View, sessionId: string): string {
  return `${view} ${sessionId}`;
}

function counts(entry: HistorySession): boolean {
  return entry.apart === null || entry.apart.kind === "before";
}

/** Degrees as the camera record counts a misplacement: degrees of yaw, or centimetres beside the line. */
function recordedOffBy({ view, offBy }: Fingerprint): number {
  return view === "face-on" ? offBy : offsetCentimetres(offBy);
}

function withFound(track: TrackHistory, found: ReadonlyMap<string, Fingerprint>): TrackHistory {
  const { fundamental } = track;
  const sessions = track.sessions.map((entry): HistorySession => {
    const fingerprint = found.get(keyOf(fundamental.view, entry.session.id));
    if (fingerprint === undefined || !counts(entry)) return entry;
    if (fingerprint.kind === "not-told-apart")
      return { ...entry, fingerprint: { ...fingerprint, done: "nothing", shift: 0 } };
    const offBy = recordedOffBy(fingerprint);
    const shift = Math.abs(misplacementShift(fundamental, offBy));
    const captureSd = Math.hypot(entry.captureSd, shift);
    const aside = entry.apart === null && rejection(fundamental, offBy) !== null;
    const done: SessionFingerprint["done"] = aside ? "set-aside" : shift > 0 ? "widened" : "nothing";
    return {
      ...entry,
      captureSd,
      apart: aside ? { kind: "fingerprint", offBy: fingerprint.offBy, view: fingerprint.view } : entry.apart,
      fingerprint: { ...fingerprint, done, shift },
    };
  });
  const of = (judged: JudgedTrack, entries: readonly HistorySession[]): JudgedTrack => ({
    ...judged,
    sessions: judged.sessions.map((session, at) => judgedWith(session, entries[at])),
  });
  return {
    ...track,
    sessions,
    judged: of(
      track.judged,
      sessions.filter((entry) => entry.index !== null),
    ),
    earlier:
      track.earlier === null
        ? null
        : of(
            track.earlier,
            sessions.filter((entry) => entry.index === null),
          ),
  };
}

function judgedWith(session: JudgedSession, entry: HistorySession | undefined): JudgedSession {
  const fingerprint = entry?.fingerprint ?? null;
  if (entry === undefined || fingerprint === null || fingerprint.kind === "not-told-apart") return session;
  return { ...session, captureSd: entry.captureSd, use: counts(entry) };
}
