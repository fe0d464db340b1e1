import type { Database } from "@/db/client";
import { type FiledNoiseModel, readNoiseModels } from "@/db/read/noise-models";
import { readStudentAcademy } from "@/db/read/students";
import { readTrackKeys, type TrackKey } from "@/db/read/tracks";
import { insertLookNoise } from "@/db/write/looks";
import { insertNoiseModel } from "@/db/write/noise-models";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { poolName, type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { currentInstant } from "../clock";
import { whenWritable } from "../import/write-gate";
import { type AcademyRules, loadStudentRecord } from "../season/student-record";
import { workOn } from "./analysis-worker";
import { breathe } from "./breathe";

/** A pool teaches noise from so many tracks of so many sessions on, and is learned anew when its sessions have grown by so much. */
export const REFIT = { tracks: 10, sessions: 5, growth: 1.1 } as const;

/** The models of a pool as the engine takes them, oldest first. */
export function enginesModels(models: readonly FiledNoiseModel[]): readonly NoiseModel[] {
  return models.map((model) => ({ ...(JSON.parse(model.body) as NoiseModel), id: model.name }));
}

interface PoolCount {
  readonly pool: string;
  readonly teaching: readonly TrackKey[];
  readonly sessions: number;
}

/** How much there is to learn from in each pool; a derived fundamental has what its first part has. */
function poolCounts(keys: readonly TrackKey[], fundamentals: readonly Fundamental[]): readonly PoolCount[] {
  const pools = new Map<string, TrackKey[]>();
  for (const fundamental of fundamentals) {
    const source = fundamental.derivedFrom?.[0] ?? fundamental.id;
    for (const key of keys.filter((each) => each.fundamentalId === source || each.fundamentalId === fundamental.id)) {
      const pool = poolName(fundamental.id, key.clubGroup);
      const kept = pools.get(pool) ?? [];
      if (!kept.some((each) => each.studentId === key.studentId)) kept.push(key);
      pools.set(pool, kept);
    }
  }
  return [...pools].map(([pool, tracks]) => {
    const teaching = tracks.filter((track) => track.sessions >= REFIT.sessions);
    return { pool, teaching, sessions: teaching.reduce((sum, track) => sum + track.sessions, 0) };
  });
}

/**
 * Learns the noise of every pool that has grown by a tenth since it was last learned. A new model is a new numbered row;
 * no look that was said changes.
 */
export async function refitNoise(
  db: Database,
  scope: AcademyScope,
  rules: AcademyRules,
  scopeOf: (studentId: string) => StudentScope,
): Promise<void> {
  const records = new Map<string, readonly TrackHistory[]>();
  const historiesOf = async (studentId: string): Promise<readonly TrackHistory[]> => {
    const known = records.get(studentId);
    if (known) return known;
    await breathe();
    // Erased while others were read.
    if (readStudentAcademy(db, studentId) === undefined) return [];
    const read = trackHistories(loadStudentRecord(db, scopeOf(studentId), rules), rules.today);
    records.set(studentId, read);
    return read;
  };
  for (const { pool, teaching, sessions } of poolCounts(readTrackKeys(db, scope), rules.fundamentals)) {
    const newest = readNoiseModels(db, scope, pool).at(-1);
    const nameOf = (number: number): string => `${pool}#${number}`;
    const stamp = { pool, poolSessions: sessions, fittedAt: currentInstant(), nameOf };
    if (!newest)
      insertNoiseModel(db, scope, {
        ...stamp,
        poolSessions: 0,
        learnedUpTo: "",
        body: JSON.stringify(startNoiseModel("start")),
      });
    if (teaching.length < REFIT.tracks || sessions < (newest?.poolSessions ?? 0) * REFIT.growth) continue;
    const tracks: JudgedTrack[] = [];
    for (const key of teaching)
      for (const history of await historiesOf(key.studentId))
        if (history.judged.pool === pool) tracks.push(history.judged);
    const learned = await workOn({ kind: "learn", tracks, name: pool });
    if (learned.model.kind !== "learned") continue;
    await whenWritable();
    const days = tracks.flatMap((track) => track.sessions.map((session) => session.date)).sort();
    insertNoiseModel(db, scope, { ...stamp, learnedUpTo: days.at(-1) ?? "", body: JSON.stringify(learned.model) });
  }
}

/** Gives every look of a student that has none yet the model now in force; a look keeps what it was first given. */
export function assignLooks(db: Database, scope: AcademyScope, student: StudentScope, rules: AcademyRules): void {
  const record = loadStudentRecord(db, student, rules);
  const given = new Set(record.lookNoise.map((look) => `${look.sessionId} ${look.fundamentalId} ${look.clubGroup}`));
  for (const history of trackHistories(record, rules.today)) {
    const { fundamental, clubGroup } = history;
    const fresh = history.sessions.filter(({ session }) => !given.has(`${session.id} ${fundamental.id} ${clubGroup}`));
    if (fresh.length === 0) continue;
    const newest = readNoiseModels(db, scope, history.judged.pool ?? "").at(-1);
    if (!newest) throw new Error(`no noise model stands for ${history.judged.pool}`);
    const looks = fresh.map(({ session }) => ({
      sessionId: session.id,
      fundamentalId: fundamental.id,
      clubGroup,
      noiseModelName: newest.name,
    }));
    insertLookNoise(db, student, looks);
  }
}
