import { readLatestPains } from "@/db/read/practice";
import { readLastSeen } from "@/db/read/seen";
import { readSessionStandings } from "@/db/read/sessions";
import { readStudents } from "@/db/read/students";
import { readDrillsUnderWay, readPausesUnderWay } from "@/db/read/under-way";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { BriefFinding } from "@/lib/report/brief-finding";
import type { Brief } from "@/lib/report/brief-model";
import type { BriefSource } from "@/lib/report/brief-source";
import { AWAY_WEEKS, buildBrief } from "@/lib/report/build-brief";
import { byStudent } from "@/lib/report/by-student";
import { filmDays } from "@/lib/report/film-days";
import { findBrief } from "@/lib/report/find-brief";
import type { NewProof, RosterStudent } from "@/lib/report/roster-source";
import { usedDays } from "@/lib/report/used-days";
import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import { dayIn } from "../clock";
import { seesPainOf, type Viewer, viewerKey } from "../gate";
import { loadDue } from "../plan/load-due";
import { type Here, newProofs, watchedTracks } from "./new-proofs";
import { readPutAway } from "./put-away";

/** Weeks without a film after which a student is not seen: as long as a level may be called current. */
const USUAL_WEEKS = 6;

/** What a brief is asked for; all of it may be missing. */
export interface BriefWish {
  /** Weeks without a film. */
  readonly weeks?: string | undefined;
  /** `shown`: what was put away too. */
  readonly aside?: string | undefined;
}

/** Everybody of whom a brief is made; whoever has left is passed over. */
export interface BriefEveryone extends Here {
  readonly entries: readonly RosterStudent[];
}

/** Lists of the brief to which the table is cut beside what is newly proved. What hurts is none of them. */
const LISTED = ["watch", "ready", "blocked", "due", "stalled", "away"] as const;

type ListName = (typeof LISTED)[number] | "proved";

/** What is found for a brief, before it is laid out. */
export interface FoundBrief {
  readonly source: BriefSource;
  readonly findings: readonly BriefFinding[];
  readonly proofs: readonly NewProof[];
  /** The viewer's last pressing of "seen"; undefined: never. */
  readonly seen: ReturnType<typeof readLastSeen>;
  /** Who stands on which list, dealt with or not. */
  readonly lists: ReadonlyMap<ListName, ReadonlySet<string>>;
}

/** Days of films before the first drill: with fewer a student stands at the beginning. */
const DAYS_BEFORE = 2;

/**
 * The days of films that count of each student, with the clubs in hand. Sessions are read of those alone whose measured films
 * don't show by themselves that they are past the beginning.
 */
function countedDays(
  { db, scope }: Viewer,
  entries: readonly RosterStudent[],
): (entry: RosterStudent) => readonly string[] {
  const students = entries.filter((entry) => usedDays(entry).length < DAYS_BEFORE).map(({ student }) => student.id);
  const sessions = byStudent(readSessionStandings(db, { ...scope, students }));
  return (entry) => {
    const own = sessions.get(entry.student.id);
    return own ? filmDays({ sessions: own, clubGroup: entry.summaries[0]?.clubGroup ?? null }) : usedDays(entry);
  };
}

/** Those who are here: of whoever has left nothing is new and nothing is to be done, whatever the table shows. */
function thoseHere(viewer: Viewer, everyone: BriefEveryone): BriefSource["students"] {
  const here = new Map(
    readStudents(viewer.db, viewer.scope).flatMap(({ id, departedOn, createdAt }) =>
      departedOn === null ? [[id, createdAt] as const] : [],
    ),
  );
  const dayOf = (instant: string): string => {
    const day = dayIn(viewer.academy.zone, new Date(instant));
    // The demo's today stands still: a record that is begun there is of that day.
    return day < viewer.today ? day : viewer.today;
  };
  const daysOf = countedDays(viewer, everyone.entries);
  return everyone.entries.flatMap((entry) => {
    const begun = here.get(entry.student.id);
    if (begun === undefined) return [];
    const days = daysOf(entry);
    const isBegun = entry.lastDay === null || days.length < DAYS_BEFORE;
    return [{ ...entry, filmDays: days, since: isBegun ? dayOf(begun) : entry.lastDay }];
  });
}

/** Films that were promised and haven't come. */
function awaited(viewer: Viewer): BriefSource["due"] {
  const { films, dayOf } = loadDue(viewer);
  return films.map(({ remindedAt, ...film }) => ({
    ...film,
    remindedOn: remindedAt === null ? null : dayOf(remindedAt),
  }));
}

/** Everything that the brief on top of the viewer's roster finds. */
export function findForBrief(viewer: Viewer, everyone: BriefEveryone, weeks?: string): FoundBrief {
  const { db, scope, today, words } = viewer;
  const students = thoseHere(viewer, everyone);
  const ids = new Set(students.map(({ student }) => student.id));
  const all = everyone.all.filter(({ studentId }) => ids.has(studentId));
  const here = { entries: students, fundamentals: everyone.fundamentals, all };
  const seen = readLastSeen(db, scope, viewerKey(viewer));
  const proofs = newProofs(here, new Set(seen ? (JSON.parse(seen.body) as string[]) : []));
  const from = dayFromNumber(dayNumber(today) - BRIEF_THRESHOLDS.painDays.value);
  const source: BriefSource = {
    today,
    fundamentals: everyone.fundamentals,
    students,
    all,
    proofs,
    watched: watchedTracks(here),
    drills: readDrillsUnderWay(db, scope, today),
    pauses: readPausesUnderWay(db, scope, today),
    pains: readLatestPains(db, seesPainOf(viewer), from),
    due: awaited(viewer),
    weeks: AWAY_WEEKS.find((each) => String(each) === weeks) ?? USUAL_WEEKS,
  };
  const findings = findBrief(words, source);
  const lists = new Map<ListName, ReadonlySet<string>>(
    LISTED.map((word) => [
      word,
      new Set(findings.filter((finding) => finding.word === word).map(({ studentId }) => studentId)),
    ]),
  );
  lists.set("proved", new Set(proofs.map(({ student }) => student.id)));
  return { source, findings, proofs, seen, lists };
}

/** The brief as it stands on the page. */
export function loadBrief(
  viewer: Viewer,
  { source, findings }: FoundBrief,
  { aside }: BriefWish,
  elsewhere: "something" | "nothing",
): Brief {
  return buildBrief(viewer.words, source, findings, {
    aside: readPutAway(viewer),
    show: aside === "shown" ? "all" : "standing",
    elsewhere,
  });
}
