import type { Student } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { Priority } from "@/lib/verdict/choose-priority";
import { isLessSure } from "@/lib/verdict/is-less-sure";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { saySure } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappened, saySize } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import { buildChain } from "./build-chain";
import { buildContact } from "./build-contact";
import { seasonFingerprints } from "./build-fingerprint";
import { buildFirstWeek } from "./build-first-week";
import { buildKeep } from "./build-keep";
import { buildSeasonNext, seasonWork } from "./build-season-next";
import { buildTradeOffs } from "./build-trade-offs";
import { cautionsFor } from "./cautions";
import { buildChartFiles } from "./chart-files";
import { consentNotices } from "./consent-notices";
import { drillCautions } from "./drill-cautions";
import { eventRibbons, sayRibbons } from "./event-ribbons";
import type { WorkTrack } from "./order-of-work";
import type { SeasonPage } from "./page-model";
import { practiceLanes } from "./practice-lanes";
import { changeGlyph, changeKey, type DrawnChange, drawnChanges, saidGlyph, saidKey } from "./said";
import type { SeasonSource, SeasonTrack } from "./season-source";
import { drillRibbons, drillTable, seasonSettle, sessionTable } from "./season-tables";

/** A student's season: what is proved, the one next thing, every fundamental in the order of work, what would settle the rest. */
export function buildSeasonPage(words: Words, source: SeasonSource): SeasonPage {
  const { student, tracks } = source;
  const priority = seasonWork(source);
  const first = source.sessions[0]?.day;
  const last = source.sessions.at(-1)?.day;
  const age = student.birthYear === null ? null : Number(source.today.slice(0, 4)) - student.birthYear;
  const items = tracks.flatMap((track) => provedItems(words, source, track));
  const events = eventRibbons(words, source.events, { first: first ?? source.asOf, last: source.asOf });
  const chain = buildChain(words, source, priority, first ?? source.asOf);
  const inside = tracks.filter((track) => track.verdict.position === "inside").length;
  return {
    title: sayTitle(words, source, priority),
    documentTitle: words.say("document-title", { page: words.say("season.document-title") }),
    lede: words.say("season.lede", {
      age: age ?? "",
      hasAge: age === null ? "no" : "yes",
      hand: words.say(`hand.${student.hand}`),
      clubs: student.clubs,
      sessions: source.sessions.length,
      stretch: first && last ? sayStretch(words, first, last) : "",
    }),
    back: { href: "/students", label: words.say("season.back") },
    proved: {
      margin: words.say("season.margin.proved"),
      heading: words.say("season.proved.heading", {
        changes: items.filter((item) => item.glyph !== "open").length,
      }),
      items,
      empty: words.say("season.proved.empty"),
    },
    next: tracks.length === 0 && priority.stop === null ? null : buildSeasonNext(words, source, priority),
    keep: buildKeep(words, source),
    evidence: {
      margin: words.say("season.margin.evidence"),
      explains: words.say("season.explains"),
      heading: words.say("season.evidence.heading", { inside, measured: tracks.length }),
      groups: chain
        .map(({ label, entries }) => ({
          label,
          rows: entries.flatMap((entry) => (entry.kind === "measured" ? [entry.row] : [])),
        }))
        .filter(({ rows }) => rows.length > 0),
      files:
        tracks.length === 0
          ? null
          : buildChartFiles(words, `/api/students/${student.id}/season/svg?club=${source.clubGroup ?? ""}`, "season"),
      drills: drillRibbons(source, first ?? source.asOf),
      events,
      marked: sayRibbons(words, events),
      practice: practiceLanes(words, source.practice ?? [], { first: first ?? source.asOf, last: source.asOf }),
    },
    chain,
    folds: {
      chart: words.say("season.more"),
      unmeasured: words.say("season.fold.unmeasured"),
      keep: words.say("season.fold.keep", {
        count: tracks.filter(({ verdict }) => verdict.ownedSince !== null).length,
      }),
      axis: words.say("season.fold.axis"),
      contact: words.say("season.fold.contact"),
      settle: words.say("season.fold.settle"),
      sessions: words.say("season.fold.sessions"),
    },
    clubGroups: source.clubs.length > 1 ? { label: words.say("club.choose"), links: source.clubs } : null,
    drills: drillTable(words, source),
    contact: buildContact(words, { ...source, from: first ?? source.asOf }),
    settle: seasonSettle(words, tracks),
    tradeOffs: buildTradeOffs(words, source),
    sessions: sessionTable(words, source),
    firstWeek: buildFirstWeek(words, source),
    first: [
      { href: `/students/${student.id}/sessions/new`, label: words.say("season.add-session") },
      { href: "#everything", label: words.say("season.everything", { alias: student.alias }) },
    ],
    actionsHead: {
      margin: words.say("season.margin.everything"),
      heading: words.say("season.everything", { alias: student.alias }),
    },
    actions: [
      { href: `/students/${student.id}/plan`, label: words.say("plan") },
      { href: `/students/${student.id}/review`, label: words.say("review") },
      { href: `/students/${student.id}/events/new`, label: words.say("season.add-event") },
      { href: `/students/${student.id}/events`, label: words.say("happen.events") },
      { href: `/students/${student.id}/practice`, label: words.say("practice") },
      { href: `/students/${student.id}/drills`, label: words.say("drills") },
      { href: `/students/${student.id}/goals`, label: words.say("goals") },
      { href: `/students/${student.id}/read-back`, label: words.say("read-back") },
      { href: `/filming?hand=${student.hand}`, label: words.say("filming.link") },
      { href: `/import`, label: words.say("season.import") },
      { href: `/students/${student.id}/history`, label: words.say("session-page.history") },
      { href: `/api/students/${student.id}/csv`, label: words.say("download.csv") },
      { href: `/students/${student.id}/take-out`, label: words.say("take-out.open") },
      { href: `/students/${student.id}/consent`, label: words.say("consent") },
      { href: `/students/${student.id}/tell`, label: words.say("tell") },
      { href: `/students/${student.id}/family`, label: words.say("privacy.open") },
    ],
    cautions: [...drillCautions(words, source), ...cautionsFor(words, student, source.today)],
    notices: [
      ...consentNotices(words, { alias: student.alias, standing: source.consent, today: source.today }),
      ...(last !== undefined && isAway(last, source.today)
        ? [words.say("notice.away", { day: sayDay(words, last, "full") })]
        : []),
      ...seasonFingerprints(
        words,
        tracks.map((track) => track.history),
      ),
    ],
  };
}

