import { offsetCentimetres } from "@/lib/capture/misplacement";
import type { GroupJump } from "@/lib/verdict/group-jump";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber, saySigned, withUnit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";

/** What a jump common to a group says of the phone, for the coach; that it changes no verdict by itself is said with it. */
export function sayGroupJump(words: Words, jump: GroupJump, day: string): string {
  const { view, students, together, offBy, sd, moved } = jump;
  const named = moved.map(({ fundamental, by }) =>
    words.say("fingerprint.jump", {
      name: sayFundamental(words, fundamental),
      by: withUnit(words, saySigned(words, by, 0), fundamental.unit),
    }),
  );
  const jumped = named.reduce((before, next, at) =>
    words.say(at === named.length - 1 ? "fingerprint.and" : "fingerprint.comma", { before, next }),
  );
  return words.say(`group-jump.${view}`, {
    day: sayDay(words, day, "full"),
    who: words.say(together === students ? "group-jump.all" : "group-jump.most", { together, students }),
    jumped,
    degrees: sayNumber(words, Math.abs(offBy), 0),
    half: sayNumber(words, 1.96 * sd, 0),
    centimetres: sayNumber(words, Math.abs(offsetCentimetres(offBy)), 0),
    side: offBy > 0 ? "plus" : "minus",
  });
}
