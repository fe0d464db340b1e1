import type { Words } from "@/lib/words/catalogue";
import { rosterOf } from "./academy-source";
import { saidGlyph } from "./said";
import type { SpreadPage } from "./spread-model";
import { provedThisSeason } from "./spread-moved";
import type { SpreadSource } from "./spread-source";

/** Of the comparison's table: the drill, how many had it, and what can be said. */
const CELLS = [0, 2, 4] as const;

/** Gains of the season in whose stretch no drill for it ran on any day. */
export function gainsWithoutDrill(source: SpreadSource): number {
  return provedThisSeason(source).filter(
    ({ verdict, change, track }) =>
      verdict === "gain" &&
      !source
        .givenTo(track.studentId)
        .some(({ start, end }) => start <= change.to && (end ?? change.to) >= change.from),
  ).length;
}

/** What helped: the comparison's own words of each drill in the order of names, and the gains that came without one. */
export function helpedPart(words: Words, source: SpreadSource): NonNullable<SpreadPage["counted"]>["helped"] {
  const { compared, fundamental } = source;
  const evidence = compared.evidence?.table;
  const gains = provedThisSeason(source).filter(({ verdict }) => verdict === "gain").length;
  const without = gainsWithoutDrill(source);
  const byName = new Intl.Collator(words.locale, { numeric: true });
  const current = compared.clubs?.links.find((link) => link.current === "yes")?.href;
  return {
    margin: words.say("spread.margin.helped"),
    explains: words.say("spread.explains.helped"),
    heading: compared.proved?.heading ?? words.say("spread.helped.none"),
    texts: [
      ...(evidence === undefined ? [] : [compared.lede, ...(compared.proved?.texts ?? [])]),
      words.say("spread.helped.without", { gains, without }),
    ],
    table:
      evidence === undefined
        ? null
        : {
            caption: words.say("spread.helped.caption"),
            columns: CELLS.flatMap((at) => evidence.columns[at] ?? []),
            rows: evidence.rows
              .toSorted((a, b) => byName.compare(a.cells[0] ?? "", b.cells[0] ?? ""))
              .map((row) => ({ ...row, cells: CELLS.map((at) => row.cells[at] ?? "") })),
          },
    links: [
      {
        href: current ?? `/drills?for=${encodeURIComponent(fundamental.id)}`,
        label: words.say("spread.helped.compare"),
      },
      ...(source.tracks.every(({ verdict }) => saidGlyph(verdict) !== "gain")
        ? []
        : [
            {
              href: rosterOf(source, { fundamental: fundamental.id, verdict: "gain" }),
              label: words.say("spread.helped.gains"),
            },
          ]),
    ],
  };
}
