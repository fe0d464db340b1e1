import type { ArchivedRules } from "@/lib/domain/archive";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { readAcademy } from "./academies";

/** All rules of an academy in the order of an archive. Nothing in them is a student's but bands of the scope `student`. */
export function readArchivedRules(db: Database, scope: AcademyScope): ArchivedRules {
  const { academyId } = scope;
  const { zone, locale, seasonStart } = readAcademy(db, scope);
  const all = <T>(sql: string): T[] => db.sqlite.prepare<[string], T>(sql).all(academyId);
  return {
    zone,
    locale,
    seasonStart,
    ownFundamentals: all<ArchivedRules["ownFundamentals"][number]>(
      "SELECT id, definition, created_at AS createdAt FROM own_fundamental WHERE academy_id = ? ORDER BY id",
    ),
    clubGroups: all<ArchivedRules["clubGroups"][number]>(
      `SELECT number, kind, from_groups AS fromGroups, to_groups AS toGroups, sessions, day, who, why, grouping,
         recorded_at AS recordedAt
       FROM club_regrouping WHERE academy_id = ? ORDER BY number`,
    ),
    owningRules: all<ArchivedRules["owningRules"][number]>(
      `SELECT number, from_day AS fromDay, sessions, span_days AS spanDays, rest_days AS restDays, share,
         share_low AS shareLow, who, why, recorded_at AS recordedAt
       FROM owning_rule WHERE academy_id = ? ORDER BY number`,
    ),
    drills: all<ArchivedRules["drills"][number]>(
      `SELECT id, name, fundamental_id AS fundamentalId, how, cautions, dose, reps,
         minutes_a_day AS minutesADay, days_a_week AS daysAWeek,
         remeasure_days AS remeasureDays, retired_on AS retiredOn, earlier
       FROM drill WHERE academy_id = ? ORDER BY name, id`,
    ),
    goalBands: all<ArchivedRules["goalBands"][number]>(
      `SELECT id, fundamental_id AS fundamentalId, club_group AS clubGroup, scope, age_from AS ageFrom, age_to AS ageTo,
         student_id AS studentId, low, high, from_day AS fromDay, reason, who, created_at AS createdAt
       FROM goal_band WHERE academy_id = ? ORDER BY from_day, created_at, id`,
    ),
    noiseModels: all<ArchivedRules["noiseModels"][number]>(
      `SELECT pool, number, name, learned_up_to AS learnedUpTo, pool_sessions AS poolSessions, fitted_at AS fittedAt, body
       FROM noise_model WHERE academy_id = ? ORDER BY pool, number`,
    ),
    readerErrors: all<ArchivedRules["readerErrors"][number]>(
      `SELECT fundamental_id AS fundamentalId, number, from_day AS fromDay, reader_sd AS readerSd, offset_sd AS offsetSd,
         pairs, shared, version, fitted_at AS fittedAt
       FROM reader_error_fit WHERE academy_id = ? ORDER BY fundamental_id, number`,
    ),
    noteCodings: all<ArchivedRules["noteCodings"][number]>(
      "SELECT phrase, coding, who, recorded_at AS recordedAt FROM note_coding WHERE academy_id = ? ORDER BY id",
    ),
  };
}
