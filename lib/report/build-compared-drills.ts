import type { ClubGroup } from "@/lib/domain/club-group";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Comparison, DrillResult, Estimate } from "@/lib/drills/comparison";
import { COMPARE_THRESHOLDS } from "@/lib/verdict/compare-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayNumber, saySigned, withUnit } from "@/lib/words/number-words";
import { sayClubGroup } from "@/lib/words/say-club";
import { sayCaveats, sayEffect, sayNoReference, saySignedRange } from "@/lib/words/say-comparison";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { AcademyGroup } from "./academy-groups";
import type { Choice, ComparedDrillsPage } from "./compared-drills-model";
import { comparedEvidence } from "./compared-evidence";
import { type ComparedGroups, comparedFilter } from "./compared-groups";
import { spreadHref } from "./spread-source";

/** What the page of the comparison rests on. */
export interface ComparedDrillsSource {
  readonly fundamental: Fundamental;
  /** Null: nothing of it is measured. */
  readonly clubGroup: ClubGroup | null;
  /** Fundamentals for which drills were given, in the order of work. */
  readonly offered: readonly Fundamental[];
  readonly grouping: ClubGrouping;
  /** Groups of clubs with which it is measured. */
  readonly clubGroups: readonly ClubGroup[];
  readonly comparison: Comparison;
  readonly groups: ComparedGroups | null;
  /** The group that is compared; null: everybody. */
  readonly group: AcademyGroup | null;
  /** Drills of which this group's figures are not told, because one to four students would be known by them. */
  readonly hiddenDrills: number;
  /** Students of whom it is measured with those clubs. */
  readonly measured: number;
  /** Ids of the library's drills by name. */
  readonly idOf: ReadonlyMap<string, string>;
  readonly today: string;
}

function choices(words: Words, source: ComparedDrillsSource): Pick<ComparedDrillsPage, "fundamentals" | "clubs"> {
  const { fundamental, clubGroup, offered, clubGroups, grouping } = source;
  const fundamentals: Choice = {
    label: words.say("compared.fundamentals"),
    links: offered.map((each) => ({
      href: `/drills?for=${each.id}`,
      label: sayFundamental(words, each),
      current: each.id === fundamental.id ? "yes" : "no",
    })),
  };
  const clubs: Choice = {
    label: words.say("compared.clubs"),
    links: clubGroups.map((id) => ({
      href: `/drills?for=${fundamental.id}&club=${id}`,
      label: sayClubGroup(words, grouping, id),
      current: id === clubGroup ? "yes" : "no",
    })),
  };
  return { fundamentals, clubs: clubGroups.length > 1 ? clubs : null };
}

function provedPart(words: Words, source: ComparedDrillsSource): NonNullable<ComparedDrillsPage["proved"]> {
  const { comparison, fundamental } = source;
  const { reference, drills } = comparison;
  const works = drills.filter(({ says }) => says === "works");
  const none = sayNoReference(words, reference);
  const cameBack =
    reference.kind === "none"
      ? none
      : words.say(`compared.came-back.${reference.kind}`, {
          students: reference.students,
          ...sayEffect(words, fundamental, reference.cameBack),
        });
  return {
    margin: words.say("compared.margin.proved"),
    explains: words.say("compared.proved.explains", { drills: drills.length }),
    heading: words.say("compared.proved.heading", { works: works.length }),
    items: works.flatMap(({ drill, effect, students }) =>
      effect === null
        ? []
        : [
            {
              heading: words.say("compared.proved.item", {
                drill,
                ...sayEffect(words, fundamental, effect),
              }),
              text: words.say("compared.proved.text", { students }),
            },
          ],
    ),
    texts: cameBack === null ? [] : [cameBack],
  };
}

/** The range of an estimate, to a digit after the point; empty: nothing could be left out. */
function range(words: Words, fundamental: Fundamental, of: { readonly low: number; readonly high: number } | null) {
  return of === null ? "" : saySignedRange(words, fundamental, of.low, of.high, 1);
}

function sensitivityPart(words: Words, { comparison, fundamental }: ComparedDrillsSource) {
  const { sensitivity, drills } = comparison;
  const judged = (name: string) =>
    (drills.find(({ drill }) => drill === name)?.students ?? 0) >= COMPARE_THRESHOLDS.judged.value;
  const rows = sensitivity.filter(({ drill }) => judged(drill));
  if (rows.length === 0) return null;
  const one = (value: number | null): string =>
    value === null ? "" : withUnit(words, saySigned(words, value, 1), fundamental.unit);
  return {
    margin: words.say("compared.margin.hangs"),
    explains: words.say("compared.hangs.explains"),
    heading: words.say("compared.hangs.heading"),
    table: {
      caption: words.say("compared.hangs.caption"),
      columns: (["drill", "coach", "student", "run", "people", "hidden"] as const).map((column) => ({
        label: words.say(`compared.hangs.${column}`),
        align: column === "drill" ? ("start" as const) : ("end" as const),
      })),
      rows: rows.map((row) => ({
        cells: [
          row.drill,
          range(words, fundamental, row.coachLeftOut),
          range(words, fundamental, row.studentLeftOut),
          one(row.otherRun),
          one(row.withAgeAndHand),
          row.hiddenReason === null
            ? ""
            : words.say("compared.hidden", {
                estimate: sayNumber(words, row.hiddenReason.estimate, 1),
                interval: sayNumber(words, row.hiddenReason.interval, 1),
              }),
        ],
        tone: "plain" as const,
      })),
    },
  };
}

