import type { EnteredReading } from "@/lib/domain/session-entry";
import type { ImportContext, ReadingDraft, RowDraft } from "./row-draft";

/** Facts of a session that every row of it repeats or leaves blank; the first written one holds. */
const FACTS = ["club", "circumstance", "aid", "reader", "clubGroup"] as const;

/** More sessions of one student and day are a mistake of the file's. */
const SESSION_LIMIT = 20;

/** A session while its rows are being gathered. */
export interface SessionDraft {
  readonly alias: string;
  readonly day: string;
  readonly sequence: number;
  readonly rows: RowDraft[];
  readonly facts: Partial<Record<(typeof FACTS)[number], string>>;
  readonly swings: Map<number, SwingDraft>;
}

export interface SwingDraft {
  readonly readings: Map<string, { readonly draft: ReadingDraft; readonly reading: EnteredReading }>;
  readonly notes: Set<string>;
}

function fits(session: SessionDraft, row: RowDraft): boolean {
  return FACTS.every((fact) => {
    const mine = row[fact];
    const theirs = session.facts[fact];
    return mine === null || theirs === undefined || mine === theirs;
  });
}

function join(session: SessionDraft, row: RowDraft): void {
  session.rows.push(row);
  for (const fact of FACTS) {
    const mine = row[fact];
    if (mine !== null) session.facts[fact] ??= mine;
  }
}

/**
 * Puts rows together that are one filming: the same student and day, and no contradiction in club, circumstances,
 * reader or session number. Of several sessions of one day and club group the first in the file counts as the first.
 */
export function gatherSessions(rows: readonly RowDraft[], context: ImportContext): readonly SessionDraft[] {
  const days = new Map<string, SessionDraft[]>();
  const sessions: SessionDraft[] = [];
  for (const row of rows) {
    const key = `${row.alias}\u0000${row.day}`;
    const others = days.get(key) ?? [];
    const found = others.findLast(
      (session) => fits(session, row) && (row.sequence === null || row.sequence === session.sequence),
    );
    if (found) {
      join(found, row);
      continue;
    }
    if (others.length >= SESSION_LIMIT) {
      context.log.issue({
        code: "too-many-sessions",
        row: row.row,
        args: { alias: row.alias, day: row.day, limit: SESSION_LIMIT },
      });
      row.state = "refused";
      continue;
    }
    const taken = others.filter((session) => session.facts.clubGroup === row.clubGroup).map(({ sequence }) => sequence);
    let sequence = row.sequence ?? 1;
    while (taken.includes(sequence)) sequence++;
    if (row.sequence !== null && sequence !== row.sequence) {
      context.log.note("session-renumbered", row.row, null, { value: row.sequence, taken: sequence });
    } else if (row.sequence === null && sequence > 1)
      context.log.note("second-session", row.row, null, { day: row.day, alias: row.alias, taken: sequence });
    const session: SessionDraft = { alias: row.alias, day: row.day, sequence, rows: [], facts: {}, swings: new Map() };
    join(session, row);
    days.set(key, [...others, session]);
    sessions.push(session);
  }
  return sessions;
}

/** The first written fact of a session's rows; rows that say otherwise are named. */
export function sharedFact<T extends string | number>(
  session: SessionDraft,
  field: string,
  factOf: (row: RowDraft) => T | null,
  context: ImportContext,
): T | null {
  let held: T | null = null;
  for (const row of session.rows) {
    const mine = factOf(row);
    if (mine === null || mine === held) continue;
    if (held === null) held = mine;
    else context.log.issue({ code: `differs-${field}`, row: row.row, value: String(mine), args: { taken: held } });
  }
  return held;
}
