import { daysBetween } from "@/lib/domain/calendar-day";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand, sayLevel, saySure } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo, sayHappened, sayPosition, saySettle, saySize } from "@/lib/words/say-verdict";
import { AWAY_DAYS } from "./build-fundamental";
import { buildStrip } from "./build-strip";
import { chooseInHand, type RankedTrack } from "./order-of-work";
import type { Glyph, ProvedRow, RosterCell, RosterPage, RosterRow } from "./page-model";
import type { NewProof, RosterSource, RosterStudent } from "./roster-source";
import { changeTone, saidGlyph, saidKey, saidVerdict } from "./said";
import type { TrackSummary } from "./track-summary";

const MOST_COLUMNS = 8;

/** The roster: what is newly proved, one thing to do next, everyone's strips, and what would settle the rest. */
export function buildRosterPage(words: Words, source: RosterSource): RosterPage {
  const columns = chooseColumns(source);
  const rows = source.students.map((entry) => rosterRow(words, source, entry, columns));
  return {
    title: words.say("roster.title", {
      gains: count(source.proofs, "gain"),
      slips: count(source.proofs, "slip"),
      proofs: source.proofs.length,
      day: source.seen ? sayDay(words, source.seen.day, "with-weekday") : "",
      everSeen: source.seen ? "yes" : "no",
    }),
    lede: words.say("roster.lede", { students: source.total }),
    proved: {
      margin: words.say("roster.margin.proved"),
      since: source.seen
        ? words.say("roster.since", { day: sayDay(words, source.seen.day, "with-weekday") })
        : words.say("roster.never-seen"),
      heading: words.say("roster.proved.heading", { proofs: source.proofs.length }),
      columns: ["verdict", "student", "levels", "size", "happened", "sure", "band", "season"].map((column) =>
        words.say(`roster.proved.${column}`),
      ),
      rows: source.proofs.map((proof) => provedRow(words, source, proof)),
      empty: words.say("roster.proved.empty"),
      seen:
        source.proofs.length === 0
          ? null
          : { label: words.say("roster.seen"), explains: words.say("roster.seen.explains"), asOf: source.asOf },
    },
    next: nextThing(words, source),
    evidence: {
      margin: words.say("roster.margin.evidence"),
      explains: words.say("roster.explains", {
        from: sayDay(words, source.from, "short"),
        to: sayDay(words, source.asOf, "short"),
      }),
      heading: words.say("roster.evidence.heading", {
        ...source.counts,
        tracks: Object.values(source.counts).reduce((sum, part) => sum + part, 0),
      }),
      key: (["gain", "slip", "moved", "steady", "open"] as const).map((glyph) => ({
        glyph,
        label: words.say(`verdict.${glyph}.count`, { count: source.counts[glyph] }),
      })),
      groups: columnGroups(words, columns),
      columns: columns.map((fundamental) => ({
        id: fundamental.id,
        name: sayFundamental(words, fundamental),
        band: sayBand(words, commonGoal(source, fundamental), fundamental.unit),
      })),
      studentLabel: words.say("roster.student"),
      inHandLabel: words.say("roster.in-hand"),
      contactLabel: words.say("roster.contact"),
      lastLabel: words.say("roster.last"),
      notMeasured: words.say("roster.not-measured"),
      rows,
      download: { href: "/api/roster/csv", label: words.say("download.csv") },
      sort: { label: words.say("roster.sort"), links: source.sort },
      pages: source.pages.length > 1 ? { label: words.say("roster.pages"), links: source.pages } : null,
    },
    settle: settlePart(words, source),
    start: source.total === 0 ? startSteps(words) : null,
  };
}

function count(proofs: readonly NewProof[], glyph: Glyph): number {
  return proofs.filter((proof) => saidGlyph(proof.summary.verdict) === glyph).length;
}

function chooseColumns(source: RosterSource): readonly Fundamental[] {
  const measured = (fundamental: Fundamental): number =>
    source.students.filter((entry) => entry.summaries.some((summary) => summary.fundamentalId === fundamental.id))
      .length;
  return [...source.fundamentals]
    .map((fundamental) => ({ fundamental, measured: measured(fundamental) }))
    .filter((entry) => entry.measured > 0)
    .sort((a, b) => b.measured - a.measured || a.fundamental.order - b.fundamental.order)
    .slice(0, MOST_COLUMNS)
    .map((entry) => entry.fundamental)
    .sort((a, b) => a.order - b.order);
}

