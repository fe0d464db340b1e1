import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import { givesBack, goalSeries, type RecordedBand } from "@/lib/domain/goal-band";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayClubGroup } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayGoal, sayGoalScope } from "./build-goals";
import type { HappenPart } from "./happen-model";

/** What the list of an academy's bands rests on. */
export interface AllGoalsSource {
  /** Of the academy and of ages, in the order of first days, then of entry. */
  readonly bands: readonly RecordedBand[];
  /** In the order of work. */
  readonly fundamentals: readonly Fundamental[];
  readonly grouping: ClubGrouping;
  readonly today: string;
}

/** Of each band that a later one stands in for the latest that has begun, and what is planned; given back ones are over. */
export function standingBands({
  bands,
  fundamentals,
  today,
}: Omit<AllGoalsSource, "grouping">): readonly RecordedBand[] {
  const keyOf = (band: RecordedBand): string => `${band.fundamentalId} ${band.clubGroup} ${goalSeries(band)}`;
  const begun = new Map<string, RecordedBand>();
  const kept = bands.filter(({ replaced }) => replaced !== true);
  for (const band of kept) if (band.from <= today) begun.set(keyOf(band), band);
  const place = new Map<string, number>(fundamentals.map(({ id }, at) => [id, at]));
  return kept
    .filter((band) => band.scope !== "student")
    .filter((band) => band.from > today || (begun.get(keyOf(band)) === band && !givesBack(band)))
    .sort((a, b) => (place.get(a.fundamentalId) ?? 0) - (place.get(b.fundamentalId) ?? 0));
}

/** Every band of an academy's own that holds or is planned, each with the way to its page. */
export function buildAllGoals(words: Words, source: AllGoalsSource): HappenPart {
  const { fundamentals, grouping, today } = source;
  const rows = standingBands(source).flatMap((band) => {
    const fundamental = fundamentals.find(({ id }) => id === band.fundamentalId);
    return fundamental ? [{ band, fundamental }] : [];
  });
  const columns = [
    "goals.all.fundamental",
    "goals.all.club",
    "goals.history.whose",
    "goals.history.band",
    "goals.history.from",
  ];
  return {
    margin: words.say("goals.all"),
    explains: "",
    heading: words.say("goals.all.heading", { bands: rows.length }),
    paragraphs: [],
    facts: [],
    table:
      rows.length === 0
        ? null
        : {
            caption: words.say("goals.all.caption"),
            columns: columns.map((key) => ({ label: words.say(key), align: "start" as const })),
            rows: rows.map(({ band, fundamental }) => ({
              cells: [
                sayFundamental(words, fundamental),
                sayClubGroup(words, grouping, band.clubGroup),
                sayGoalScope(words, band),
                sayGoal(words, band, fundamental),
                sayDay(words, band.from, "full"),
              ],
              tone: band.from > today ? ("quiet" as const) : ("plain" as const),
            })),
          },
    open:
      rows.length === 0
        ? null
        : {
            label: words.say("happen.open"),
            links: rows.map(({ band, fundamental }) => ({
              href: `/settings/goals?fundamental=${band.fundamentalId}&club=${band.clubGroup}#${band.id}`,
              label: sayFundamental(words, fundamental),
            })),
          },
  };
}
