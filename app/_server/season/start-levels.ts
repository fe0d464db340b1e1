import { readNoiseModels } from "@/db/read/noise-models";
import type { Interval } from "@/lib/domain/track-verdict";
import { START_FILMS } from "@/lib/report/build-review";
import type { TrackHistory } from "@/lib/verdict/track-history";
import { answerOnce } from "../analysis/kept-answers";
import { enginesModels } from "../analysis/refit-noise";
import type { StudentViewer } from "../gate";

/**
 * The level of a track as it was known after its first films that count, all doubt of those few films in it; null where none
 * counts. It is judged as any look is.
 */
export async function loadStartLevel(
  { db, scope }: StudentViewer,
  { judged, earlier }: TrackHistory,
): Promise<Interval | null> {
  const used = judged.sessions.flatMap(({ use }, at) => (use === false ? [] : [at]));
  const last = used[Math.min(START_FILMS, used.length) - 1];
  if (last === undefined) return null;
  const track = { ...judged, sessions: judged.sessions.slice(0, last + 1) };
  const models = enginesModels(readNoiseModels(db, scope, judged.pool ?? ""));
  return (await answerOnce({ kind: "level", track, earlier, models })).level;
}
