import { askingOf } from "@/lib/domain/asking";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayPlanCell } from "./build-settle";
import type { Glyph, RosterPage } from "./page-model";
import { planOnOffer } from "./plan-on-offer";
import { chooseColumns, columnGroups, commonGoal } from "./roster-columns";
import { buildRosterConsents } from "./roster-consents";
import { rosterHeads } from "./roster-heads";
import { provedRow, rosterRow, trackHref, workOf } from "./roster-rows";
import type { NewProof, RosterSource } from "./roster-source";
import { saidGlyph, saidVerdict } from "./said";

/** Questions shown; each season's page has its own, so that more of them would only be long. */
const SETTLE_SHOWN = 9;

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
    departed:
      source.departed.count === 0
        ? null
        : {
            href: source.departed.href,
            label: words.say(`roster.departed.${source.departed.shown}`, { count: source.departed.count }),
          },
    consents: buildRosterConsents(words, source.consents, source.today),
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
    families: source.families,
    evidence: {
      margin: words.say("roster.margin.evidence"),
      explains: words.say("roster.explains", {
        from: sayDay(words, source.from, "short"),
        to: sayDay(words, source.asOf, "short"),
      }),
      heading: words.say("roster.evidence.heading", {
        ...source.places,
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
      heads: rosterHeads(words, source.sort),
      contactLabel: words.say("roster.contact"),
      notMeasured: words.say("roster.not-measured"),
      rows,
      download: { href: source.csv, label: words.say("download.csv") },
      sort: { label: words.say("roster.sort"), links: source.sort },
      pages: pagesPart(words, source.pages),
      tools: source.tools,
      skip: { href: "#roster", label: words.say("roster.skip") },
    },
    settle: settlePart(words, source),
    start: source.total === 0 && source.departed.count === 0 ? startSteps(words) : null,
  };
}

function pagesPart(words: Words, pages: RosterSource["pages"]): RosterPage["evidence"]["pages"] {
  if (pages.links.length < 2) return null;
  const at = pages.links.findIndex(({ current }) => current === "yes");
  const beside = (place: number, label: string) => {
    const link = pages.links[place];
    return link ? { href: link.href, label: words.say(label) } : null;
  };
  return {
    label: words.say("roster.pages"),
    links: pages.links,
    state: words.say("roster.page.state", { from: pages.from + 1, to: pages.to, total: pages.of }),
    before: beside(at - 1, "roster.page.before"),
    next: beside(at + 1, "roster.page.next"),
  };
}

function count(proofs: readonly NewProof[], glyph: Glyph): number {
  return proofs.filter((proof) => saidGlyph(proof.summary.verdict) === glyph).length;
}

function settlePart(words: Words, source: RosterSource): RosterPage["settle"] {
  const items = source.students.flatMap((entry) => {
    const { fundamental, summary = null } = workOf(source, entry).inHand?.item ?? {};
    if (fundamental === undefined || summary === null) return [];
    const { verdict } = summary;
    if (saidVerdict(verdict) !== "open" || planOnOffer(verdict) === null) return [];
    if (askingOf(entry.askings, summary) !== null) return [];
    return [
      {
        student: entry.student.alias,
        text: words.say("roster.settle.item", {
          name: sayFundamental(words, fundamental),
          plan: sayPlanCell(words, verdict, fundamental),
        }),
        href: trackHref(summary),
      },
    ];
  });
  if (items.length === 0) return null;
  return {
    margin: words.say("roster.margin.settle"),
    heading: words.say("roster.settle.heading", { students: items.length }),
    items: items.slice(0, SETTLE_SHOWN),
    more: items.length > SETTLE_SHOWN ? words.say("roster.settle.more", { count: items.length - SETTLE_SHOWN }) : "",
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
