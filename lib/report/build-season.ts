import { PHASES } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayLevel, sayShare, saySure } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappened, sayPosition, saySize } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import { buildContact } from "./build-contact";
import { seasonFingerprints } from "./build-fingerprint";
import { verdictSentence } from "./build-fundamental";
import { buildSeasonChart } from "./build-season-chart";
import { buildWatch } from "./build-watch";
import { cautionsFor } from "./cautions";
import { buildChartFiles } from "./chart-files";
import { eventRibbons, sayRibbons } from "./event-ribbons";
import { chooseInHand } from "./order-of-work";
import type { Fact, SeasonPage, SeasonRow } from "./page-model";
import { practiceLanes } from "./practice-lanes";
import { changeGlyph, changeKey, drawnChanges, provedAlone, saidGlyph, saidKey } from "./said";
import type { SeasonSource, SeasonTrack } from "./season-source";
import { drillRibbons, drillTable, seasonSettle, sessionTable } from "./season-tables";
import { buildTrackSummary } from "./track-summary";

/** A student's season: what is proved, the one next thing, every fundamental in the order of work, what would settle the rest. */
export function buildSeasonPage(words: Words, source: SeasonSource): SeasonPage {
  const { student, tracks } = source;
  const inHand = chooseInHand(
    tracks.map(({ history, verdict }) => ({
      fundamental: history.fundamental,
      summary: buildTrackSummary(history, verdict),
    })),
  );
  const first = source.sessions[0]?.day;
  const last = source.sessions.at(-1)?.day;
  const age = student.birthYear === null ? null : Number(source.today.slice(0, 4)) - student.birthYear;
  const items = tracks.flatMap((track) => provedItems(words, source, track));
  const events = eventRibbons(words, source.events, { first: first ?? source.asOf, last: source.asOf });
  const inside = tracks.filter((track) => track.verdict.position === "inside").length;
  return {
    title:
      inHand === null
        ? words.say(tracks.length === 0 ? "season.title.empty" : "season.title.inside", { alias: student.alias })
        : words.say("season.title", {
            alias: student.alias,
            name: sayFundamental(words, inHand.track.fundamental),
            reason: inHand.reason,
          }),
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
    next:
      inHand === null
        ? null
        : {
            margin: words.say("season.margin.next"),
            heading: words.say(`season.next.${inHand.reason}`, {
              name: sayFundamental(words, inHand.track.fundamental),
            }),
            text: words.say(`season.next.${inHand.reason}.text`, {
              name: sayFundamental(words, inHand.track.fundamental),
            }),
            alters: words.say("season.next.alters"),
          },
    evidence: {
      margin: words.say("season.margin.evidence"),
      explains: words.say("season.explains"),
      heading: words.say("season.evidence.heading", { inside, measured: tracks.length }),
      groups: PHASES.map((phase) => ({
        label: words.say(`phase.${phase}`),
        rows: tracks
          .filter((track) => track.history.fundamental.phase === phase)
          .map((track) => seasonRow(words, source, track, inHand?.track.fundamental.id ?? null, first ?? source.asOf)),
      })).filter((group) => group.rows.length > 0),
      files:
        tracks.length === 0
          ? null
          : buildChartFiles(words, `/api/students/${student.id}/season/svg?club=${source.clubGroup ?? ""}`, "season"),
      drills: drillRibbons(source, first ?? source.asOf),
      events,
      marked: sayRibbons(words, events),
      practice: practiceLanes(words, source.practice ?? [], { first: first ?? source.asOf, last: source.asOf }),
    },
    clubGroups: source.clubs.length > 1 ? { label: words.say("club.choose"), links: source.clubs } : null,
    drills: drillTable(words, source),
    contact: buildContact(words, { ...source, from: first ?? source.asOf }),
    settle: seasonSettle(words, tracks),
    sessions: sessionTable(words, source),
    actions: [
      { href: `/students/${student.id}/sessions/new`, label: words.say("season.add-session") },
      { href: `/students/${student.id}/events/new`, label: words.say("season.add-event") },
      { href: `/students/${student.id}/events`, label: words.say("happen.events") },
      { href: `/students/${student.id}/practice`, label: words.say("practice") },
      { href: `/students/${student.id}/drills`, label: words.say("drills") },
      { href: `/students/${student.id}/read-back`, label: words.say("read-back") },
      { href: `/filming?hand=${student.hand}`, label: words.say("filming.link") },
      { href: `/import`, label: words.say("season.import") },
      { href: `/students/${student.id}/history`, label: words.say("session-page.history") },
      { href: `/api/students/${student.id}/csv`, label: words.say("download.csv") },
      { href: `/students/${student.id}/take-out`, label: words.say("take-out.open") },
    ],
    cautions: cautionsFor(words, student, source.today),
    notices: [
      ...(source.consent === "missing" ? [words.say("notice.no-consent", { alias: student.alias })] : []),
      ...(last !== undefined && isAway(last, source.today)
        ? [words.say("notice.away", { day: sayDay(words, last, "full") })]
        : []),
      ...seasonFingerprints(
        words,
        tracks.map((track) => track.history),
      ),
      ...(source.sessions.length < 4 ? [words.say("notice.first-week", { sessions: source.sessions.length })] : []),
    ],
  };
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
    const key = latest ? (standing === "alone" ? "alone" : "text") : "earlier.text";
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

function href(student: Student, history: TrackHistory): string {
  return `/students/${student.id}/${history.fundamental.id}?club=${history.clubGroup}`;
}

function seasonRow(
  words: Words,
  source: SeasonSource,
  { history, verdict }: SeasonTrack,
  inHand: string | null,
  from: string,
): SeasonRow {
  const { fundamental } = history;
  const watch = buildWatch(words, { history, verdict, today: source.today });
  const facts: Fact[] = [];
  const add = (key: string, value: string): void => {
    facts.push({ name: words.say(`fact.${key}`), value, note: "" });
  };
  if (verdict.levelNow !== null) add("level-now", sayLevel(words, verdict.levelNow, fundamental.unit));
  add("band", sayPosition(words, verdict.position, verdict.levelNow, history.goal, fundamental.unit));
  if (verdict.bandShare !== null) add("share", sayShare(words, verdict.bandShare));
  return {
    fundamentalId: fundamental.id,
    href: href(source.student, history),
    name: sayFundamental(words, fundamental),
    place: fundamental.id === inHand ? "in-hand" : verdict.position === "inside" ? "keep" : "waits",
    glyph: saidGlyph(verdict),
    word: words.say(saidKey(verdict)),
    text: [
      verdictSentence(words, { history, verdict }),
      provedAlone(verdict) === "alone" ? words.say("listing.alone") : "",
      verdict.ownedSince === null
        ? ""
        : words.say("owned.sentence", { day: sayDay(words, verdict.ownedSince, "short") }),
      watch === null ? "" : words.say("watch.row", { short: watch.short }),
    ]
      .filter((text) => text !== "")
      .join(" "),
    // Events stand once, under the axis that all small charts share.
    chart: buildSeasonChart(words, { history, verdict, drills: [], events: [], asOf: source.asOf, from }),
    facts,
  };
}
