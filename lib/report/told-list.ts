import type { Told } from "@/lib/domain/told";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { ToldList } from "./tell-model";

/** Everything that a family was told, latest first, with the button that takes it back; null: nothing was. */
export function buildToldList(
  words: Words,
  told: readonly Told[],
  {
    studentId,
    lang,
    dayOf,
  }: { readonly studentId: string; readonly lang: string; readonly dayOf: (instant: string) => string },
): ToldList | null {
  if (told.length === 0) return null;
  const standing = told.filter(({ voidedAt }) => voidedAt === null).length;
  return {
    lang,
    margin: words.say("tell.margin.told"),
    heading: words.say("tell.told.heading", { count: standing }),
    entries: [...told].reverse().map(({ id, kind, day, who, text, voidedAt }) => {
      const named = { kind: words.say(`tell.kind.${kind}`), day: sayDay(words, day, "full") };
      const wish = voidedAt === null ? "take" : "put";
      return {
        id,
        heading: words.say("tell.told.entry", { ...named, who }),
        state: voidedAt === null ? "" : words.say("tell.told.back", { day: sayDay(words, dayOf(voidedAt), "full") }),
        text,
        press: { label: words.say(`tell.told.${wish}`, named), hidden: { studentId, toldId: id, wish } },
      };
    }),
  };
}
