import { readFilmTimes } from "@/db/read/film-plans";
import type { View } from "@/lib/domain/fundamental";
import type { SentFilm } from "@/lib/verdict/plan-answers";
import type { StudentRecord } from "@/lib/verdict/student-record";
import type { StudentViewer } from "../gate";

function bySession<T extends { readonly sessionId: string }>(rows: readonly T[]): ReadonlyMap<string, readonly T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const kept = found.get(row.sessionId);
    if (kept) kept.push(row);
    else found.set(row.sessionId, [row]);
  }
  return found;
}

/** Films of a student as they came: with a view of which there is a camera record or a reading. */
export function loadSentFilms(
  { db, student }: StudentViewer,
  record: Pick<StudentRecord, "sessions" | "captures" | "readings" | "fundamentals">,
): readonly SentFilm[] {
  const times = new Map(readFilmTimes(db, student).map((each) => [each.sessionId, each.enteredAt]));
  const viewOf = new Map<string, View>(record.fundamentals.map(({ id, view }) => [id, view]));
  const readings = bySession(record.readings);
  const captures = bySession(record.captures);
  return record.sessions.map(({ id, day, clubGroup }) => {
    const read = readings.get(id) ?? [];
    const views = [
      ...(captures.get(id) ?? []).map(({ view }) => view),
      ...read.flatMap(({ fundamentalId }) => viewOf.get(fundamentalId) ?? []),
    ];
    return {
      ...{ clubGroup, day },
      enteredAt: times.get(id) ?? "",
      views: [...new Set(views)],
      swings: new Set(read.map(({ swing }) => swing)).size,
    };
  });
}
