import { and, asc, count, eq, max } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Session } from "@/lib/domain/session";
import type { EnteredCapture } from "@/lib/domain/session-entry";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { capture, session, statedCaptureSd, student } from "../schema";
import { seenBy, VISIBLE_SQL, visible } from "./visible";

/** One view's camera record of a session on file. */
export type FiledCapture = EnteredCapture & { readonly sessionId: string };

/** A camera sd typed for one fundamental of one session. */
export interface StatedCaptureSd {
  readonly sessionId: string;
  readonly fundamentalId: FundamentalId;
  readonly sd: number;
}

/** When a student was last filmed, and how often in all. */
export interface LastSessionDay {
  readonly studentId: string;
  readonly lastDay: string;
  readonly sessions: number;
}

const inSeasonOrder = [asc(session.day), asc(session.sequence), asc(session.saidClubGroup)];

function sessionsOf(scope: StudentScope, clubGroup: ClubGroup | undefined) {
  return and(
    eq(session.studentId, scope.studentId),
    clubGroup === undefined ? undefined : eq(session.clubGroup, clubGroup),
  );
}

/** Whose session it is now; undefined: nobody's of that academy. */
export function readSessionStudent(db: Database, { academyId }: AcademyScope, sessionId: string): string | undefined {
  const found = db.orm
    .select({ studentId: session.studentId })
    .from(session)
    .innerJoin(student, eq(student.id, session.studentId))
    .where(and(eq(session.id, sessionId), eq(student.academyId, academyId)))
    .get();
  return found?.studentId;
}

/** Of every student whom the scope reaches. */
export function readSessionIds(db: Database, scope: AcademyScope): string[] {
  const rows = db.orm
    .select({ id: session.id })
    .from(session)
    .innerJoin(student, eq(student.id, session.studentId))
    .where(visible(scope))
    .orderBy(asc(session.id))
    .all();
  return rows.map(({ id }) => id);
}

/** By day, and within a day by sequence. */
export function readSessions(db: Database, scope: StudentScope, clubGroup?: ClubGroup): Session[] {
  const rows = db.orm
    .select()
    .from(session)
    .where(sessionsOf(scope, clubGroup))
    .orderBy(...inSeasonOrder)
    .all();
  return rows.map(({ batchId: _batch, createdAt: _created, saidClubGroup: _said, marks, ...fields }) => ({
    ...fields,
    marks: splitWords(marks),
  }));
}

/** In the order of the sessions, face-on after down-the-line. */
export function readCaptures(db: Database, scope: StudentScope, clubGroup?: ClubGroup): FiledCapture[] {
  return db.orm
    .select({
      sessionId: capture.sessionId,
      view: capture.view,
      placement: capture.placement,
      placementLabel: capture.placementLabel,
      squareness: capture.squareness,
      offBy: capture.offBy,
      setAsideReason: capture.setAsideReason,
      filmReference: capture.filmReference,
      placedBy: capture.placedBy,
      seen: {
        pointingStickLean: capture.pointingStickLean,
        acrossStickSlope: capture.acrossStickSlope,
        plumbLean: capture.plumbLean,
        lensHeightCm: capture.lensHeightCm,
        handsHeightCm: capture.handsHeightCm,
        distanceCm: capture.distanceCm,
        besideHandsCm: capture.besideHandsCm,
        framesPerSecond: capture.framesPerSecond,
        shutterPerSecond: capture.shutterPerSecond,
      },
    })
    .from(capture)
    .innerJoin(session, eq(session.id, capture.sessionId))
    .where(sessionsOf(scope, clubGroup))
    .orderBy(...inSeasonOrder, asc(capture.view))
    .all();
}

