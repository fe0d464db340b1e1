import type { Words } from "@/lib/words/catalogue";
import type { TableModel } from "./basic-model";
import type { SeasonPage } from "./page-model";
import type { PeoplePart } from "./people-model";

/** A part with only what is said of it. */
function part(margin: string, has: Partial<PeoplePart>): PeoplePart {
  return { margin, heading: "", paragraphs: [], facts: [], table: null, links: [], once: null, forms: [], ...has };
}

function standingTable(words: Words, { evidence }: SeasonPage): TableModel {
  const columns = ["name", "place", "facts", "word", "text"];
  return {
    caption: words.say("inherit.standing.caption"),
    columns: columns.map((name) => ({ label: words.say(`inherit.standing.${name}`), align: "start" as const })),
    rows: evidence.groups.flatMap(({ rows }) =>
      rows.map((row) => ({
        cells: [
          row.name,
          words.say(`inherit.place.${row.place}`),
          row.facts.map((fact) => `${fact.name}: ${fact.value}`).join("; "),
          row.word,
          row.text,
        ],
        tone: row.place === "waits" ? ("quiet" as const) : ("plain" as const),
        href: row.href,
      })),
    ),
  };
}

/**
 * Where an inherited student stands: in hand, owned, proved and open, in the very words of the season page, so that both
 * coaches read the same.
 */
export function buildInherit(words: Words, season: SeasonPage, studentId: string): readonly PeoplePart[] {
  const measured = season.evidence.groups.length > 0;
  return [
    part(words.say("inherit.margin.standing"), {
      heading: season.title,
      paragraphs: [
        ...(season.next === null ? [] : [season.next.heading, season.next.text]),
        ...season.notices,
        ...(measured ? [] : [words.say("inherit.standing.none")]),
      ],
      table: measured ? standingTable(words, season) : null,
      links: [{ href: `/students/${studentId}`, label: words.say("inherit.season") }],
    }),
    part(season.proved.margin, {
      heading: season.proved.heading,
      paragraphs:
        season.proved.items.length === 0
          ? [season.proved.empty]
          : season.proved.items.map(({ heading, text }) => `${heading} ${text}`),
    }),
    ...(season.settle === null
      ? []
      : [part(season.settle.margin, { heading: season.settle.heading, table: season.settle.table })]),
  ];
}
