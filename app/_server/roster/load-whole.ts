import { countPlaces } from "@/lib/report/count-places";
import { workOf } from "@/lib/report/roster-rows";
import type { RosterSource, RosterStudent } from "@/lib/report/roster-source";
import { saidGlyph } from "@/lib/report/said";
import type { TrackSummary } from "@/lib/report/track-summary";
import type { Viewer } from "../gate";
import { chargesOf, type InCharge } from "./charges-of";
import { heldRoster } from "./held-roster";
import { type FoundBrief, findForBrief } from "./load-brief";
import { consentsOf, type Everyone, type EveryoneWish, loadEveryone } from "./load-everyone";

/** What is said above a roster's table of the tracks in it. */
export type TrackCounts = Pick<RosterSource, "counts" | "places">;

/** All that a viewer's roster rests on, whichever of its rows are shown: facts, no words and no drawings. */
export interface WholeRoster {
  readonly everyone: Everyone;
  readonly brief: FoundBrief;
  readonly inCharge: InCharge;
  readonly consents: RosterSource["consents"];
  /** How soon each student needs work, by id: smaller comes first. */
  readonly needs: ReadonlyMap<string, number>;
  /** Of everybody's tracks. */
  readonly counted: TrackCounts;
  /** Fundamentals and groups of clubs that anybody has a track of. */
  readonly measured: ReadonlySet<string>;
  readonly grouped: ReadonlySet<string>;
  /** The first day of any film that is judged; today where there is none. */
  readonly firstDay: string;
}

/** What is said of so many tracks. */
export function countTracks(tracks: readonly TrackSummary[]): TrackCounts {
  const counts = { gain: 0, slip: 0, steady: 0, open: 0, moved: 0 };
  for (const summary of tracks) counts[saidGlyph(summary.verdict)] += 1;
  return { counts, places: countPlaces(tracks) };
}

/** A slip, then something newly proved, then what lies outside, on its edge, inside; unmeasured last. */
function needOf(everyone: Everyone, entry: RosterStudent): number {
  const { summaries } = entry;
  const listed = summaries.some(({ verdict }) => verdict.listed === true) ? 0 : 1;
  const standing = workOf(everyone, entry).inHand?.standing;
  const place = ["slipped", "outside", "doubt"].indexOf(standing ?? "");
  if (standing === "slipped") return 0;
  return listed * 10 + (summaries.length === 0 ? 5 : place < 0 ? 4 : place + 1);
}

function firstDayOf({ all }: Everyone, today: string): string {
  let first = today;
  for (const { sessions } of all) {
    const day = sessions[0]?.date;
    if (day !== undefined && day < first) first = day;
  }
  return first;
}

/** What a roster is asked for before it is filtered. */
export interface WholeWish extends EveryoneWish {
  /** Weeks without a film after which the brief says so. */
  readonly weeks?: string | undefined;
}

/** Everybody whom the viewer's roster may show, and what the brief finds of all; held as long as nothing of it is written. */
export function loadWhole(viewer: Viewer, { club = null, who = "here", weeks }: WholeWish): Promise<WholeRoster> {
  return heldRoster(viewer, JSON.stringify([club, who, weeks]), async () => {
    const everyone = await loadEveryone(viewer, { club, who });
    // The brief is of the clubs in hand, whichever the table shows.
    const briefed = club === null ? everyone : await loadEveryone(viewer);
    const { entries, all } = everyone;
    return {
      everyone,
      brief: findForBrief(viewer, briefed, weeks),
      inCharge: chargesOf(viewer, new Set(entries.map(({ student }) => student.id))),
      consents: consentsOf(viewer, entries),
      needs: new Map(entries.map((entry) => [entry.student.id, needOf(everyone, entry)])),
      counted: countTracks(all),
      measured: new Set(all.map(({ fundamentalId }) => fundamentalId)),
      grouped: new Set<string>(all.map(({ clubGroup }) => clubGroup)),
      firstDay: firstDayOf(everyone, viewer.today),
    };
  });
}
