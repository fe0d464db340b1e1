import type { ProvedChange } from "@/lib/domain/track-verdict";
import { contactCounts } from "@/lib/verdict/contact-counts";
import { type ContactChange, decideContact } from "@/lib/verdict/contact-share";
import { type DatedChange, tradeOffs } from "@/lib/verdict/trade-offs";
import type { Words } from "@/lib/words/catalogue";
import { sayStretch } from "@/lib/words/day-words";
import { sayContactChange } from "@/lib/words/say-contact";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayFromTo } from "@/lib/words/say-verdict";
import { drawnChanges } from "./said";
import type { TradeOffPart } from "./season-model";
import type { SeasonSource } from "./season-source";

/** A change with what it says. */
interface SaidChange extends DatedChange {
  readonly said: string;
}

function isBetterOrWorse({ verdict, moved }: ProvedChange): boolean {
  return moved === null && (verdict === "gain" || verdict === "slip");
}

/** The changes of fundamentals that stand, or stood, on the roster's list; enough for its track alone is not enough here. */
function listedChanges(words: Words, { tracks }: SeasonSource): readonly SaidChange[] {
  return tracks.flatMap(({ history: { fundamental }, verdict }) =>
    drawnChanges(verdict)
      .filter(({ change, standing }) => standing === "listed" && isBetterOrWorse(change))
      .map(({ change }) => ({
        of: { kind: "fundamental" as const, id: fundamental.id },
        way: change.verdict === "gain" ? ("up" as const) : ("down" as const),
        from: change.from,
        to: change.to,
        said: words.say(`trade-off.${change.verdict === "gain" ? "up" : "down"}`, {
          name: sayFundamental(words, fundamental),
          levels: sayFromTo(words, change, fundamental.unit),
          stretch: sayStretch(words, change.from, change.to),
        }),
      })),
  );
}

/** The proved change of the share of solid strikes; null: none. */
function contactChange(source: SeasonSource): ContactChange | null {
  if (source.clubGroup === null) return null;
  const span = { from: source.seasonStart, to: source.asOf };
  const decided = decideContact(contactCounts(source.sessions, source.clubGroup, span).counted);
  return decided.kind === "ok" ? decided.value.change : null;
}

function saidContact(words: Words, change: ContactChange | null): readonly SaidChange[] {
  if (change === null) return [];
  const { direction, from, to } = change;
  return [
    {
      of: { kind: "contact" },
      way: direction,
      from,
      to,
      said: words.say("contact.heading.moved", { change: sayContactChange(words, change) }),
    },
  ];
}

/** What got better and what got worse over the same days, said aloud and without a cause; null: nothing of the kind is proved. */
export function buildTradeOffs(words: Words, source: SeasonSource): TradeOffPart | null {
  const changes = [...listedChanges(words, source), ...saidContact(words, contactChange(source))];
  const pairs = tradeOffs(changes);
  if (pairs.length === 0) return null;
  return {
    margin: words.say("trade-off.margin"),
    heading: words.say("trade-off.heading", { pairs: pairs.length }),
    texts: [
      // What one gain came with stands in one sentence.
      ...[...new Set(pairs.map(({ up }) => up))].map((gain) =>
        words.say("trade-off.pair", {
          up: gain.said,
          downs: pairs
            .filter(({ up }) => up === gain)
            .map(({ down }) => down.said)
            .join("; "),
        }),
      ),
      words.say("trade-off.no-cause"),
    ],
  };
}
