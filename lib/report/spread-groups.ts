import type { Words } from "@/lib/words/catalogue";
import type { AcademyPart } from "./academy-model";
import { rosterOf } from "./academy-source";
import { countPlaces } from "./count-places";
import { saidGlyph } from "./said";
import { type SpreadSource, spreadHref, tracksOf } from "./spread-source";

const COLUMNS = ["group", "levels", "inside", "edge", "outside", "gain"] as const;

/**
 * Each group by clubs and by age of which counts may be told beside everybody's; null: one group is shown already, since what two
 * have in common is soon one to four students, or there is none.
 */
export function groupsPart(words: Words, source: SpreadSource): AcademyPart | null {
  const { groups, group, tracks, fundamental } = source;
  const told = (groups?.told ?? []).filter(({ club, view }) => club !== null || view.age !== undefined);
  if (group !== null || told.length === 0) return null;
  return {
    margin: words.say("spread.margin.groups"),
    explains: words.say("spread.explains.groups"),
    heading: words.say("spread.groups.heading"),
    table: {
      caption: words.say("spread.groups.caption"),
      columns: COLUMNS.map((name) => ({
        label: words.say(`spread.groups.${name}`),
        align: name === "group" ? ("start" as const) : ("end" as const),
      })),
      rows: told.map((each) => {
        const own = tracksOf(tracks, each);
        const { inside, edge, outside } = countPlaces(own);
        const gain = own.filter(({ verdict }) => saidGlyph(verdict) === "gain").length;
        const way = (count: number, more: Parameters<typeof rosterOf>[1]): string | null =>
          count === 0 ? null : rosterOf({ group: each }, { fundamental: fundamental.id, ...more });
        return {
          href: spreadHref(fundamental.id, each),
          cells: [each.label, ...[inside + edge + outside, inside, edge, outside, gain].map(String)],
          ways: [
            null,
            null,
            way(inside, { place: "inside" }),
            way(edge, { place: "edge" }),
            way(outside, { place: "outside" }),
            way(gain, { verdict: "gain" }),
          ],
          tone: "plain" as const,
        };
      }),
    },
    links: [],
  };
}
