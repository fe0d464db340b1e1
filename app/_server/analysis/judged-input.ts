import { readNoiseModels } from "@/db/read/noise-models";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { StudentScope } from "@/lib/domain/scope";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { noiseByName } from "@/lib/verdict/noise";
import { trackHistories } from "@/lib/verdict/track-history";
import type { Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { loadStudentRecord } from "../season/student-record";
import { withStartLevel } from "../worker/work";
import { enginesModels } from "./refit-noise";

/** The judged input of the pages, and the noise models that its sessions name, in the form of the batch door. */
export interface JudgedInput {
  readonly tracks: readonly JudgedTrack[];
  readonly models: readonly (Omit<NoiseModel, "id"> & { readonly noiseModel: string; readonly pool: string })[];
}

/** What the pages judge, for some students, as of a day; null: with everything on file. */
export async function judgedInput(
  viewer: Viewer,
  students: readonly StudentScope[],
  asOf: string | null,
): Promise<JudgedInput> {
  const rules = await loadRules(viewer);
  const kept = new Map<string, readonly NoiseModel[]>();
  const modelsOf = (pool: string): readonly NoiseModel[] => {
    const models = kept.get(pool) ?? enginesModels(readNoiseModels(viewer.db, viewer.scope, pool));
    kept.set(pool, models);
    return models;
  };
  const tracks = students.flatMap((student) =>
    trackHistories(loadStudentRecord(viewer.db, student, rules), asOf ?? rules.today)
      .filter((history) => history.judged.sessions.length > 0)
      .map((history) =>
        withStartLevel(history.judged, history.earlier, noiseByName(modelsOf(history.judged.pool ?? ""))),
      ),
  );
  const named = new Set(tracks.flatMap((track) => track.sessions.map((session) => session.noiseModel)));
  const models = [...kept].flatMap(([pool, list]) =>
    list.filter((model) => named.has(model.id)).map(({ id, ...model }) => ({ noiseModel: id, pool, ...model })),
  );
  return { tracks, models };
}
