import { HIGH_SENSITIVITY } from "@/lib/capture/camera-limits";
import { offsetAngle } from "@/lib/capture/misplacement";
import { placeWasSeen } from "@/lib/capture/sighted-effect";
import { type StandDoubt, sightedStand, unknownStand } from "@/lib/capture/sighted-stand";
import { standDoubt } from "@/lib/capture/stand-doubt";
import type { View } from "@/lib/domain/fundamental";
import { fundamentalOn } from "@/lib/domain/fundamental-on";
import type { FilmedFundamental, FilmedSession } from "./fingerprint-residuals";
import type { HistorySession, TrackHistory } from "./session-history";
import type { StudentRecord } from "./student-record";

/**
 * The sessions of one student and view, with the fundamentals that count in them and what the record leaves open of the
 * phone's place.
 *
 * @param tracks of one club group, fundamentals of that view
 * @param counts whether a session counts in its track
 * @returns date order; sessions in which nothing counts are left out
 */
export function filmedSessions(
  record: StudentRecord,
  view: View,
  tracks: readonly TrackHistory[],
  counts: (entry: HistorySession) => boolean,
): readonly FilmedSession[] {
  const bySession = new Map<string, FilmedFundamental[]>();
  for (const { fundamental, sessions } of tracks)
    for (const entry of sessions) {
      if (!counts(entry)) continue;
      const filmed = bySession.get(entry.session.id) ?? [];
      bySession.set(entry.session.id, filmed);
      filmed.push({
        fundamental: fundamentalOn(fundamental, entry.session.day),
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
