import { orderedFundamentals } from "@/lib/domain/catalogue";
import type { Reading } from "@/lib/domain/session";
import { type StudentRecord, type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { DEMO_BANDS, LEAD_HEEL } from "./demo-drills";
import type { DemoStudent } from "./demo-entries";
import { DEMO_SEASON_START, DEMO_TODAY, type StudentPlan } from "./demo-plan";
import { QUIET_STUDENTS } from "./demo-quiet";
import { ARI, BEA, CAL, DOT, ELI } from "./demo-stories-one";
import { FAY, GUS, HANA, IVO, JUN } from "./demo-stories-two";

/** The ten students with a story. */
export const STORY_STUDENTS: readonly StudentPlan[] = [ARI, BEA, CAL, DOT, ELI, FAY, GUS, HANA, IVO, JUN];

/** Everybody of the demo academy. */
export const DEMO_STUDENTS: readonly StudentPlan[] = [...STORY_STUDENTS, ...QUIET_STUDENTS];

function readingsInForce({ sessions, corrections }: DemoStudent): Reading[] {
  return sessions.flatMap(({ id, session }) =>
    session.swings.flatMap((swing) =>
      swing.readings.map(({ fundamentalId, value, typed, signRule }) => {
        const mended = corrections.find(
          (each) => each.sessionId === id && each.swing === swing.number && each.fundamentalId === fundamentalId,
        );
        return {
          sessionId: id,
          swing: swing.number,
          fundamentalId,
          value: mended?.value ?? value,
          typed: mended?.typed ?? typed,
          signRule,
        };
      }),
    ),
  );
}

/** What would be on file of a student once everything is entered. */
export function demoRecord(entered: DemoStudent): StudentRecord {
  const { student } = entered;
  return {
    student,
    sessions: entered.sessions.map(({ id, session }) => ({
      ...session,
      id,
      studentId: student.id,
      sequence: 1,
      groupId: null,
    })),
    captures: entered.sessions.flatMap(({ id, session }) =>
      session.captures.map((capture) => ({ ...capture, sessionId: id })),
    ),
    statedCaptureSds: [],
    readings: readingsInForce(entered),
    events: entered.events,
    bands: DEMO_BANDS,
    lookNoise: [],
    fundamentals: orderedFundamentals([LEAD_HEEL]),
    seasonStart: DEMO_SEASON_START,
  };
}

/** The tracks of a student as they are judged on the demo's today. */
export function demoTracks(entered: DemoStudent): readonly TrackHistory[] {
  return trackHistories(demoRecord(entered), DEMO_TODAY).filter((history) => history.judged.sessions.length > 0);
}