function sayTitle(words: Words, { student: { alias }, tracks }: SeasonSource, priority: Priority<WorkTrack>): string {
  const { stop, inHand, unknown } = priority;
  if (stop !== null) return words.say("work.title.stopped", { alias });
  if (tracks.length === 0) return words.say("season.title.empty", { alias });
  if (inHand === null)
    return words.say(unknown.length === 0 ? "season.title.inside" : "work.title.nothing-known", { alias });
  const name = sayFundamental(words, inHand.item.fundamental);
  const { reason } = inHand;
  if (reason === "chosen" || reason === "unmeasured") return words.say(`work.title.${reason}`, { alias, name });
  return words.say("season.title", { alias, name, reason });
}

/** The changes of one track in order: the latest with how sure, those before it only when they stood on the list. */
function provedItems(
  words: Words,
  source: SeasonSource,
  { history, verdict }: SeasonTrack,
): SeasonPage["proved"]["items"] {
  const unit = history.fundamental.unit;
  const name = sayFundamental(words, history.fundamental);
  return drawnChanges(verdict).flatMap(({ change, standing }) => {
    const latest = change === verdict.changes.at(-1);
    if (!latest && standing === "alone") return [];
    const key = latest ? textKey(verdict, standing) : "earlier.text";
    const glyph = latest ? saidGlyph(verdict) : changeGlyph(change);
    return [
      {
        glyph,
        heading: words.say("season.proved.item", {
          word: words.say(latest ? saidKey(verdict) : changeKey(change)),
          name,
          levels: sayFromTo(words, change, unit),
        }),
        text: words.say(`season.proved.${key}`, {
          size: saySize(words, change, unit),
          happened: sayHappened(words, change),
          sure: saySure(words, verdict.evidence.noChange),
        }),
        href: href(source.student, history),
      },
    ];
  });
}

function textKey(verdict: TrackVerdict, standing: DrawnChange["standing"]): "alone" | "less-sure" | "text" {
  if (standing === "alone") return "alone";
  return isLessSure(verdict) ? "less-sure" : "text";
}

function href(student: Student, history: TrackHistory): string {
  return `/students/${student.id}/${history.fundamental.id}?club=${history.clubGroup}`;
}
