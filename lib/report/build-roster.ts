import { askingOf } from "@/lib/domain/asking";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayPlanCell } from "./build-settle";
import { buildWatchList } from "./build-watch";
import { chooseInHand } from "./order-of-work";
import type { Glyph, RosterPage } from "./page-model";
import { planOnOffer } from "./plan-on-offer";
import { chooseColumns, columnGroups, commonGoal } from "./roster-columns";
import { provedRow, rank, rosterRow, trackHref } from "./roster-rows";
import type { NewProof, RosterSource } from "./roster-source";
import { changeTone, saidGlyph, saidVerdict } from "./said";

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
      download:
        source.proofs.length === 0
          ? null
          : { href: "/api/tables?of=roster&table=0", label: words.say("table.download") },
      seen:
        source.proofs.length === 0
          ? null
          : { label: words.say("roster.seen"), explains: words.say("roster.seen.explains"), asOf: source.asOf },
    },
    watch: buildWatchList(words, source),
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

function nextThing(words: Words, source: RosterSource): RosterPage["next"] {
  const slip = source.proofs.find(
    (proof) =>
      saidVerdict(proof.summary.verdict) === "slip" &&
      changeTone({ change: proof.summary.verdict.change ?? neverChange(), standing: "listed" }) === "away",
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
    if (!inHand || !verdict || saidVerdict(verdict) !== "open" || planOnOffer(verdict) === null) return [];
    if (askingOf(entry.askings, inHand.track.summary) !== null) return [];
    return [
      {
        student: entry.student.alias,
        text: words.say("roster.settle.item", {
          name: sayFundamental(words, inHand.track.fundamental),
          plan: sayPlanCell(words, verdict, inHand.track.fundamental),
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
    heading: words.say("first-steps.heading"),
    steps: [
      { href: "/settings", label: words.say("first-steps.myself"), text: words.say("first-steps.myself.text") },
      { href: "/students/new", label: words.say("first-steps.student"), text: words.say("first-steps.student.text") },
      { href: "/import", label: words.say("first-steps.film"), text: words.say("first-steps.film.text") },
      { href: "/students", label: words.say("first-steps.page"), text: words.say("first-steps.page.text") },
    ],
  };
}
