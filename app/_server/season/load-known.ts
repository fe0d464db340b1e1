import { readImportBatches } from "@/db/read/import-batches";
import { readKnownThen } from "@/db/read/known";
import { readNoiseModels } from "@/db/read/noise-models";
import { readOwningRules } from "@/db/read/owning-rules";
import { readStudent } from "@/db/read/students";
import { isCalendarDay } from "@/lib/domain/calendar-day";
import { definedAt } from "@/lib/domain/fundamental-on";
import { buildKnown, type JudgedThen } from "@/lib/report/build-known";
import type { RecordPage } from "@/lib/report/record-page-model";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { knownDifferences } from "@/lib/verdict/known-differences";
import { type StudentRecord, type TrackHistory, trackHistories } from "@/lib/verdict/track-history";
import { sayClubGroup } from "@/lib/words/say-club";
import { workOn } from "../analysis/analysis-worker";
import { enginesModels } from "../analysis/refit-noise";
import { linkTables } from "../archive/table-links";
import { dayIn, endOfDay } from "../clock";
import type { StudentViewer } from "../gate";
import { bandsOf, loadBands } from "../goals/bands";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { loadEntries } from "../session/load-history";
import { chooseClubGroup } from "../settings/club-links";
import { loadCarried } from "./load-carried";

/** What the page is asked for: a day, a club group, one fundamental. */
export interface KnownWish {
  readonly on?: string;
  readonly club?: string;
  readonly fundamental?: string;
}

/**
 * The models of a pool for what was known then: those that looks name, whenever they were fitted, and as the newest the
 * newest of that time.
 */
function modelsThen(viewer: StudentViewer, pool: string, knownAt: string): readonly NoiseModel[] {
  const all = readNoiseModels(viewer.db, viewer.scope, pool);
  const then = all.filter((model) => model.fittedAt <= knownAt);
  return enginesModels([...all.filter((model) => model.fittedAt > knownAt), ...then]);
}

async function judge(viewer: StudentViewer, history: TrackHistory | undefined, knownAt: string): Promise<JudgedThen> {
  if (!history || history.judged.sessions.length === 0) return null;
  const models = modelsThen(viewer, history.judged.pool ?? "", knownAt);
  const { judged } = await workOn({ kind: "judge", track: history.judged, earlier: history.earlier, models });
  return { verdict: judged.verdict, sessions: history.judged.sessions.length };
}

/** Everything on file that a verdict of that instant could rest on. */
export function loadKnownRecord(viewer: StudentViewer, record: StudentRecord, knownAt: string): StudentRecord {
  const { db, scope, academy } = viewer;
  const all = bandsOf(loadBands(db, scope, academy), viewer.student.studentId);
  const bands = all.filter((band) => band.createdAt <= knownAt);
  const owningRules = readOwningRules(db, scope).filter((rule) => rule.recordedAt <= knownAt);
  const fundamentals = record.fundamentals.map((each) => definedAt(each, knownAt));
  return { ...record, ...readKnownThen(db, viewer.student, knownAt), fundamentals, bands, owningRules };
}

/** What was said with what was known at the end of a day, beside what is said now. */
export async function loadKnown(viewer: StudentViewer, wish: KnownWish): Promise<RecordPage> {
  const { words, today, academy } = viewer;
  const on = wish.on !== undefined && isCalendarDay(wish.on) && wish.on <= today ? wish.on : today;
  const knownAt = endOfDay(academy.zone, on);
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const then = loadKnownRecord(viewer, record, knownAt);
  const [before, hindsight] = [trackHistories(then, on), trackHistories(record, on)];
  const all = [...before, ...tracks.map((track) => track.history)].map((history) => ({ history }));
  const clubGroup = chooseClubGroup(grouping, all, wish.club);
  const only = record.fundamentals.find((each) => each.id === wish.fundamental)?.id ?? null;
  const differences = knownDifferences(then, record, on);
  const judgedTracks = [];
  for (const fundamental of record.fundamentals) {
    if (only !== null && fundamental.id !== only) continue;
    const isMine = (history: TrackHistory): boolean =>
      history.fundamental.id === fundamental.id && history.clubGroup === clubGroup;
    const now = tracks.find((track) => isMine(track.history));
    const [one, other] = [before.find(isMine), hindsight.find(isMine)];
    if (!one && !other && !now) continue;
    const known = await judge(viewer, one, knownAt);
    const alike = JSON.stringify(one?.judged) === JSON.stringify(other?.judged);
    judgedTracks.push({
      fundamental,
      known,
      hindsight: alike ? known : await judge(viewer, other, knownAt),
      now: now ? { verdict: now.verdict, sessions: now.history.judged.sessions.length } : null,
    });
  }
  const { id, alias } = readStudent(viewer.db, viewer.student);
  const page = buildKnown(words, {
    student: { id, alias },
    on,
    today,
    clubName: clubGroup === null ? "" : sayClubGroup(words, grouping, clubGroup),
    clubGroup,
    grouping,
    fundamentals: record.fundamentals,
    tracks: judgedTracks,
    differences,
    events: [...record.events, ...then.events],
    since: loadEntries(viewer).filter(
      (entry) => entry.at > knownAt || (entry.kind === "record" && (entry.change.undoneAt ?? "") > knownAt),
    ),
    filmedSince: record.sessions.filter((session) => session.day > on && session.clubGroup === clubGroup).length,
    gone: readImportBatches(viewer.db, viewer.scope).flatMap(({ fileName, createdAt, undoneAt }) =>
      createdAt <= knownAt && undoneAt !== null && undoneAt > knownAt
        ? [{ fileName, day: dayIn(academy.zone, new Date(undoneAt)) }]
        : [],
    ),
    only,
    carried: loadCarried(viewer, {
      ...{ fundamentals: record.fundamentals, clubGroup, until: on },
      of: only === null ? "latest" : { fundamentalId: only },
    }),
  });
  const which = { student: id, on, club: clubGroup ?? undefined, fundamental: only ?? undefined };
  return linkTables(words, "known", which, page);
}
