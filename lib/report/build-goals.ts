import type { ClubGroup } from "@/lib/domain/club-group";
import { clubKindOf } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";
import { type GoalBand, givesBack, goalInForce, goalSeries, type RecordedBand } from "@/lib/domain/goal-band";
import type { Student } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { datedGoalOn } from "@/lib/verdict/goal-at";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand } from "@/lib/words/number-words";
import { sayFundamental, sayPlus } from "@/lib/words/say-fundamental";
import { cautionsFor } from "./cautions";
import type { HappenPage, HappenPart } from "./happen-model";
import type { Fact } from "./page-model";
import { changeKey, drawnChanges } from "./said";
import { sayOwnedAnew } from "./say-owned";

/** What the page of a goal band rests on. */
export interface GoalsSource {
  /** Null: the page is the academy's. */
  readonly student: Student | null;
  readonly fundamental: Fundamental;
  readonly clubGroup: ClubGroup;
  readonly clubName: string;
  /** Every band that was set for them with these clubs, in the order of first days, then of entry. */
  readonly bands: readonly RecordedBand[];
  /** What was said under them; null: nothing is measured, or the page is the academy's. */
  readonly track: { readonly history: TrackHistory; readonly verdict: TrackVerdict } | null;
  readonly today: string;
  readonly dayOf: (instant: string) => string;
}

/** The band in force today; on the academy's page that of everybody without a narrower one. */
export function goalNow({ student, fundamental, clubGroup, bands, today }: GoalsSource): GoalBand {
  const whose = student ?? { id: "", birthYear: null };
  return goalInForce(bands, fundamental, clubGroup, whose, today);
}

/** The name of those whom a band is for. */
export function sayGoalScope(words: Words, { scope, ageFrom, ageTo }: GoalBand): string {
  return words.say(`goals.scope.${scope}`, { from: ageFrom ?? "", to: ageTo ?? "" });
}

/** A band as it is told; one without edges was given back. */
export function sayGoal(words: Words, band: GoalBand, { unit }: Fundamental): string {
  return givesBack(band) ? words.say("goals.given-back") : sayBand(words, band, unit);
}

/** One fact for each whose band there may be: what was set last, since when, and which of them holds. */
function scopeFacts(words: Words, source: GoalsSource): readonly Fact[] {
  const { student, fundamental, clubGroup, bands, today } = source;
  const now = goalNow(source);
  const series = new Map<string, RecordedBand[]>();
  for (const band of bands) series.set(goalSeries(band), [...(series.get(goalSeries(band)) ?? []), band]);
  const builtIn: GoalBand = { ...now, ...fundamental.goals[clubKindOf(clubGroup)], scope: "built-in" };
  const fact = (band: GoalBand, note: string): Fact => ({
    name: sayGoalScope(words, band),
    value: sayGoal(words, band, fundamental),
    note: [goalSeries(band) === goalSeries(now) ? words.say("goals.holds") : "", note]
      .filter((each) => each !== "")
      .join(", "),
  });
  const none = (scope: "academy" | "student"): Fact => ({
    name: sayGoalScope(words, { ...builtIn, scope }),
    value: words.say("goals.none"),
    note: "",
  });
  const set = [...series.values()].flatMap((own): readonly Fact[] => {
    const begun = own.filter(({ from, replaced }) => from <= today && replaced !== true).at(-1);
    const planned = own.filter(({ from, replaced }) => from > today && replaced !== true);
    const tell = (band: GoalBand, key: "since" | "from-then"): Fact =>
      fact(band, words.say(`goals.${key}`, { day: sayDay(words, band.from, "full") }));
    return [
      ...(begun === undefined ? [] : [tell(begun, "since")]),
      ...planned.map((band) => ({
        ...tell(band, "from-then"),
        note: words.say("goals.from-then", { day: sayDay(words, band.from, "full") }),
      })),
    ];
  });
  const has = (scope: GoalBand["scope"]): boolean => bands.some((band) => band.scope === scope);
  return [
    {
      ...fact(builtIn, words.say("goals.always")),
      ...(now.scope === "built-in" ? {} : { note: words.say("goals.always") }),
    },
    ...(has("academy") ? [] : [none("academy")]),
    ...set,
    ...(student === null || has("student") ? [] : [none("student")]),
  ];
}

