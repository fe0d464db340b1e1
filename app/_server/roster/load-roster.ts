import { filtersOf, ROSTER_SORTS, type RosterView, type RosterWords, rosterQuery } from "@/lib/domain/roster-view";
import { noteDrillsDue } from "@/lib/report/build-drills-due";
import { buildRosterPage } from "@/lib/report/build-roster";
import type { FilteredRoster } from "@/lib/report/filter-roster";
import type { RosterPage } from "@/lib/report/page-model";
import { pagesShown } from "@/lib/report/roster-pages";
import type { RosterSource } from "@/lib/report/roster-source";
import { dayIn } from "../clock";
import { loadDrillsDue } from "../drill/load-drills-due";
import { familyNotices } from "../family/family-notices";
import type { Viewer } from "../gate";
import { loadInherited } from "../people/inherited";
import { loadBrief } from "./load-brief";
import { withContacts } from "./load-everyone";
import { countTracks, loadWhole, type TrackCounts, type WholeRoster } from "./load-whole";
import { type ChosenView, chooseStudents, chooseView } from "./roster-choice";

/** Students on one page of the roster. */
const PAGE_SIZE = 60;

const one = (value: RosterWords[string]): string | undefined => (typeof value === "string" ? value : value?.[0]);

/** Everybody whom a roster's address asks for, all its pages, and what its form says; and all that they were chosen from. */
export async function loadChosen(viewer: Viewer, chosen: ChosenView, weeks?: string) {
  const { club, who, weeks: kept } = chosen.view;
  const whole = await loadWhole(viewer, { club, who, weeks: kept ?? weeks });
  return { ...chosen, ...chooseStudents(viewer, whole, chosen), whole };
}

/** What is said of the tracks of the students shown, on whatever page; of all club groups unless one is asked for. */
function countShown({ everyone, counted }: WholeRoster, view: RosterView, left: FilteredRoster): TrackCounts {
  if (filtersOf(view).length === 0) return counted;
  const tracks = left.entries.flatMap(({ student }) => everyone.tracks.get(student.id) ?? []);
  return countTracks(view.club === null ? tracks : tracks.filter(({ clubGroup }) => clubGroup === view.club));
}

/** The roster page: what its address asks for, or the view that the viewer keeps. */
export async function loadRoster(viewer: Viewer, wish: RosterWords): Promise<RosterPage> {
  const { view, left, tools, whole } = await loadChosen(viewer, chooseView(viewer, wish), one(wish.weeks));
  const { everyone, brief, firstDay } = whole;
  const { seen, proofs } = brief;
  const { words } = viewer;
  const pages = pagesShown({ total: left.entries.length, size: PAGE_SIZE, wished: wish.page });
  const who = view.who === "all" ? "here" : "all";
  const source: RosterSource = {
    academyName: viewer.academy.name,
    students: withContacts(viewer, left.entries.slice(pages.from, pages.to)),
    total: everyone.entries.length,
    consents: whole.consents,
    departed: {
      count: everyone.departed,
      shown: view.who === "all" ? "yes" : "no",
      href: `/students?${rosterQuery({ ...view, who })}`,
    },
    proofs,
    families: familyNotices(viewer),
    fundamentals: everyone.fundamentals,
    asked: view.fundamental,
    seen: seen ? { day: seenDay(viewer, seen.seenAt, seen.asOf) } : null,
    ...countShown(whole, view, left),
    from: viewer.academy.seasonStart > firstDay ? viewer.academy.seasonStart : firstDay,
    asOf: viewer.today,
    today: viewer.today,
    tools,
    csv: `/api/roster/csv?${rosterQuery(view)}`,
    sort: ROSTER_SORTS.map((each) => ({
      href: `/students?${rosterQuery({ ...view, sort: each, second: null })}#roster`,
      label: words.say(`roster.sort.${each}`),
      current: each === view.sort ? "yes" : "no",
    })),
    pages: {
      ...pages,
      of: left.entries.length,
      links: pages.numbers.map((number) => ({
        href: `/students?${rosterQuery(view, number)}#roster`,
        label: String(number),
        current: number === pages.page ? "yes" : "no",
      })),
    },
  };
  const model = buildRosterPage(words, source);
  const inherited = loadInherited(viewer);
  const drillsDue = noteDrillsDue(words, loadDrillsDue(viewer, everyone));
  const elsewhere = [inherited, drillsDue, model.families, model.consents].some((list) => list !== null)
    ? "something"
    : "nothing";
  return {
    ...model,
    notice: sayDone(words, one(wish.done)),
    inherited,
    drillsDue,
    brief: loadBrief(viewer, brief, { aside: one(wish.aside) }, elsewhere),
  };
}

/** What was just done, in words; empty: nothing. */
function sayDone(words: Viewer["words"], done: string | undefined): string {
  if (done === "handed") return words.say("handing.done.given-away");
  return done === "kept" || done === "forgotten" ? words.say(`roster.done.${done}`) : "";
}

/** The day of pressing where the academy is; on the demo, whose today stands still, that day. */
function seenDay(viewer: Viewer, seenAt: string, asOf: string): string {
  return viewer.academy.fixedToday === null ? dayIn(viewer.academy.zone, new Date(seenAt)) : asOf;
}
