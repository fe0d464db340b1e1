import type { Archive, ArchivedStudent } from "@/lib/domain/archive";
import type { ClubGroup } from "@/lib/domain/club-group";
import { filmPlanText, parseFilmPlanBody } from "@/lib/domain/film-plan";
import type { FundamentalId } from "@/lib/domain/fundamental";

/** Ids here by the ids of an archive; what isn't named keeps its own. */
export interface ArchiveIds {
  readonly fundamentals: ReadonlyMap<string, string>;
  readonly drills: ReadonlyMap<string, string>;
  readonly groups: ReadonlyMap<string, ClubGroup>;
}

interface Named {
  readonly fundamentalId: string;
}

interface Grouped {
  readonly clubGroup: string;
}

class Names {
  constructor(private readonly ids: ArchiveIds) {}

  fundamental<T extends Named>(row: T): T {
    const id = this.ids.fundamentals.get(row.fundamentalId);
    return id === undefined ? row : { ...row, fundamentalId: id as FundamentalId };
  }

  group<T extends Grouped>(row: T): T {
    const id = this.ids.groups.get(row.clubGroup);
    return id === undefined ? row : { ...row, clubGroup: id };
  }

  both<T extends Named & Grouped>(row: T): T {
    return this.group(this.fundamental(row));
  }

  orNone<T extends { readonly fundamentalId: string | null }>(row: T): T {
    const id = row.fundamentalId === null ? undefined : this.ids.fundamentals.get(row.fundamentalId);
    return id === undefined ? row : { ...row, fundamentalId: id };
  }

  /** A pool of noise models goes by fundamental and club group. */
  pool(pool: string): string {
    const [fundamentalId = "", clubGroup = ""] = pool.split("/");
    const { fundamentals, groups } = this.ids;
    return `${fundamentals.get(fundamentalId) ?? fundamentalId}/${groups.get(clubGroup) ?? clubGroup}`;
  }

  /** What no plan can be read from stays as it is. */
  planned<T extends { readonly body: string }>(row: T): T {
    const plan = parseFilmPlanBody(row.body);
    if (plan === null || !plan.fundamentals.some(({ id }) => this.ids.fundamentals.has(id))) return row;
    const fundamentals = plan.fundamentals.map(({ id, swings }) => ({
      id: this.ids.fundamentals.get(id) ?? id,
      swings,
    }));
    return { ...row, body: filmPlanText({ ...plan, fundamentals }) };
  }

  joined(text: string): string {
    return text
      .split(",")
      .map((id) => this.ids.fundamentals.get(id) ?? id)
      .join(",");
  }
}

const placeOf = ({ saidClubGroup, day }: ArchivedStudent["sessions"][number]): string => `${saidClubGroup} ${day}`;

/** Of two groups that are one here, sessions of a day may bear one number: those of another name get the next that is free. */
function renumber(
  before: ArchivedStudent["sessions"],
  after: ArchivedStudent["sessions"],
): ArchivedStudent["sessions"] {
  const isMoved = (at: number): boolean => before[at]?.saidClubGroup !== after[at]?.saidClubGroup;
  const taken = new Map<string, Set<number>>();
  const take = (session: ArchivedStudent["sessions"][number]): number => {
    const place = placeOf(session);
    const numbers = taken.get(place) ?? new Set();
    const sequence = numbers.has(session.sequence) ? Math.max(...numbers) + 1 : session.sequence;
    taken.set(place, numbers.add(sequence));
    return sequence;
  };
  after.forEach((session, at) => {
    if (!isMoved(at)) take(session);
  });
  return after.map((session, at) => (isMoved(at) ? { ...session, sequence: take(session) } : session));
}

/** The first of each place: of two groups that are one here, what is said of both would stand twice. */
function once<T extends Named & Grouped & { readonly sessionId?: string }>(rows: readonly T[]): T[] {
  const seen = new Set<string>();
  return rows.filter(({ sessionId = "", fundamentalId, clubGroup }) => {
    const size = seen.size;
    return seen.add(JSON.stringify([sessionId, fundamentalId, clubGroup])).size > size;
  });
}

function renameSessions(names: Names, { groups }: ArchiveIds, sessions: ArchivedStudent["sessions"]) {
  const renamed = sessions.map((session) => ({
    ...names.group(session),
    saidClubGroup: groups.get(session.saidClubGroup) ?? session.saidClubGroup,
    statedCaptureSds: session.statedCaptureSds.map((row) => names.fundamental(row)),
    looks: once(session.looks.map((row) => names.both(row))),
    swings: session.swings.map((swing) => ({
      ...swing,
      readings: swing.readings.map((row) => names.fundamental(row)),
    })),
  }));
  return renumber(sessions, renamed);
}

/** Of two pools that are one here, the models of the first: their numbers would meet. */
function renameModels(names: Names, models: Archive["rules"]["noiseModels"]) {
  const first = new Map<string, string>();
  return models
    .map((model) => ({ model, pool: names.pool(model.pool) }))
    .filter(({ model, pool }) => {
      first.set(pool, first.get(pool) ?? model.pool);
      return first.get(pool) === model.pool;
    })
    .map(({ model, pool }) => ({ ...model, pool }));
}

function renameStudent(names: Names, ids: ArchiveIds, student: ArchivedStudent): ArchivedStudent {
  return {
    ...student,
    sessions: renameSessions(names, ids, student.sessions),
    events: student.events.map((event) => ({
      ...event,
      rebaselines: names.joined(event.rebaselines),
      changes: event.changes.map((change) => ({
        ...change,
        before: names.joined(change.before),
        after: names.joined(change.after),
      })),
    })),
    assignments: student.assignments.map((given) => ({
      ...names.fundamental(given),
      drillId: ids.drills.get(given.drillId) ?? given.drillId,
    })),
    askings: student.askings.map((row) => names.both(row)),
    priorities: student.priorities.map((row) => names.group(names.orNone(row))),
    filmPlans: student.filmPlans.map((row) => names.planned(names.group(row))),
    readBacks: student.readBacks.map((row) => names.fundamental(row)),
    snapshots: student.snapshots.map((row) => names.both(row)),
    carried: once(student.carried.map((row) => names.both(row))),
  };
}

/** An archive with other ids of fundamentals, drills and club groups wherever it names them. */
export function renameArchive(archive: Archive, ids: ArchiveIds): Archive {
  const names = new Names(ids);
  return {
    ...archive,
    rules: {
      ...archive.rules,
      goalBands: archive.rules.goalBands.map((row) => names.both(row)),
      noiseModels: renameModels(names, archive.rules.noiseModels),
      readerErrors: archive.rules.readerErrors.map((row) => names.fundamental(row)),
    },
    students: archive.students.map((student) => renameStudent(names, ids, student)),
    rereads: archive.rereads.map((drawn) => ({ ...drawn, items: drawn.items.map((row) => names.fundamental(row)) })),
  };
}
