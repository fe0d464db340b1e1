import { HIGH_SENSITIVITY } from "@/lib/capture/camera-limits";
import { misplacementShift, offsetAngle, offsetCentimetres, rejection } from "@/lib/capture/misplacement";
import { placeWasSeen } from "@/lib/capture/sighted-effect";
import { type StandDoubt, sightedStand, unknownStand } from "@/lib/capture/sighted-stand";
import { standDoubt } from "@/lib/capture/stand-doubt";
import { VIEWS, type View } from "@/lib/domain/fundamental";
import type { JudgedSession, JudgedTrack } from "@/lib/domain/judged-track";
import { cameraFingerprints, type Fingerprint } from "./camera-fingerprint";
import type { FilmedFundamental, FilmedSession } from "./fingerprint-residuals";
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
      const sessions = filmedSessions(record, view, own);
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

/** The sessions of one view, date order, with the fundamentals that count in them. */
function filmedSessions(record: StudentRecord, view: View, tracks: readonly TrackHistory[]): readonly FilmedSession[] {
  const bySession = new Map<string, FilmedFundamental[]>();
  for (const { fundamental, sessions } of tracks)
    for (const entry of sessions) {
      if (!counts(entry)) continue;
      const filmed = bySession.get(entry.session.id) ?? [];
      bySession.set(entry.session.id, filmed);
      filmed.push({
        fundamental,
        swings: entry.swings.map((swing) => swing.value),
        captureSd: entry.captureSd,
        reader: entry.session.reader,
        era: entry.index === null ? "earlier" : "judged",
      });
    }
  return record.sessions.flatMap(({ id }) => {
    const fundamentals = bySession.get(id);
    return fundamentals ? [{ id, ...placementOf(record, view, id, fundamentals), fundamentals }] : [];
  });
}

/** What the record leaves open of a placement; sds stated for single fundamentals say it where they say less. */
function placementOf(
  record: StudentRecord,
  view: View,
  sessionId: string,
  fundamentals: readonly FilmedFundamental[],
): Pick<FilmedSession, "label" | "shiftSd" | "rollSd" | "recordedOff"> {
  const capture = record.captures.find((kept) => kept.sessionId === sessionId && kept.view === view);
  const recorded = capture ? recordedStand(capture) : { ...unknownStand(view), off: 0 };
  const stated = record.statedCaptureSds.flatMap(({ sessionId: of, fundamentalId, sd }) => {
    const fundamental = fundamentals.find((each) => each.fundamental.id === fundamentalId)?.fundamental;
    if (of !== sessionId || fundamental === undefined) return [];
    const { yaw, roll, offset } = fundamental.sensitivity;
    return [{ sd, shift: view === "face-on" ? yaw : offset, roll }];
  });
  const least = (most: number, limits: readonly number[]): number => Math.min(most, ...limits);
  const high = (sensitivity: number): boolean => sensitivity >= HIGH_SENSITIVITY;
  return {
    label: capture?.placementLabel ?? null,
    recordedOff: recorded.off,
    shiftSd: least(
      recorded.yawSd,
      stated.filter((each) => high(each.shift)).map((each) => each.sd / each.shift),
    ),
    rollSd: least(
      recorded.rollSd,
      stated.filter((each) => high(each.roll)).map((each) => each.sd / each.roll),
    ),
  };
}

/** What a camera record leaves open, and by how many degrees it says itself that the phone stood off. */
function recordedStand(capture: StudentRecord["captures"][number]): StandDoubt & { readonly off: number } {
  const { view, squareness, offBy, seen } = capture;
  const doubt = standDoubt(capture);
  if (placeWasSeen(seen)) {
    const { yaw, roll } = sightedStand(view, seen, doubt);
    return { yawSd: yaw.sd, rollSd: roll.sd, off: Math.abs(yaw.value) };
  }
  const off = squareness === "off" && offBy !== null ? (view === "face-on" ? offBy : offsetAngle(offBy)) : 0;
  return { ...doubt, off: Math.abs(off) };
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
