import type { FilmFacts } from "@/lib/capture/camera-shift";
import { captureEffect } from "@/lib/capture/capture-effect";
import type { CaptureEffect } from "@/lib/capture/effect";
import { checkedCaptureSd } from "@/lib/capture/misplacement";
import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { Edges, Fundamental } from "@/lib/domain/fundamental";
import { definitionDays, fundamentalOn } from "@/lib/domain/fundamental-on";
import { asDecided, type GoalBand, goalInForce, goalsBetween, SINCE_EVER } from "@/lib/domain/goal-band";
import type { DatedGoal, JudgedSession, JudgedTrack } from "@/lib/domain/judged-track";
import type { DatedOwningRule } from "@/lib/domain/owning-rule";
import type { Capture, Reading, Session } from "@/lib/domain/session";
import { filmFacts } from "./film-facts";
import { sessionCapture } from "./session-capture";
import type { ApartReason, HistorySession, TrackHistory } from "./session-history";
import type { StudentRecord } from "./student-record";
import { type SwingReading, swingReadings } from "./swing-readings";
import { withFingerprints } from "./with-fingerprints";
import { withReaderError } from "./with-reader-error";
import { leastWorthwhile } from "./worth";

export type { ApartReason, HistorySession, TrackHistory } from "./session-history";
export type { StudentRecord } from "./student-record";

/** The name of the pool among whose tracks noise is learned: fundamental and club group. */
export function poolName(fundamentalId: string, clubGroup: string): string {
  return `${fundamentalId}/${clubGroup}`;
}

/** The name of a track: student, fundamental, club group. */
export function trackName(studentId: string, fundamentalId: string, clubGroup: string): string {
  return `${studentId}/${fundamentalId}/${clubGroup}`;
}

/**
 * The tracks of one student, in the order of work and of the clubs.
 *
 * A track holds the sessions of one club group that have a value of one fundamental. It begins at the latest event that
 * re-baselines it, or at the season's start; earlier sessions are kept beside it, unjudged. Sessions filmed with an aid,
 * in a lesson, or set aside keep their place and are not used; nor are those whose fundamentals together say that the
 * phone stood too far off (see `cameraFingerprints`).
 *
 * @param record everything on file; sessions later than `asOf` are passed over
 * @param asOf last day taken in, `YYYY-MM-DD`
 */
export function trackHistories(record: StudentRecord, asOf: string): readonly TrackHistory[] {
  const bySession = new Map<string, Reading[]>();
  for (const reading of record.readings) {
    const kept = bySession.get(reading.sessionId);
    if (kept) kept.push(reading);
    else bySession.set(reading.sessionId, [reading]);
  }
  const facts = (session: Session): FilmFacts => filmFacts(record, session, bySession.get(session.id) ?? []);
  const sessions = record.sessions.filter((session) => session.day <= asOf);
  const clubGroups = [...new Set(sessions.map((session) => session.clubGroup))];
  const tracks = record.fundamentals.flatMap((fundamental) =>
    clubGroups.flatMap((clubGroup) => {
      const own = sessions.filter((session) => session.clubGroup === clubGroup);
      const measured = own
        .map((session) => ({ session, swings: swingReadings(bySession.get(session.id) ?? [], fundamental) }))
        .filter((entry) => entry.swings.length > 0);
      return measured.length === 0 ? [] : [oneTrack(record, fundamental, clubGroup, measured, { asOf, facts })];
    }),
  );
  return withFingerprints(record, tracks);
}

interface Measured {
  readonly session: Session;
  readonly swings: readonly SwingReading[];
}

interface TrackContext {
  readonly asOf: string;
  readonly facts: (session: Session) => FilmFacts;
}

function oneTrack(
  record: StudentRecord,
  fundamental: Fundamental,
  clubGroup: ClubGroup,
  measured: readonly Measured[],
  { asOf, facts }: TrackContext,
): TrackHistory {
  const { day: begins, kind } = beginning(record, fundamental, asOf);
  const deciding = asDecided(record.bands);
  const goal = goalInForce(deciding, fundamental, clubGroup, record.student, asOf);
  let index = 0;
  const sessions = measured.map(({ session, swings }): HistorySession => {
    const capture = sessionCapture(record, session.id, fundamental);
    const effect = captureEffect(capture, fundamentalOn(fundamental, session.day), facts(session));
    const early = begins !== null && session.day < begins;
    const apart: ApartReason | null = early ? { kind: "before", begins } : apartReason(session, capture, effect);
    return {
      session,
      swings: swings.map(({ number, read, parts }) => ({
        number,
        read,
        value: effect.correction?.truthOf(read, parts) ?? read,
      })),
      captureSd: effect.captureSd,
      captureWhy: effect.why,
      placedBy: capture?.placedBy ?? null,
      takenOut: effect.correction?.shift ?? 0,
      index: early ? null : index++,
      apart,
      fingerprint: null,
    };
  });
  const stretch = [measured[0]?.session.day ?? asOf, asOf] as const;
  const goals = goalsBetween(record.bands, fundamental, clubGroup, record.student, stretch);
  const dated = askedBetween(
    goalsBetween(deciding, fundamental, clubGroup, record.student, stretch),
    fundamental,
    stretch,
  );
  const owning = (record.owningRules ?? []).filter(({ from }) => from <= asOf);
  const base = {
    id: trackName(record.student.id, fundamental.id, clubGroup),
    unit: fundamental.unit,
    pool: poolName(fundamental.id, clubGroup),
    goal: { low: goal.low, high: goal.high },
    ...(dated.length > 1 ? { goals: dated } : {}),
    ...(owning.length === 0 ? {} : { owning: owning.map(datedRule) }),
    ...leastOf(goal, fundamentalOn(fundamental, asOf)),
    checkedCaptureSd: checkedCaptureSd(fundamentalOn(fundamental, asOf)),
  };
  const judgedOf = (entries: readonly HistorySession[]): JudgedTrack =>
    withReaderError(
      { ...base, sessions: entries.map((entry) => judgedSession(record, fundamental, entry)) },
      fundamental,
      record.readerErrors ?? [],
    );
  const old = sessions.filter((entry) => entry.index === null);
  return {
    studentId: record.student.id,
    fundamental,
    clubGroup,
    begins,
    goal,
    goals,
    sessions,
    judged: judgedOf(sessions.filter((entry) => entry.index !== null)),
    earlier: kind === "season" && old.length > 0 ? judgedOf(old) : null,
  };
}

