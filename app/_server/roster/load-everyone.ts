import { readAskings } from "@/db/read/asking";
import { readLastSessionDays, readLatestContacts } from "@/db/read/sessions";
import { readStudents } from "@/db/read/students";
import type { Asking } from "@/lib/domain/asking";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { RosterSource, RosterStudent } from "@/lib/report/roster-source";
import type { TrackSummary } from "@/lib/report/track-summary";
import { standingsOf } from "../consent/consent-gate";
import type { Viewer } from "../gate";
import { chooseClubGroup } from "../settings/club-links";
import { type ListedTracks, loadListedTracks } from "./listing";
import { loadRules } from "./load-verdicts";
import { loadWorkFacts } from "./work-facts";

/** Sessions over which solid strikes are added up. */
const CONTACT_SESSIONS = 5;

/** Everybody of a roster. */
export interface Everyone {
  readonly entries: readonly RosterStudent[];
  readonly fundamentals: readonly Fundamental[];
  readonly grouping: ClubGrouping;
  /** Of all club groups. */
  readonly all: readonly TrackSummary[];
  /** The same by student, of whoever isn't shown too. */
  readonly tracks: ListedTracks;
  /** How many have left, shown or not. */
  readonly departed: number;
}

/** Whom a roster shows, and which of their clubs. */
export interface EveryoneWish {
  /** `all`: whoever has left too. */
  readonly who?: "here" | "all";
  /** The club group wanted; where a student has none of it, and without a wish, the one with most sessions. */
  readonly club?: string | null;
}

function byStudent<T extends { readonly studentId: string }>(rows: readonly T[]): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const own = found.get(row.studentId);
    if (own) own.push(row);
    else found.set(row.studentId, [row]);
  }
  return found;
}

/**
 * Every student with the tracks of the club group in hand, and what the roster's list says of them; whoever has left only
 * where that is wished. Solid strikes are left to `withContacts`: a page needs them of its own rows alone.
 */
export async function loadEveryone(
  viewer: Viewer,
  { who = "here", club = null }: EveryoneWish = {},
): Promise<Everyone> {
  const { fundamentals, grouping } = await loadRules(viewer);
  const { db, scope } = viewer;
  const tracks = loadListedTracks(db, scope);
  const students = readStudents(db, scope);
  const shown = who === "all" ? students : students.filter(({ departedOn }) => departedOn === null);
  const last = new Map(readLastSessionDays(db, scope).map((row) => [row.studentId, row]));
  const askings: ReadonlyMap<string, readonly Asking[]> = byStudent(readAskings(db, scope));
  const work = loadWorkFacts(viewer, fundamentals);
  const order = new Map(fundamentals.map((fundamental, place) => [fundamental.id as string, place]));
  const place = ({ fundamentalId }: TrackSummary): number => order.get(fundamentalId) ?? 0;
  const entries = shown.map((student): RosterStudent => {
    const own = tracks.get(student.id) ?? [];
    const clubGroup = chooseClubGroup(
      grouping,
      own.map((summary) => ({ history: summary })),
      club ?? undefined,
    );
    return {
      student,
      sessions: last.get(student.id)?.sessions ?? 0,
      lastDay: last.get(student.id)?.lastDay ?? null,
      lastClub: null,
      askings: askings.get(student.id) ?? [],
      work: work(student.id, clubGroup),
      contact: null,
      summaries: own.filter((summary) => summary.clubGroup === clubGroup).sort((a, b) => place(a) - place(b)),
    };
  });
  const all = shown.flatMap(({ id }) => tracks.get(id) ?? []);
  const departed = students.filter((each) => each.departedOn !== null).length;
  return { entries, fundamentals, grouping, all, tracks, departed };
}

/** The rows of a page with their solid strikes over the latest sessions with a count. */
export function withContacts(
  { db, scope }: Pick<Viewer, "db" | "scope">,
  entries: readonly RosterStudent[],
): readonly RosterStudent[] {
  const students = entries.map(({ student }) => student.id);
  const found = readLatestContacts(db, { ...scope, students }, CONTACT_SESSIONS);
  const contacts = new Map(found.map((row) => [row.studentId, row]));
  return entries.map((entry) => ({ ...entry, contact: contacts.get(entry.student.id) ?? null }));
}

/** Where the consent to measure of each student stands today; only the roster's page asks for it. */
export function consentsOf(viewer: Viewer, entries: readonly RosterStudent[]): RosterSource["consents"] {
  const standings = standingsOf(viewer, "measure");
  return entries.map(({ student }) => ({ student, consent: standings.get(student.id) ?? { kind: "none" } }));
}
