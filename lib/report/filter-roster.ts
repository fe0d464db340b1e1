import { ageGroupOf } from "@/lib/domain/age-group";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { foldText } from "@/lib/domain/fold-text";
import {
  filtersOf,
  NOBODY,
  type RosterFilter,
  type RosterListName,
  type RosterSort,
  type RosterView,
  withoutFilter,
} from "@/lib/domain/roster-view";
import type { RosterStudent } from "./roster-source";
import { saidGlyph } from "./said";
import type { TrackSummary } from "./track-summary";

/** What a roster is filtered and ordered by besides what its rows hold. */
export interface RosterFacts {
  /** Ids of the coaches who have a student in charge today, by student; nobody has who isn't there. */
  readonly coaches: ReadonlyMap<string, readonly string[]>;
  /** Who stands on which list of the brief. */
  readonly lists: ReadonlyMap<RosterListName, ReadonlySet<string>>;
  /** What was proved of a student, as `RosterView.since` asks for it. */
  readonly proved: (studentId: string) => ReadonlySet<string>;
  /** For what a student is counted on the academy's page, as `RosterView.counted` asks for it. */
  readonly counted: (studentId: string) => ReadonlySet<string>;
  /** How soon a student needs work: smaller comes first. */
  readonly need: (entry: RosterStudent) => number;
  readonly today: string;
  readonly locale: string;
}

/** What is left of a roster, and what each filter costs where nothing is. */
export interface FilteredRoster {
  /** In the order that was asked for. */
  readonly entries: readonly RosterStudent[];
  /** Only where nobody is left: how many would be without each filter alone, the most first. */
  readonly without: readonly { readonly filter: RosterFilter; readonly count: number }[];
}

/** Whether one track answers what is asked of tracks: the same one has to answer all of it. */
function isAsked(view: RosterView, { fundamentalId, verdict }: TrackSummary): boolean {
  if (view.fundamental !== null && fundamentalId !== view.fundamental) return false;
  if (view.place !== null && verdict.position !== view.place) return false;
  return view.verdict === null || saidGlyph(verdict) === view.verdict;
}

function matcher(view: RosterView, facts: RosterFacts): (entry: RosterStudent) => boolean {
  const parts = foldText(view.q).split(/\s+/).filter(Boolean);
  const filmedBy = view.stale === null ? null : dayFromNumber(dayNumber(facts.today) - view.stale);
  const asksTracks = view.fundamental !== null || view.place !== null || view.verdict !== null;
  return ({ student, summaries, lastDay }) => {
    if (parts.length > 0) {
      const alias = foldText(student.alias);
      if (!parts.every((part) => alias.includes(part))) return false;
    }
    if (view.show !== null && !facts.lists.get(view.show)?.has(student.id)) return false;
    if (view.coach !== null) {
      const coaches = facts.coaches.get(student.id) ?? [];
      if (view.coach === NOBODY ? coaches.length > 0 : !coaches.includes(view.coach)) return false;
    }
    if (view.age !== null && ageGroupOf(student.birthYear, facts.today) !== view.age) return false;
    if (view.hand !== null && student.hand !== view.hand) return false;
    if (view.since !== null && !facts.proved(student.id).has(view.since)) return false;
    if (view.counted !== null && !facts.counted(student.id).has(view.counted)) return false;
    if (view.club !== null && !summaries.some(({ clubGroup }) => clubGroup === view.club)) return false;
    if (filmedBy !== null && lastDay !== null && lastDay > filmedBy) return false;
    return !asksTracks || summaries.some((track) => isAsked(view, track));
  };
}

function latestProof({ summaries }: RosterStudent): string {
  const days = summaries.map(({ verdict }) => (verdict.listed === true ? (verdict.change?.provedOn ?? "") : ""));
  return days.reduce((latest, day) => (day > latest ? day : latest), "");
}

/** What a way of ordering compares: smaller comes first. */
function keyOf(sort: Exclude<RosterSort, "name">, entry: RosterStudent, facts: RosterFacts): number {
  // Only the order counts; days are written so that their digits have it.
  const day = (date: string | null): number => Number((date ?? "").replaceAll("-", ""));
  if (sort === "work") return facts.need(entry);
  if (sort === "last") return -day(entry.lastDay);
  if (sort === "stale") return day(entry.lastDay);
  if (sort === "proved") return -day(latestProof(entry));
  return -entry.summaries.filter(({ verdict }) => saidGlyph(verdict) === "open").length;
}

/** Places by alias of the very same students in a locale: to compare two thousand names is most of the work of ordering them. */
const named = new WeakMap<readonly RosterStudent[], { readonly locale: string; readonly places: NamePlaces }>();

/** Where a student comes by alias, which those of the same alias share, and by id among all. */
interface NamePlace {
  readonly byName: number;
  readonly alone: number;
}

type NamePlaces = ReadonlyMap<RosterStudent, NamePlace>;

function placesOf(all: readonly RosterStudent[], locale: string): NamePlaces {
  const known = named.get(all);
  if (known?.locale === locale) return known.places;
  const { compare } = new Intl.Collator(locale, { numeric: true });
  const sorted = all.toSorted(
    (a, b) => compare(a.student.alias, b.student.alias) || (a.student.id < b.student.id ? -1 : 1),
  );
  const places = new Map<RosterStudent, NamePlace>();
  let [byName, before] = [0, sorted[0]];
  for (const [alone, entry] of sorted.entries()) {
    if (before && compare(before.student.alias, entry.student.alias) !== 0) byName = alone;
    places.set(entry, { byName, alone });
    before = entry;
  }
  named.set(all, { locale, places });
  return places;
}

function ordered(left: readonly RosterStudent[], view: RosterView, facts: RosterFacts, places: NamePlaces) {
  const sorts = [...new Set([view.sort, ...(view.second === null ? [] : [view.second])])];
  const keyed = left.map((entry) => {
    const { byName = 0, alone = 0 } = places.get(entry) ?? {};
    const keys = sorts.map((sort) => (sort === "name" ? byName : keyOf(sort, entry, facts)));
    return { entry, keys: [...keys, byName, alone] };
  });
  keyed.sort((a, b) => {
    for (let at = 0; at < a.keys.length; at++) {
      const order = (a.keys[at] ?? 0) - (b.keys[at] ?? 0);
      if (order !== 0) return order;
    }
    return 0;
  });
  return keyed.map(({ entry }) => entry);
}

/**
 * The students of a roster that a view asks for, in its order.
 *
 * What is asked of tracks (word, place, fundamental) one and the same track of the club group shown has to answer. Whoever
 * was never filmed counts as not filmed for however many days. Aliases decide where all else is level.
 *
 * @param entries any order; each with the tracks of the club group that its row shows
 */
export function filterRoster(entries: readonly RosterStudent[], view: RosterView, facts: RosterFacts): FilteredRoster {
  const left = entries.filter(matcher(view, facts));
  const filters = filtersOf(view);
  if (left.length > 0 || filters.length === 0)
    return { entries: ordered(left, view, facts, placesOf(entries, facts.locale)), without: [] };
  const without = filters
    .map((filter) => ({ filter, count: entries.filter(matcher(withoutFilter(view, filter), facts)).length }))
    .sort((a, b) => b.count - a.count);
  return { entries: [], without };
}