function judgedSession(record: StudentRecord, fundamental: Fundamental, entry: HistorySession): JudgedSession {
  const { session } = entry;
  const label = record.captures.find(
    (kept) => kept.sessionId === session.id && kept.view === fundamental.view,
  )?.placementLabel;
  const noise = record.lookNoise.find(
    (kept) =>
      kept.sessionId === session.id && kept.fundamentalId === fundamental.id && kept.clubGroup === session.clubGroup,
  );
  return {
    date: session.day,
    captureSd: entry.captureSd,
    swings: entry.swings.map((swing) => swing.value),
    ...(label ? { captureSetup: label } : {}),
    use: entry.apart === null || entry.apart.kind === "before",
    reader: session.reader,
    ...(session.daysSincePractice === null ? {} : { daysSincePractice: session.daysSincePractice }),
    ...(noise ? { noiseModel: noise.noiseModelName } : {}),
  };
}

/** The least change worth having: what the academy says of its own fundamental, else what follows from the band. */
function leastOf(goal: Edges, { worthwhile }: Pick<Fundamental, "worthwhile">): Pick<JudgedTrack, "worthwhileAtLeast"> {
  const least = worthwhile ?? leastWorthwhile(goal);
  return least === undefined ? {} : { worthwhileAtLeast: least };
}

/** What was asked of a track over a stretch of days: the goals, and the least change worth having, each from its day on. */
function askedBetween(
  goals: readonly GoalBand[],
  fundamental: Fundamental,
  stretch: readonly [first: CalendarDay, last: CalendarDay],
): readonly DatedGoal[] {
  const own = definitionDays(fundamental, stretch);
  const days = [...new Set([...goals.map(({ from }) => from), ...own])].sort();
  const asked = days.map((day): DatedGoal => {
    const { low, high } = goals.findLast(({ from }) => from <= day) ?? { low: null, high: null };
    return { from: day, low, high, ...leastOf({ low, high }, fundamentalOn(fundamental, day)) };
  });
  const isNew = ({ low, high, worthwhileAtLeast }: DatedGoal, before: DatedGoal | undefined): boolean =>
    before?.low !== low || before.high !== high || before.worthwhileAtLeast !== worthwhileAtLeast;
  return asked
    .filter((each, at) => at === 0 || isNew(each, asked[at - 1]))
    .map((each, at) => (at === 0 ? { ...each, from: SINCE_EVER } : each));
}

/** What a verdict asks of a rule: not who set it, nor why. */
function datedRule({ from, sessions, spanDays, restDays, share, shareLow }: DatedOwningRule): DatedOwningRule {
  return { from, sessions, spanDays, restDays, share, shareLow };
}

/** The latest day on which the track begins anew, and whether that is only a season's border, over which the level is remembered. */
function beginning(
  record: StudentRecord,
  fundamental: Fundamental,
  asOf: string,
): { readonly day: string | null; readonly kind: "season" | "event" } {
  let day: string | null = null;
  let kind: "season" | "event" = "event";
  for (const event of record.events)
    if (event.day <= asOf && event.rebaselines.includes(fundamental.id) && (day === null || event.day > day))
      day = event.day;
  const crossesSeason = record.sessions.some((session) => session.day < record.seasonStart);
  if (crossesSeason && record.seasonStart <= asOf && (day === null || record.seasonStart > day)) {
    day = record.seasonStart;
    kind = "season";
  }
  return { day, kind };
}

function apartReason(
  session: Session,
  capture: Capture | null,
  { use, why, offBy }: CaptureEffect,
): ApartReason | null {
  if (session.setAsideReason !== null) return { kind: "set-aside", reason: session.setAsideReason };
  if (session.circumstance !== "unaided")
    return { kind: "circumstance", circumstance: session.circumstance, aid: session.aid };
  if (use) return null;
  if (why === "set-aside") return { kind: "set-aside", reason: capture?.setAsideReason ?? "" };
  return { kind: "camera", why, offBy };
}
