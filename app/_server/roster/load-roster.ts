import { readAskings } from "@/db/read/asking";
import { readCurrentSummaries } from "@/db/read/current-analyses";
import { readLastSeen } from "@/db/read/seen";
import { readLastSessionDays, readLatestContacts } from "@/db/read/sessions";
import { readStudents } from "@/db/read/students";
import type { Asking } from "@/lib/domain/asking";
import type { Fundamental } from "@/lib/domain/fundamental";
import { buildRosterPage } from "@/lib/report/build-roster";
import { chooseInHand } from "@/lib/report/order-of-work";
import type { RosterPage } from "@/lib/report/page-model";
import type { NewProof, RosterSource, RosterStudent, WatchedTrack } from "@/lib/report/roster-source";
import { saidGlyph, saidVerdict } from "@/lib/report/said";
import type { TrackSummary } from "@/lib/report/track-summary";
import { POLICY } from "@/lib/verdict/policy";
import { dayIn } from "../clock";
import { type Viewer, viewerKey } from "../gate";
import { chooseClubGroup } from "../settings/club-links";
import { type ListingInput, loadListing, withListing } from "./listing";
import { loadRules } from "./load-verdicts";

/** Students on one page of the roster. */
const PAGE_SIZE = 60;

/** Ways to put the roster in order. */
export const ROSTER_SORTS = ["work", "name", "last"] as const;

/** A way to put the roster in order. */
export type RosterSort = (typeof ROSTER_SORTS)[number];

/** What a roster is asked for. */
export interface RosterWish {
  readonly sort: string | undefined;
  readonly page: string | undefined;
}

interface Everyone {
  readonly entries: readonly RosterStudent[];
  readonly fundamentals: readonly Fundamental[];
  readonly all: readonly TrackSummary[];
}

/** Every student with the tracks of the club group in hand, and what the roster's list says of them. */
export async function loadEveryone(viewer: Viewer): Promise<Everyone> {
  const { fundamentals, grouping } = await loadRules(viewer);
  const analyses = readCurrentSummaries(viewer.db, viewer.scope, POLICY.version);
  const listing = loadListing(viewer.db, viewer.scope);
  const byStudent = new Map<string, TrackSummary[]>();
  const all = analyses.map((row): TrackSummary => {
    const { listedLooks: _, ...summary } = JSON.parse(row.summary) as ListingInput;
    return { ...summary, verdict: withListing(summary.verdict, listing) };
  });
  for (const summary of all) byStudent.set(summary.studentId, [...(byStudent.get(summary.studentId) ?? []), summary]);
  const last = new Map(readLastSessionDays(viewer.db, viewer.scope).map((row) => [row.studentId, row]));
  const askings = new Map<string, Asking[]>();
  for (const asking of readAskings(viewer.db, viewer.scope))
    askings.set(asking.studentId, [...(askings.get(asking.studentId) ?? []), asking]);
  const contacts = new Map(readLatestContacts(viewer.db, viewer.scope, 5).map((row) => [row.studentId, row]));
  const order = new Map(fundamentals.map((fundamental, place) => [fundamental.id as string, place]));
  const entries = readStudents(viewer.db, viewer.scope).map((student): RosterStudent => {
    const summaries = byStudent.get(student.id) ?? [];
    const clubGroup = chooseClubGroup(
      grouping,
      summaries.map((summary) => ({ history: summary })),
      undefined,
    );
    return {
      student,
      sessions: last.get(student.id)?.sessions ?? 0,
      lastDay: last.get(student.id)?.lastDay ?? null,
      lastClub: null,
      askings: askings.get(student.id) ?? [],
      contact: contacts.get(student.id) ?? null,
      summaries: summaries
        .filter((summary) => summary.clubGroup === clubGroup)
        .sort((a, b) => (order.get(a.fundamentalId) ?? 0) - (order.get(b.fundamentalId) ?? 0)),
    };
  });
  return { entries, fundamentals, all };
}

/** A proved change by what it says: pressed "seen" on, it is not new again. */
export function proofKey(summary: TrackSummary): string {
  const change = summary.verdict.change;
  return `${summary.verdict.id} ${summary.verdict.verdict} ${change?.provedOn ?? ""}`;
}

/** The proved changes on the list that this viewer has not pressed "seen" on; slips first, then the latest. */
function newProofs(everyone: Everyone, seenKeys: ReadonlySet<string>): NewProof[] {
  const students = new Map(everyone.entries.map((entry) => [entry.student.id, entry.student]));
  const rank = (proof: NewProof): number => (saidVerdict(proof.summary.verdict) === "slip" ? 0 : 1);
  return everyone.all
    .filter(
      (summary) =>
        summary.verdict.listed === true && summary.verdict.change !== null && !seenKeys.has(proofKey(summary)),
    )
    .flatMap((summary): NewProof[] => {
      const student = students.get(summary.studentId);
      const fundamental = everyone.fundamentals.find((each) => each.id === summary.fundamentalId);
      return student && fundamental ? [{ key: proofKey(summary), student, fundamental, summary }] : [];
    })
    .sort(
      (a, b) =>
        rank(a) - rank(b) ||
        (b.summary.verdict.change?.provedOn ?? "").localeCompare(a.summary.verdict.change?.provedOn ?? "") ||
        a.key.localeCompare(b.key),
    );
}

