import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { Consent } from "@/lib/domain/consent";
import type { FundamentalId } from "@/lib/domain/fundamental";
import { NOTHING_SEEN } from "@/lib/domain/session";
import type { EnteredCapture, EnteredReading, EnteredSession, EnteredSwing } from "@/lib/domain/session-entry";
import type { Student, StudentEvent } from "@/lib/domain/student";
import { demoConsents } from "./demo-consents";
import { DEMO_DRILLS } from "./demo-drills";
import { DEMO_SEASON_START, type SessionPlan, type StudentPlan } from "./demo-plan";
import { type ReadSeason, readSeason, requireFundamental } from "./demo-season";

/** A wrong value put right later. */
export interface DemoCorrection {
  readonly sessionId: string;
  readonly swing: number;
  readonly fundamentalId: FundamentalId;
  readonly value: number;
  readonly typed: string;
  readonly who: string;
  readonly why: string;
  readonly day: string;
}

/** Everything that is entered of one student of the demo. */
export interface DemoStudent {
  readonly student: Student;
  /** The first is one to measure. */
  readonly consents: readonly Consent[];
  readonly heights: readonly { readonly day: string; readonly cm: number }[];
  readonly events: readonly StudentEvent[];
  readonly assignments: readonly {
    readonly id: string;
    readonly drillId: string;
    readonly fundamentalId: FundamentalId;
    readonly start: string;
    readonly end: string | null;
    readonly dose: string;
  }[];
  /** In date order. */
  readonly sessions: readonly { readonly id: string; readonly session: EnteredSession }[];
  readonly corrections: readonly DemoCorrection[];
}

/** A day of a plan as a date. */
export function seasonDay(day: number): string {
  return dayFromNumber(dayNumber(DEMO_SEASON_START) + day);
}

function captures(session: SessionPlan, id: string): EnteredCapture[] {
  return (["face-on", "down-the-line"] as const).flatMap((view) => {
    const camera = session.cameras[view];
    if (camera === undefined) return [];
    const { placement, placementLabel, squareness, offBy, placedBy, setAsideReason } = camera;
    return [
      {
        view,
        placement,
        placementLabel,
        squareness,
        offBy,
        seen: NOTHING_SEEN,
        placedBy: placedBy ?? null,
        setAsideReason,
        filmReference: `${id} ${view}`,
      },
    ];
  });
}

function readingOf(plan: StudentPlan, fundamentalId: FundamentalId, value: number | null): EnteredReading {
  const { unit, mirrors } = requireFundamental(fundamentalId);
  const turned = plan.hand === "left" && plan.signRule === "picture" && mirrors === "mirrors";
  const shown = value !== null && turned && value !== 0 ? -value : value;
  return {
    fundamentalId,
    value,
    typed: shown === null ? "not measurable" : String(shown),
    unit,
    signRule: plan.signRule,
  };
}

function swingsOf(plan: StudentPlan, season: ReadSeason, i: number): EnteredSwing[] {
  const session = plan.sessions[i] as SessionPlan;
  return Array.from({ length: session.swings }, (_, s) => ({
    number: s + 1,
    note: session.swingNotes[s + 1] ?? null,
    readings: season.tracks.flatMap((track) => {
      const values = track.sessions[i];
      return values ? [readingOf(plan, track.fundamentalId, values[s] ?? null)] : [];
    }),
  }));
}

function sessionOf(plan: StudentPlan, season: ReadSeason, i: number, id: string): EnteredSession {
  const session = plan.sessions[i] as SessionPlan;
  return {
    day: seasonDay(session.day),
    sequence: 1,
    clubGroup: plan.clubGroup,
    club: plan.club,
    reader: session.reader,
    circumstance: session.circumstance,
    aid: session.aid,
    stanceWidthCm: session.stanceWidthCm,
    daysSincePractice: session.daysSincePractice,
    marks: session.marks,
    note: session.note,
    solid: season.solid[i] ?? null,
    balls: session.balls,
    setAsideReason: null,
    captures: captures(session, id),
    statedCaptureSds: [],
    swings: swingsOf(plan, season, i),
  };
}

/** Puts the wrong texts of the plan in place of what was read; the right values come back as corrections. */
function withMistakes(
  plan: StudentPlan,
  sessions: DemoStudent["sessions"],
): Pick<DemoStudent, "sessions" | "corrections"> {
  const corrections: DemoCorrection[] = [];
  const mistaken = sessions.map(({ id, session }, i) => {
    const mistakes = plan.corrections.filter((mistake) => mistake.session === i);
    const swings = session.swings.map((swing) => ({
      ...swing,
      readings: swing.readings.map((reading) => {
        const mistake = mistakes.find((m) => m.swing === swing.number && m.fundamentalId === reading.fundamentalId);
        if (mistake === undefined) return reading;
        if (reading.value === null) throw new RangeError(`nothing to put right: ${plan.alias}, session ${i}`);
        corrections.push({
          sessionId: id,
          swing: swing.number,
          fundamentalId: reading.fundamentalId,
          value: reading.value,
          typed: reading.typed,
          who: session.reader,
          why: mistake.why,
          day: seasonDay(mistake.mendedOn),
        });
        return { ...reading, value: Number(mistake.typed), typed: mistake.typed };
      }),
    }));
    return { id, session: { ...session, swings } };
  });
  return { sessions: mistaken, corrections };
}

function drillFundamental(id: string): FundamentalId {
  const drill = DEMO_DRILLS.find((each) => each.id === id);
  if (drill === undefined) throw new RangeError(`no such drill: ${id}`);
  return drill.fundamentalId;
}

/** Everything that is entered of one planned student, determined by the plan and the seed. */
export function enterStudent(plan: StudentPlan, seed: number): DemoStudent {
  const season = readSeason(plan, seed);
  const sessions = plan.sessions.map((_, i) => {
    const id = `${plan.id}-${String(i + 1).padStart(2, "0")}`;
    return { id, session: sessionOf(plan, season, i, id) };
  });
  const { id, alias, birthYear, hand, zone, club } = plan;
  return {
    student: { id, alias, birthYear, hand, zone, clubs: club },
    consents: demoConsents(plan),
    heights: plan.heights.map(({ day, cm }) => ({ day: seasonDay(day), cm })),
    events: plan.events.map(({ endDay, ...event }, i) => ({
      ...{ ...event, id: `${id}-e${i + 1}`, day: seasonDay(event.day) },
      ...(endDay === undefined ? {} : { endDay: seasonDay(endDay) }),
    })),
    assignments: plan.assignments.map(({ drill, start, end, remeasure, ...asked }, i) => ({
      id: `${id}-a${i + 1}`,
      drillId: drill,
      fundamentalId: drillFundamental(drill),
      start: seasonDay(start),
      end: end === null ? null : seasonDay(end),
      ...asked,
      remeasureOn: remeasure === undefined ? null : seasonDay(remeasure),
    })),
    ...withMistakes(plan, sessions),
  };
}
