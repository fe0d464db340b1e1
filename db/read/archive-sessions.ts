import type { ArchivedCapture, ArchivedReading, ArchivedSession, ArchivedSwing } from "@/lib/domain/archive-session";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";

type Correction = ArchivedReading["corrections"][number];
type Keyed<T, K> = T & { readonly under: K };

/** Rows by what they belong to, in their order; the key itself is dropped. */
function grouped<T, K>(rows: readonly Keyed<T, K>[]): (key: K) => Omit<Keyed<T, K>, "under">[] {
  const kept = new Map<K, Omit<Keyed<T, K>, "under">[]>();
  for (const { under, ...row } of rows) {
    const list = kept.get(under);
    if (list) list.push(row);
    else kept.set(under, [row]);
  }
  return (key) => kept.get(key) ?? [];
}

// What was read again for a draw that is still open is told to nobody, so it is in no archive either.
const NOT_OPEN = `NOT EXISTS (SELECT 1 FROM reread_item JOIN reread_draw ON reread_draw.id = reread_item.draw_id
  WHERE reread_item.reading_id = reading.id AND reread_draw.finished_on IS NULL)`;

function readSwings(db: Database, studentId: string): (sessionId: string) => ArchivedSwing[] {
  const corrections = db.sqlite
    .prepare<[string], Keyed<Correction, number>>(
      `SELECT reading_id AS under, row_number() OVER (ORDER BY correction.id) AS place, kind, correction.value,
         correction.typed, who, why, corrected_at AS correctedAt
       FROM correction JOIN reading ON reading.id = correction.reading_id
       WHERE reading.student_id = ? AND ${NOT_OPEN} ORDER BY correction.id`,
    )
    .all(studentId);
  const correctionsOf = grouped<Correction, number>(corrections);
  const readings = db.sqlite
    .prepare<[string], Keyed<Omit<ArchivedReading, "corrections"> & { readonly id: number }, number>>(
      `SELECT swing_id AS under, id, fundamental_id AS fundamentalId, reader, reread, value, typed, unit,
         sign_rule AS signRule, entered_at AS enteredAt
       FROM reading WHERE student_id = ? AND ${NOT_OPEN} ORDER BY swing_id, fundamental_id, reader, reread`,
    )
    .all(studentId);
  const readingsOf = grouped(readings);
  const swings = db.sqlite
    .prepare<[string], Keyed<Omit<ArchivedSwing, "readings"> & { readonly id: number }, string>>(
      `SELECT session_id AS under, swing.id, number, swing.note
       FROM swing JOIN session ON session.id = swing.session_id WHERE student_id = ? ORDER BY session_id, number`,
    )
    .all(studentId);
  const swingsOf = grouped(swings);
  return (sessionId) =>
    swingsOf(sessionId).map(({ id, ...swing }) => ({
      ...swing,
      readings: readingsOf(id).map(({ id: readingId, ...reading }) => ({
        ...reading,
        corrections: correctionsOf(readingId),
      })),
    }));
}

function readCaptures(db: Database, studentId: string): (sessionId: string) => ArchivedCapture[] {
  const rows = db.sqlite
    .prepare<[string], Keyed<ArchivedCapture, string>>(
      `SELECT session_id AS under, view, placement, placement_label AS placementLabel, squareness, off_by AS offBy,
         pointing_stick_lean AS pointingStickLean, across_stick_slope AS acrossStickSlope, plumb_lean AS plumbLean,
         lens_height_cm AS lensHeightCm, hands_height_cm AS handsHeightCm, distance_cm AS distanceCm,
         beside_hands_cm AS besideHandsCm, frames_per_second AS framesPerSecond,
         shutter_per_second AS shutterPerSecond, placed_by AS placedBy,
         capture.set_aside_reason AS setAsideReason, film_reference AS filmReference
       FROM capture JOIN session ON session.id = capture.session_id
       WHERE student_id = ? ORDER BY session_id, view`,
    )
    .all(studentId);
  return grouped(rows);
}

function readSds(db: Database, studentId: string): (sessionId: string) => ArchivedSession["statedCaptureSds"] {
  const rows = db.sqlite
    .prepare<[string], Keyed<ArchivedSession["statedCaptureSds"][number], string>>(
      `SELECT session_id AS under, fundamental_id AS fundamentalId, sd
       FROM stated_capture_sd JOIN session ON session.id = stated_capture_sd.session_id
       WHERE student_id = ? ORDER BY session_id, fundamental_id`,
    )
    .all(studentId);
  return grouped(rows);
}

function readLooks(db: Database, studentId: string): (sessionId: string) => ArchivedSession["looks"] {
  const rows = db.sqlite
    .prepare<[string], Keyed<ArchivedSession["looks"][number], string>>(
      `SELECT session_id AS under, fundamental_id AS fundamentalId, club_group AS clubGroup,
         noise_model_name AS noiseModelName
       FROM look_noise WHERE student_id = ? ORDER BY session_id, fundamental_id, club_group`,
    )
    .all(studentId);
  return grouped(rows);
}

/** Every session of a student with all that was read of it, as entered, in the order of an archive. */
export function readArchivedSessions(db: Database, { studentId }: StudentScope): ArchivedSession[] {
  const [capturesOf, sdsOf, looksOf] = [readCaptures(db, studentId), readSds(db, studentId), readLooks(db, studentId)];
  const swingsOf = readSwings(db, studentId);
  const sessions = db.sqlite
    .prepare<[string], Omit<ArchivedSession, "captures" | "statedCaptureSds" | "swings" | "looks">>(
      `SELECT id, day, sequence, club_group AS clubGroup, said_club_group AS saidClubGroup, club, reader, circumstance,
         aid, stance_width_cm AS stanceWidthCm, days_since_practice AS daysSincePractice, marks, note, solid, balls,
         set_aside_reason AS setAsideReason, created_at AS createdAt, group_id AS groupId
       FROM session WHERE student_id = ? ORDER BY day, sequence, said_club_group`,
    )
    .all(studentId);
  return sessions.map((session) => ({
    ...session,
    captures: capturesOf(session.id),
    statedCaptureSds: sdsOf(session.id),
    swings: swingsOf(session.id),
    looks: looksOf(session.id),
  }));
}
