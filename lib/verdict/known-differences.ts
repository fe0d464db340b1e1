import type { Session } from "@/lib/domain/session";
import type { StudentRecord } from "./student-record";

/** What of a record a comparison looks at. */
export type ComparedRecord = Pick<
  StudentRecord,
  "sessions" | "captures" | "statedCaptureSds" | "readings" | "events" | "bands"
>;

/** One thing that is otherwise in a later record than in an earlier one. */
export type KnownDifference =
  | {
      /** A value of one swing; undefined: there was none, or there is none any more. Null: not measurable. */
      readonly kind: "value";
      readonly sessionId: string;
      readonly day: string;
      readonly swing: number;
      readonly fundamentalId: string;
      readonly from: number | null | undefined;
      readonly to: number | null | undefined;
    }
  | {
      readonly kind: "session-came" | "session-gone";
      readonly sessionId: string;
      readonly day: string;
      readonly readings: number;
    }
  | { readonly kind: "facts"; readonly sessionId: string; readonly day: string; readonly facts: readonly FactName[] }
  | { readonly kind: "camera"; readonly sessionId: string; readonly day: string }
  | { readonly kind: "event-came" | "event-gone" | "event-changed"; readonly eventId: string; readonly day: string }
  | { readonly kind: "goal"; readonly fundamentalId: string; readonly day: string };

/** Facts of a session on which a verdict rests. */
export const FACT_NAMES = [
  "day",
  "sequence",
  "clubGroup",
  "reader",
  "circumstance",
  "daysSincePractice",
  "setAsideReason",
] as const satisfies readonly (keyof Session)[];

/** Name of a fact of a session on which a verdict rests. */
export type FactName = (typeof FACT_NAMES)[number];

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function keyed<T>(list: readonly T[], name: (one: T) => string): Map<string, T> {
  return new Map(list.map((one) => [name(one), one]));
}

function sessionDifferences(then: ComparedRecord, now: ComparedRecord): KnownDifference[] {
  const [before, after] = [keyed(then.sessions, (one) => one.id), keyed(now.sessions, (one) => one.id)];
  const readings = (record: ComparedRecord, id: string): number =>
    record.readings.filter((reading) => reading.sessionId === id).length;
  const films = (record: ComparedRecord, id: string) => [
    record.captures.filter((film) => film.sessionId === id).map(({ filmReference: _film, ...film }) => film),
    record.statedCaptureSds.filter((stated) => stated.sessionId === id),
  ];
  const gone = [...before].flatMap(([id, { day }]): KnownDifference[] =>
    after.has(id) ? [] : [{ kind: "session-gone", sessionId: id, day, readings: readings(then, id) }],
  );
  const rest = [...after].flatMap(([id, session]): KnownDifference[] => {
    const { day } = session;
    const earlier = before.get(id);
    if (!earlier) return [{ kind: "session-came", sessionId: id, day, readings: readings(now, id) }];
    const facts = FACT_NAMES.filter((name) => earlier[name] !== session[name]);
    return [
      ...(facts.length > 0 ? [{ kind: "facts", sessionId: id, day, facts } as const] : []),
      ...(same(films(then, id), films(now, id)) ? [] : [{ kind: "camera", sessionId: id, day } as const]),
    ];
  });
  return [...gone, ...rest];
}

/** Values of the sessions that stand in both records. */
function valueDifferences(then: ComparedRecord, now: ComparedRecord): KnownDifference[] {
  const days = new Map(now.sessions.map((session) => [session.id, session.day]));
  const both = new Set(then.sessions.filter((session) => days.has(session.id)).map((session) => session.id));
  const name = (reading: ComparedRecord["readings"][number]): string =>
    `${reading.sessionId} ${reading.swing} ${reading.fundamentalId}`;
  const [before, after] = [keyed(then.readings, name), keyed(now.readings, name)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key): KnownDifference[] => {
    const [one, other] = [before.get(key), after.get(key)];
    const reading = other ?? one;
    if (!reading || !both.has(reading.sessionId) || (one && other && one.value === other.value)) return [];
    const { sessionId, swing, fundamentalId } = reading;
    const day = days.get(sessionId) ?? "";
    return [{ kind: "value", sessionId, day, swing, fundamentalId, from: one?.value, to: other?.value }];
  });
}

function eventDifferences(then: ComparedRecord, now: ComparedRecord): KnownDifference[] {
  const [before, after] = [keyed(then.events, (one) => one.id), keyed(now.events, (one) => one.id)];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((eventId): KnownDifference[] => {
    const [one, other] = [before.get(eventId), after.get(eventId)];
    const day = (other ?? one)?.day ?? "";
    if (!one) return [{ kind: "event-came", eventId, day }];
    if (!other) return [{ kind: "event-gone", eventId, day }];
    const said = ({ day: on, kind, rebaselines }: typeof one) => [on, kind, [...rebaselines].sort()];
    return same(said(one), said(other)) ? [] : [{ kind: "event-changed", eventId, day }];
  });
}

function goalDifferences(then: ComparedRecord, now: ComparedRecord): KnownDifference[] {
  const before = new Set(then.bands.map((band) => JSON.stringify(band)));
  return now.bands.flatMap((band): KnownDifference[] =>
    before.has(JSON.stringify(band))
      ? []
      : [{ kind: "goal", fundamentalId: band.fundamentalId, day: band.decidesFrom ?? band.from }],
  );
}

/**
 * Everything that is otherwise up to a day in what is known now than in what was known then, on which a verdict of that
 * day may rest: in the order of the days. A session that stands only in one of the two is one difference, whatever it
 * holds; notes, marks and counts of contact decide no verdict and are passed over.
 *
 * @param then record as known then
 * @param now the same student's as known now
 * @param on last day looked at, `YYYY-MM-DD`; what is dated later in both is passed over
 */
export function knownDifferences(then: ComparedRecord, now: ComparedRecord, on: string): readonly KnownDifference[] {
  const early = new Set([...then.sessions, ...now.sessions].filter((one) => one.day <= on).map((one) => one.id));
  return [
    ...sessionDifferences(then, now),
    ...valueDifferences(then, now),
    ...eventDifferences(then, now),
    ...goalDifferences(then, now),
  ]
    .filter((each) => ("sessionId" in each ? early.has(each.sessionId) : each.day <= on))
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}