function carePart(words: Words, { comparison, fundamental }: ComparedDrillsSource) {
  const { perHour, perYear, leftHanded, caveats } = comparison;
  const say = (key: string, effect: Estimate | null, args = {}): string[] =>
    effect === null
      ? []
      : [
          words.say(`compared.checked.${key}`, {
            ...sayEffect(words, fundamental, effect),
            ...args,
          }),
        ];
  const checked = [
    ...say("hour", perHour?.effect ?? null, { students: perHour?.students ?? 0 }),
    ...say("year", perYear),
    ...say("left", leftHanded),
  ];
  return {
    margin: words.say("compared.margin.care"),
    heading: words.say("compared.care.heading"),
    texts: [...sayCaveats(words, caveats), words.say("compared.care.no-league")],
    checkedHeading: words.say("compared.checked.heading"),
    checked: checked.length === 0 ? [words.say("compared.checked.none")] : checked,
  };
}

/** How many work, or what else is the finding of the page. */
function titleOf(words: Words, drills: readonly DrillResult[], name: string, hiddenDrills: number): string {
  const works = drills.filter(({ says }) => says === "works").length;
  if (works > 0) return words.say("compared.title.works", { name, works, drills: drills.length });
  const noBetter = drills.filter(({ says }) => says === "no-better").length;
  if (noBetter > 0) return words.say("compared.title.no-better", { name, noBetter, drills: drills.length });
  const none = hiddenDrills === 0 ? "none" : "left-out";
  return words.say(`compared.title.${drills.length === 0 ? none : "open"}`, { name });
}

/** The way to one drill's page; absent: it is in the library under no such name. */
function hrefOf({ idOf, clubGroup }: ComparedDrillsSource): (drill: string) => string | undefined {
  const club = clubGroup === null ? "" : `?club=${clubGroup}`;
  return (drill) => {
    const id = idOf.get(drill);
    return id === undefined ? undefined : `/drills/${encodeURIComponent(id)}${club}`;
  };
}

/** The title of its document: nothing has to be compared for it. */
export function comparedDrillsTitle(words: Words): string {
  return words.say("document-title", { page: words.say("compared.document") });
}

/** The page that compares drills; words first, and no order but that of how many students a drill was given to. */
export function buildComparedDrills(
  words: Words,
  source: ComparedDrillsSource | { readonly fundamental: null },
): ComparedDrillsPage {
  const back = { href: "/academy", label: words.say("academy") };
  const ways = [
    { href: "/drills/lot", label: words.say("fair.link") },
    { href: "/drills/library", label: words.say("library") },
  ];
  const documentTitle = comparedDrillsTitle(words);
  const empty = {
    fundamentals: null,
    clubs: null,
    filter: null,
    proved: null,
    evidence: null,
    sensitivity: null,
    care: null,
  };
  if (source.fundamental === null || !("comparison" in source))
    return {
      ...{ documentTitle, back, ways, ...empty, method: null },
      title: words.say("compared.title.nothing"),
      lede: words.say("compared.lede.nothing"),
    };
  const { comparison, fundamental, clubGroup, grouping } = source;
  const name = sayFundamental(words, fundamental);
  const nothing = comparison.drills.length === 0;
  return {
    documentTitle,
    title: titleOf(words, comparison.drills, name, source.hiddenDrills),
    lede: words.say("compared.lede", {
      name,
      unit: words.say(`unit.${fundamental.unit}.name`),
      clubs: clubGroup === null ? "none" : sayClubGroup(words, grouping, clubGroup),
      measured: source.measured,
      sessions: COMPARE_THRESHOLDS.afterSessions.value,
    }),
    back,
    ways: [...ways, { href: spreadHref(fundamental.id), label: words.say("spread.link", { name }) }],
    ...choices(words, source),
    filter: comparedFilter(words, source),
    proved: nothing ? null : provedPart(words, source),
    evidence: nothing ? null : comparedEvidence(words, comparison, fundamental, hrefOf(source)),
    sensitivity: sensitivityPart(words, source),
    care: nothing ? null : carePart(words, source),
    method: nothing
      ? null
      : {
          margin: words.say("compared.margin.method"),
          heading: words.say("compared.method.heading"),
          text: words.say("compared.method", {
            run: COMPARE_THRESHOLDS.runSessions.value,
            sessions: COMPARE_THRESHOLDS.afterSessions.value,
            from: COMPARE_THRESHOLDS.retentionFrom.value,
            to: COMPARE_THRESHOLDS.retentionTo.value,
            judged: COMPARE_THRESHOLDS.judged.value,
            estimated: COMPARE_THRESHOLDS.estimated.value,
            waiters: COMPARE_THRESHOLDS.waiters.value,
          }),
        },
  };
}