function columnGroups(words: Words, columns: readonly Fundamental[]): { label: string; span: number }[] {
  const groups: { phase: string; label: string; span: number }[] = [];
  for (const fundamental of columns) {
    const last = groups.at(-1);
    if (last && last.phase === fundamental.phase) last.span += 1;
    else groups.push({ phase: fundamental.phase, label: words.say(`phase.${fundamental.phase}`), span: 1 });
  }
  return groups.map(({ label, span }) => ({ label, span }));
}

/** The goal that most of the column's students have. */
function commonGoal(source: RosterSource, fundamental: Fundamental): { low: number | null; high: number | null } {
  const goals = source.students.flatMap((entry) =>
    entry.summaries.filter((summary) => summary.fundamentalId === fundamental.id).map((summary) => summary.goal),
  );
  const tally = new Map<string, number>();
  for (const goal of goals)
    tally.set(JSON.stringify([goal.low, goal.high]), (tally.get(JSON.stringify([goal.low, goal.high])) ?? 0) + 1);
  const best = [...tally].sort((a, b) => b[1] - a[1])[0];
  if (!best) return { low: null, high: null };
  const [low, high] = JSON.parse(best[0]) as [number | null, number | null];
  return { low, high };
}

function trackHref(summary: TrackSummary): string {
  return `/students/${summary.studentId}/${summary.fundamentalId}?club=${summary.clubGroup}`;
}

function provedRow(words: Words, source: RosterSource, proof: NewProof): ProvedRow {
  const { summary, fundamental } = proof;
  const change = summary.verdict.change;
  if (change === null) throw new RangeError(`no proved change on ${summary.verdict.id}`);
  const tone = changeTone(change);
  return {
    glyph: saidGlyph(summary.verdict),
    word: words.say(saidKey(summary.verdict)),
    student: proof.student.alias,
    fundamental: sayFundamental(words, fundamental),
    href: trackHref(summary),
    levels: sayFromTo(words, change, fundamental.unit),
    size: saySize(words, change, fundamental.unit),
    tone: tone === "neither" ? "plain" : tone,
    days: sayHappened(words, change),
    sure: saySure(words, summary.verdict.evidence.noChange),
    position: sayPosition(words, summary.verdict.position, summary.verdict.levelNow, summary.goal, fundamental.unit),
    strip: buildStrip(summary, source.from, source.asOf, stripSentence(words, summary, fundamental)),
  };
}

function stripSentence(words: Words, summary: TrackSummary, fundamental: Fundamental): string {
  const { verdict } = summary;
  return words.say("strip.sentence", {
    name: sayFundamental(words, fundamental),
    word: words.say(saidKey(verdict)),
    level:
      verdict.levelNow === null ? words.say("position.unknown") : sayLevel(words, verdict.levelNow, fundamental.unit),
    position: sayPosition(words, verdict.position, verdict.levelNow, summary.goal, fundamental.unit),
    sessions: summary.sessions.length,
  });
}

