import { type FilmPlan, type FilmPlanBody, filmPlanText } from "@/lib/domain/film-plan";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { filmPlan } from "../schema-plans";

/** Keeps a plan as it was told. It is no evidence: analyses rest on the same data as before. */
export function insertFilmPlan(
  db: Database,
  { studentId }: StudentScope,
  told: Omit<FilmPlan, "body" | "remindedAt" | "voidedAt"> & { readonly body: FilmPlanBody },
): void {
  db.orm
    .insert(filmPlan)
    .values({ ...told, studentId, body: filmPlanText(told.body) })
    .run();
}

/**
 * Notes that the family was reminded; the last time is kept.
 *
 * @returns `unchanged`: no such plan of the student stands; nothing was written
 */
export function updateFilmPlanReminded(
  db: Database,
  { studentId }: StudentScope,
  { planId, now }: { readonly planId: string; readonly now: string },
): "updated" | "unchanged" {
  const { changes } = db.sqlite
    .prepare<[string, string, string]>(
      "UPDATE film_plan SET reminded_at = ? WHERE id = ? AND student_id = ? AND voided_at IS NULL",
    )
    .run(now, planId, studentId);
  return changes === 0 ? "unchanged" : "updated";
}

/**
 * Takes a plan back, or puts it back; the row stays.
 *
 * @param voidedAt the hour at which it is taken back; null: it is put back
 * @returns `unchanged`: no such plan of the student, or it stood so already; nothing was written
 */
export function updateFilmPlanVoided(
  db: Database,
  { studentId }: StudentScope,
  { planId, voidedAt }: { readonly planId: string; readonly voidedAt: string | null },
): "updated" | "unchanged" {
  const { changes } = db.sqlite
    .prepare<[string | null, string, string, string | null]>(
      "UPDATE film_plan SET voided_at = ? WHERE id = ? AND student_id = ? AND (voided_at IS NULL) <> (? IS NULL)",
    )
    .run(voidedAt, planId, studentId, voidedAt);
  return changes === 0 ? "unchanged" : "updated";
}