/** What was said under an earlier band and keeps its word, and what became of owning. */
function keptWords(words: Words, { track, fundamental }: GoalsSource): readonly string[] {
  if (track === null || track.history.judged.goals === undefined) return [];
  const { history, verdict } = track;
  const kept = drawnChanges(verdict)
    .filter(({ standing }) => standing === "listed")
    .map(({ change }) =>
      words.say("goals.kept", {
        word: words.say(changeKey(change)),
        day: sayDay(words, change.provedOn, "full"),
        band: sayBand(words, datedGoalOn(history.judged, change.provedOn), fundamental.unit),
      }),
    );
  return [...kept, sayOwnedAnew(words, history, verdict)].filter((text) => text !== "");
}

function inForcePart(words: Words, source: GoalsSource): HappenPart {
  return {
    margin: words.say("goals.in-force"),
    explains: words.say("goals.in-force.explains"),
    heading: words.say(`goals.in-force.heading.${goalNow(source).scope}`),
    paragraphs: keptWords(words, source),
    facts: scopeFacts(words, source),
    table: null,
    open: null,
  };
}

function sayEntered(words: Words, { who, createdAt }: RecordedBand, dayOf: GoalsSource["dayOf"]): string {
  const day = sayDay(words, dayOf(createdAt), "full");
  return who === "" ? words.say("goals.history.built") : words.say("goals.history.entered-by", { day, who });
}

function sayFrom(words: Words, { from, decidesFrom, replaced }: RecordedBand): string {
  const day = sayDay(words, from, "full");
  if (replaced === true) return words.say("goals.history.replaced", { day });
  if (decidesFrom === undefined) return day;
  return words.say("goals.history.dated-back", { day, entered: sayDay(words, decidesFrom, "full") });
}

function historyPart(words: Words, source: GoalsSource): HappenPart {
  const { bands, fundamental, dayOf } = source;
  const now = goalNow(source);
  const columns = ["from", "whose", "band", "reason", "entered"];
  return {
    margin: words.say("goals.history"),
    explains: "",
    heading: words.say("goals.history.heading", { bands: bands.length }),
    paragraphs: bands.length === 0 ? [words.say("goals.history.none")] : [],
    facts: [],
    table:
      bands.length === 0
        ? null
        : {
            caption: words.say("goals.history.caption"),
            columns: columns.map((name) => ({ label: words.say(`goals.history.${name}`), align: "start" as const })),
            rows: [...bands].reverse().map((band) => ({
              cells: [
                sayFrom(words, band),
                sayGoalScope(words, band),
                givesBack(band) ? words.say("goals.history.back") : sayBand(words, band, fundamental.unit),
                band.reason,
                sayEntered(words, band, dayOf),
              ],
              tone: band === now ? ("plain" as const) : ("quiet" as const),
            })),
          },
    open: null,
  };
}

/** The page of one goal band: what holds, what was said under it, and every band that was ever set there. */
export function buildGoalsPage(words: Words, source: GoalsSource): HappenPage {
  const { student, fundamental, clubName } = source;
  const now = goalNow(source);
  const whose = student === null ? "academy" : "student";
  const none = now.low === null && now.high === null ? "none." : "";
  const name = sayFundamental(words, fundamental);
  const args = { alias: student?.alias ?? "", name, club: clubName, band: sayBand(words, now, fundamental.unit) };
  return {
    title: words.say(`goals.title.${none}${whose}`, args),
    documentTitle: words.say("document-title", { page: words.say("goals") }),
    lede: words.say(`goals.lede.${whose}`, { club: clubName, plus: sayPlus(words, fundamental) }),
    back:
      student === null
        ? { href: "/settings", label: words.say("goals.back.settings") }
        : {
            href: `/students/${student.id}`,
            label: words.say("fundamental-page.back", { alias: student.alias }),
          },
    actions: [],
    parts: [inForcePart(words, source), historyPart(words, source)],
    cautions: student === null ? [] : cautionsFor(words, student, source.today),
  };
}
