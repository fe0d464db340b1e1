import { readPreference } from "@/db/read/preferences";
import { currentGroups } from "@/lib/domain/club-grouping";
import {
  parseRosterView,
  type RosterView,
  type RosterWords,
  rosterQuery,
  WHOLE_ROSTER,
} from "@/lib/domain/roster-view";
import { buildRosterTools } from "@/lib/report/build-roster-tools";
import { type FilteredRoster, filterRoster } from "@/lib/report/filter-roster";
import { provedIn } from "@/lib/report/proved-months";
import type { RosterTools } from "@/lib/report/roster-tools-model";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { countedStudents } from "../academy/counted-students";
import { type Viewer, viewerKey } from "../gate";
import type { WholeRoster } from "./load-whole";

/** Under which a viewer's own view of the roster is kept. */
export const ROSTER_VIEW = "roster-view";

/** The view that a roster is asked for, and where it comes from. */
export interface ChosenView {
  readonly view: RosterView;
  /** The viewer's own view as an address says it; null: none is kept. */
  readonly kept: string | null;
  /** Whether it is the kept one because nothing was asked for. */
  readonly openedKept: "yes" | "no";
}

/** What an address asks for; where it asks for nothing, the view that the viewer keeps, else everybody. */
export function chooseView(viewer: Viewer, words: RosterWords): ChosenView {
  const value = readPreference(viewer.db, viewer.scope, viewerKey(viewer), ROSTER_VIEW);
  const mine = value === undefined ? null : parseRosterView(Object.fromEntries(new URLSearchParams(value)));
  const asked = parseRosterView(words);
  const kept = mine === null ? null : rosterQuery(mine);
  if (asked === null && mine !== null) return { view: mine, kept, openedKept: "yes" };
  return { view: asked ?? WHOLE_ROSTER, kept, openedKept: "no" };
}

/** The students whom a view asks for, and what the roster's form says. */
export function chooseStudents(
  viewer: Viewer,
  { everyone, brief, inCharge, needs, measured, grouped }: WholeRoster,
  chosen: ChosenView,
): { readonly left: FilteredRoster; readonly tools: RosterTools } {
  const { words, today } = viewer;
  const { entries, fundamentals, grouping } = everyone;
  const left = filterRoster(entries, chosen.view, {
    lists: brief.lists,
    need: ({ student }) => needs.get(student.id) ?? 0,
    coaches: inCharge.byStudent,
    proved: (studentId) => provedIn(everyone.tracks.get(studentId) ?? []),
    counted: countedStudents(viewer, chosen.view, everyone.tracks),
    today,
    locale: words.locale,
  });
  const tools = buildRosterTools(words, {
    ...chosen,
    left,
    total: entries.length,
    coaches: inCharge.coaches,
    fundamentals: fundamentals.flatMap((each) =>
      measured.has(each.id) ? [{ value: each.id, label: sayFundamental(words, each) }] : [],
    ),
    clubs: currentGroups(grouping).flatMap((group) =>
      grouped.has(group.id) ? [{ value: group.id, label: sayGroupOfClubs(words, group) }] : [],
    ),
  });
  return { left, tools };
}