/** The tracks with an alarm of the watch over what is owned, of everybody. */
function watchedTracks(everyone: Everyone): readonly WatchedTrack[] {
  const students = new Map(everyone.entries.map((entry) => [entry.student.id, entry.student]));
  return everyone.all.flatMap((summary): WatchedTrack[] => {
    if (summary.verdict.watch === null) return [];
    const student = students.get(summary.studentId);
    const fundamental = everyone.fundamentals.find((each) => each.id === summary.fundamentalId);
    return student && fundamental ? [{ student, fundamental, summary }] : [];
  });
}

/** Everything proved and listed now, by key: what pressing "seen" puts away. */
export async function loadProofKeys(viewer: Viewer): Promise<readonly string[]> {
  return newProofs(await loadEveryone(viewer), new Set()).map((proof) => proof.key);
}

/** The roster page. */
export async function loadRoster(viewer: Viewer, wish: RosterWish): Promise<RosterPage> {
  const everyone = await loadEveryone(viewer);
  const seen = readLastSeen(viewer.db, viewer.scope, viewerKey(viewer));
  const keys = new Set(seen ? (JSON.parse(seen.body) as string[]) : []);
  const sort = ROSTER_SORTS.find((each) => each === wish.sort) ?? "work";
  const sorted = sortStudents(everyone, sort);
  const pageCount = Math.max(1, Math.ceil(sorted.length / PAGE_SIZE));
  const wished = Number(wish.page ?? "1");
  const page = Number.isInteger(wished) && wished >= 1 && wished <= pageCount ? wished : 1;
  const counts = { gain: 0, slip: 0, steady: 0, open: 0, moved: 0 };
  for (const summary of everyone.all) counts[saidGlyph(summary.verdict)] += 1;
  const firstDays = everyone.all.flatMap((summary) => summary.sessions.slice(0, 1).map((session) => session.date));
  const firstDay = firstDays.reduce((first, day) => (day < first ? day : first), viewer.today);
  const { words } = viewer;
  const source: RosterSource = {
    academyName: viewer.academy.name,
    students: sorted.slice((page - 1) * PAGE_SIZE, page * PAGE_SIZE),
    total: sorted.length,
    proofs: newProofs(everyone, keys),
    watched: watchedTracks(everyone),
    fundamentals: everyone.fundamentals,
    seen: seen ? { day: seenDay(viewer, seen.seenAt, seen.asOf) } : null,
    counts,
    from: viewer.academy.seasonStart > firstDay ? viewer.academy.seasonStart : firstDay,
    asOf: viewer.today,
    today: viewer.today,
    sort: ROSTER_SORTS.map((each) => ({
      href: `/students?sort=${each}`,
      label: words.say(`roster.sort.${each}`),
      current: each === sort ? "yes" : "no",
    })),
    pages: Array.from({ length: pageCount }, (_, place) => ({
      href: `/students?sort=${sort}&page=${place + 1}`,
      label: String(place + 1),
      current: place + 1 === page ? "yes" : "no",
    })),
  };
  return buildRosterPage(words, source);
}

/** The day of pressing where the academy is; on the demo, whose today stands still, that day. */
function seenDay(viewer: Viewer, seenAt: string, asOf: string): string {
  return viewer.academy.fixedToday === null ? dayIn(viewer.academy.zone, new Date(seenAt)) : asOf;
}

function sortStudents(everyone: Everyone, sort: RosterSort): readonly RosterStudent[] {
  if (sort === "name") return everyone.entries;
  if (sort === "last") return [...everyone.entries].sort((a, b) => (b.lastDay ?? "").localeCompare(a.lastDay ?? ""));
  return [...everyone.entries]
    .map((entry) => ({ entry, need: need(everyone, entry) }))
    .sort((a, b) => a.need - b.need)
    .map(({ entry }) => entry);
}

/** Smaller comes first: a slip, then something newly proved, then what lies outside, on its edge, inside; unmeasured last. */
function need(everyone: Everyone, entry: RosterStudent): number {
  const ranked = everyone.fundamentals.flatMap((fundamental) => {
    const summary = entry.summaries.find((each) => each.fundamentalId === fundamental.id);
    return summary ? [{ fundamental, summary }] : [];
  });
  const listed = ranked.some(({ summary }) => summary.verdict.listed === true) ? 0 : 1;
  const reason = chooseInHand(ranked)?.reason;
  const place = reason === undefined ? (ranked.length === 0 ? 4 : 3) : ["slipped", "outside", "doubt"].indexOf(reason);
  return reason === "slipped" ? 0 : listed * 10 + place + 1;
}