/** In the order of the sessions. */
export function readStatedCaptureSds(db: Database, scope: StudentScope, clubGroup?: ClubGroup): StatedCaptureSd[] {
  const rows = db.orm
    .select({
      sessionId: statedCaptureSd.sessionId,
      fundamentalId: statedCaptureSd.fundamentalId,
      sd: statedCaptureSd.sd,
    })
    .from(statedCaptureSd)
    .innerJoin(session, eq(session.id, statedCaptureSd.sessionId))
    .where(sessionsOf(scope, clubGroup))
    .orderBy(...inSeasonOrder, asc(statedCaptureSd.fundamentalId))
    .all();
  return rows.map((row) => ({ ...row, fundamentalId: row.fundamentalId as FundamentalId }));
}

/** One entry for each student who was filmed at all. */
export function readLastSessionDays(db: Database, scope: AcademyScope): LastSessionDay[] {
  const rows = db.orm
    .select({ studentId: session.studentId, lastDay: max(session.day), sessions: count() })
    .from(session)
    .innerJoin(student, eq(student.id, session.studentId))
    .where(visible(scope))
    .groupBy(session.studentId)
    .orderBy(asc(session.studentId))
    .all();
  return rows.flatMap(({ lastDay, ...row }) => (lastDay === null ? [] : [{ ...row, lastDay }]));
}

/** What of a student's session decides whether its day counts. */
export type SessionStanding = Pick<Session, "studentId" | "day" | "clubGroup" | "circumstance" | "setAsideReason">;

/** Every session of those whom the scope reaches, by student and day. */
export function readSessionStandings(db: Database, scope: AcademyScope): SessionStanding[] {
  return db.orm
    .select({
      studentId: session.studentId,
      day: session.day,
      clubGroup: session.clubGroup,
      circumstance: session.circumstance,
      setAsideReason: session.setAsideReason,
    })
    .from(session)
    .innerJoin(student, eq(student.id, session.studentId))
    .where(visible(scope))
    .orderBy(asc(session.studentId), ...inSeasonOrder)
    .all();
}

/** Solid strikes of balls hit. */
export interface ContactCount {
  readonly studentId: string;
  readonly solid: number;
  readonly balls: number;
}

/** The club of a student's latest session with a group of clubs. */
export type LatestClub = Pick<Session, "studentId" | "clubGroup" | "club">;

/** One entry for each student and group of clubs that was filmed at all. */
export function readLatestClubs(db: Database, scope: AcademyScope): LatestClub[] {
  return db.sqlite
    .prepare<[{ academyId: string; seen: string | null }], LatestClub>(
      `SELECT student_id AS studentId, club_group AS clubGroup, club FROM (
         SELECT session.student_id, session.club_group, session.club, row_number() OVER (
             PARTITION BY session.student_id, session.club_group
             ORDER BY session.day DESC, session.sequence DESC, session.said_club_group DESC) AS place
         FROM session JOIN student ON student.id = session.student_id
         WHERE student.academy_id = @academyId AND ${VISIBLE_SQL})
       WHERE place = 1 ORDER BY student_id, club_group`,
    )
    .all({ academyId: scope.academyId, ...seenBy(scope) });
}

/** Each student's solid strikes over the latest sessions with a count; students without a count are left out. */
export function readLatestContacts(db: Database, scope: AcademyScope, sessions: number): ContactCount[] {
  return db.sqlite
    .prepare<[string, number, { seen: string | null }], ContactCount>(
      `SELECT student_id AS studentId, sum(solid) AS solid, sum(balls) AS balls FROM (
         SELECT session.student_id, session.solid, session.balls,
           row_number() OVER (PARTITION BY session.student_id ORDER BY session.day DESC, session.sequence DESC) AS place
         FROM session JOIN student ON student.id = session.student_id
         WHERE student.academy_id = ? AND ${VISIBLE_SQL} AND session.solid IS NOT NULL AND session.balls IS NOT NULL)
       WHERE place <= ? GROUP BY student_id ORDER BY student_id`,
    )
    .all(scope.academyId, sessions, seenBy(scope));
}
