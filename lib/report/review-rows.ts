import { PLATEAU_THRESHOLDS } from "@/lib/verdict/plateau-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel, sayLimit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappened, sayPosition } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import type { TableModel } from "./basic-model";
import type { ReviewRow } from "./review-model";
import type { ReviewSource, ReviewTrack } from "./review-source";
import { drawnChanges, saidVerdict } from "./said";

/** Charts that a second sheet holds with the words beside them. */
export const MOST_ROWS = 6;

const COLUMNS = ["name", "start", "now", "place", "proved", "stays"] as const;

function listedChanges({ verdict }: ReviewTrack) {
  return drawnChanges(verdict).flatMap(({ change, standing }) => (standing === "listed" ? [change] : []));
}

/** The level before the first proved change, where it is the very first; else that of the first films that count. */
function sayStart(words: Words, track: ReviewTrack): string {
  const { verdict, history, start } = track;
  const [first] = listedChanges(track);
  const level = first !== undefined && first === verdict.changes[0] ? first.before : start;
  return level === null ? words.say("review.start.none") : sayLevel(words, level, history.fundamental.unit);
}

/** Level now, or as of its day where that is too long ago. */
function sayNow(words: Words, { verdict, history }: ReviewTrack, today: string): string {
  if (verdict.levelNow === null) return words.say("review.start.none");
  const level = sayLevel(words, verdict.levelNow, history.fundamental.unit);
  const last = history.sessions.findLast(({ apart }) => apart === null)?.session.day;
  return last !== undefined && isAway(last, today)
    ? words.say("review.now.on", { level, day: sayDay(words, last, "short") })
    : level;
}

function sayProved(words: Words, track: ReviewTrack): string {
  const { verdict, history } = track;
  const { unit } = history.fundamental;
  const changes = listedChanges(track);
  if (changes.length > 0)
    return changes
      .map((change) =>
        words.say("review.proved.cell", {
          levels: sayFromTo(words, change, unit),
          happened: sayHappened(words, change),
        }),
      )
      .join("; ");
  if (saidVerdict(verdict) === "steady" && verdict.smallestWorthwhile !== null)
    return words.say("review.proved.steady", { limit: sayLimit(words, verdict.smallestWorthwhile, unit) });
  // Of what is proved for its track alone no bound is told: the question is another one.
  return verdict.changeBelow === null || verdict.change !== null
    ? words.say("review.proved.open")
    : words.say("review.proved.open.below", { limit: sayLimit(words, verdict.changeBelow, unit) });
}

/** Every fundamental in a line: start, now, where it lies, what is proved, since when it is owned. */
export function reviewTable(words: Words, { tracks, today }: ReviewSource): TableModel {
  return {
    caption: words.say("review.table.caption"),
    columns: COLUMNS.map((column) => ({ label: words.say(`review.column.${column}`), align: "start" })),
    rows: tracks.map((track) => {
      const { verdict, history } = track;
      return {
        cells: [
          sayFundamental(words, history.fundamental),
          sayStart(words, track),
          sayNow(words, track, today),
          sayPosition(words, verdict.position, verdict.levelNow, history.goal, history.fundamental.unit),
          sayProved(words, track),
          verdict.ownedSince === null ? "" : sayDay(words, verdict.ownedSince, "short"),
        ],
        tone: "plain" as const,
      };
    }),
  };
}

function sayPlateau(words: Words, { plateau, history }: ReviewTrack): string {
  if (plateau === null) return "";
  if (!("below" in plateau)) return words.say(`review.plateau.${plateau.kind}`, { weeks: plateau.weeks });
  return words.say(`review.plateau.${plateau.kind}`, {
    weeks: plateau.weeks,
    below: sayLimit(words, plateau.below, history.fundamental.unit),
    practised: plateau.practised,
    asked: plateau.asked ?? "none",
    drills: plateau.drills,
    window: PLATEAU_THRESHOLDS.plateauWeeks.value,
  });
}

/** What is talked about comes first: what changed, what is in hand, what stands still outside, what is owned. */
function weight(track: ReviewTrack, inHand: string | null): number {
  if (listedChanges(track).length > 0) return 0;
  if (track.history.fundamental.id === inHand) return 1;
  if (track.plateau !== null && !["held", "films"].includes(track.plateau.kind)) return 2;
  return track.verdict.ownedSince === null ? 4 : 3;
}

/** The fundamentals that are talked about, each with its chart, in the order of work; at most as many as a sheet holds. */
export function reviewRows(words: Words, { season, tracks }: ReviewSource): readonly ReviewRow[] {
  const rows = season.evidence.groups.flatMap((group) => group.rows);
  const inHand = rows.find(({ place }) => place === "in-hand")?.fundamentalId ?? null;
  const talked = tracks
    .map((track) => ({ track, weight: weight(track, inHand) }))
    .filter((each) => each.weight < 4)
    .sort((a, b) => a.weight - b.weight)
    .slice(0, MOST_ROWS)
    .map(({ track }) => track);
  return tracks.flatMap((track): ReviewRow[] => {
    const { id } = track.history.fundamental;
    const row = rows.find(({ fundamentalId }) => fundamentalId === id);
    if (row === undefined || !talked.includes(track)) return [];
    const { name, href, glyph, word, text, chart } = row;
    const lines = [id === inHand ? words.say("review.in-hand") : "", text, track.retained, sayPlateau(words, track)];
    return [{ id, href, name, glyph, word, lines: lines.filter((line) => line !== ""), chart }];
  });
}