function rosterRow(
  words: Words,
  source: RosterSource,
  entry: RosterStudent,
  columns: readonly Fundamental[],
): RosterRow {
  const ranked = rank(source, entry);
  const inHand = chooseInHand(ranked);
  const age = entry.student.birthYear === null ? null : Number(source.today.slice(0, 4)) - entry.student.birthYear;
  const away = entry.lastDay !== null && daysBetween(entry.lastDay, source.today) > AWAY_DAYS;
  return {
    studentId: entry.student.id,
    href: `/students/${entry.student.id}`,
    alias: entry.student.alias,
    detail: words.say("roster.detail", {
      age: age ?? "",
      hasAge: age === null ? "no" : "yes",
      hand: words.say(`hand.${entry.student.hand}`),
      club: entry.lastClub ?? entry.student.clubs,
    }),
    inHand:
      inHand === null
        ? null
        : {
            fundamentalId: inHand.track.fundamental.id,
            name: sayFundamental(words, inHand.track.fundamental),
            position: shortPosition(words, inHand.track),
            glyph: saidGlyph(inHand.track.summary.verdict),
            word: words.say(saidKey(inHand.track.summary.verdict)),
          },
    cells: columns.map((fundamental): RosterCell | null => {
      const track = ranked.find((kept) => kept.fundamental.id === fundamental.id);
      if (!track) return null;
      return {
        fundamentalId: fundamental.id,
        href: trackHref(track.summary),
        strip: buildStrip(track.summary, source.from, source.asOf, stripSentence(words, track.summary, fundamental)),
        position: shortPosition(words, track),
        glyph: saidGlyph(track.summary.verdict),
        word: words.say(saidKey(track.summary.verdict)),
      };
    }),
    contact:
      entry.contact === null ? "" : words.say("count.of", { count: entry.contact.solid, of: entry.contact.balls }),
    lastSession: entry.lastDay === null ? words.say("roster.no-film") : sayDay(words, entry.lastDay, "short"),
    away: away ? words.say("roster.away", { day: sayDay(words, entry.lastDay ?? source.today, "short") }) : "",
  };
}

function rank(source: RosterSource, entry: RosterStudent): readonly RankedTrack[] {
  return source.fundamentals.flatMap((fundamental) => {
    const summary = entry.summaries.find((kept) => kept.fundamentalId === fundamental.id);
    return summary ? [{ fundamental, summary }] : [];
  });
}

/** Where it is, with its doubt: said before whether it has changed. */
function shortPosition(words: Words, { summary, fundamental }: RankedTrack): string {
  const { verdict } = summary;
  if (verdict.levelNow === null) return words.say("position.unknown");
  return words.say("position.short", {
    level: sayLevel(words, verdict.levelNow, fundamental.unit),
    position: words.say(verdict.position === null ? "position.none" : `position.${verdict.position}`),
  });
}

function nextThing(words: Words, source: RosterSource): RosterPage["next"] {
  const slip = source.proofs.find(
    (proof) =>
      saidVerdict(proof.summary.verdict) === "slip" &&
      changeTone(proof.summary.verdict.change ?? neverChange()) === "away",
  );
  const proof = slip ?? source.proofs[0];
  if (!proof) return null;
  const name = sayFundamental(words, proof.fundamental);
  const kind = slip ? "slip" : "gain";
  return {
    margin: words.say("roster.margin.next"),
    heading: words.say(`roster.next.${kind}`, { alias: proof.student.alias, name }),
    text: words.say(`roster.next.${kind}.text`, { name }),
    link: {
      href: `/students/${proof.student.id}`,
      label: words.say("roster.next.open", { alias: proof.student.alias }),
    },
  };
}

function neverChange(): never {
  throw new RangeError("a proof without a change");
}

function settlePart(words: Words, source: RosterSource): RosterPage["settle"] {
  const items = source.students.flatMap((entry) => {
    const inHand = chooseInHand(rank(source, entry));
    const verdict = inHand?.track.summary.verdict;
    if (!inHand || !verdict || verdict.settle === null || saidVerdict(verdict) !== "open" || "none" in verdict.settle)
      return [];
    return [
      {
        student: entry.student.alias,
        text: words.say("roster.settle.item", {
          name: sayFundamental(words, inHand.track.fundamental),
          plan: saySettle(words, verdict.settle, inHand.track.fundamental.cameraSdUnknown),
        }),
        href: trackHref(inHand.track.summary),
      },
    ];
  });
  if (items.length === 0) return null;
  return {
    margin: words.say("roster.margin.settle"),
    heading: words.say("roster.settle.heading", { students: items.length }),
    items: items.slice(0, 9),
  };
}

function startSteps(words: Words): RosterPage["start"] {
  return {
    heading: words.say("start.heading"),
    steps: [
      { href: "/settings", label: words.say("start.myself"), text: words.say("start.myself.text") },
      { href: "/students/new", label: words.say("start.student"), text: words.say("start.student.text") },
      { href: "/import", label: words.say("start.film"), text: words.say("start.film.text") },
      { href: "/students", label: words.say("start.page"), text: words.say("start.page.text") },
    ],
  };
}
