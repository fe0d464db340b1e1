import { nextPlacement, type PlacedCapture } from "@/lib/capture/next-placement";
import { ENOUGH_PICTURES } from "@/lib/capture/phone-place";
import type { Hand } from "@/lib/domain/handedness";
import { sideOf } from "@/lib/domain/picture-side";
import type { Words } from "@/lib/words/catalogue";

/** Up to which way a length is told as a shoe's length and as a short step, cm; beyond, in a grown-up's big steps of a metre. Own choice: a family has no ruler. */
const SHOE_CM = 35;
const SHORT_STEP_CM = 70;
const BIG_STEP_CM = 100;

function sayStep(words: Words, centimetres: number): string {
  if (centimetres < SHOE_CM) return words.say("family-page.film.step.shoe");
  if (centimetres < SHORT_STEP_CM) return words.say("family-page.film.step.short");
  return words.say("family-page.film.step.big", { steps: Math.max(1, Math.round(centimetres / BIG_STEP_CM)) });
}

/**
 * The one correction of the phone from the last video, in steps, by view and hand, from where whoever puts it stands; empty:
 * there is nothing to do otherwise.
 */
export function familyPhoneTip(
  words: Words,
  capture: PlacedCapture,
  { alias, hand }: { readonly alias: string; readonly hand: Hand },
): string {
  const { view } = capture;
  const next = nextPlacement(capture);
  const say = (key: string, more: Readonly<Record<string, string | number>> = {}): string =>
    words.say(`family-page.film.tip.${key}`, { alias, ...more });
  switch (next.kind) {
    case "nothing":
      return "";
    case "move": {
      const side = sideOf(view, "phone", hand, -next.offToward) ?? "left";
      return say(`move.${view}`, { step: sayStep(words, next.centimetres), side: words.say(`family.hand.${side}`) });
    }
    case "back":
      return say(`back.${view}`, { step: sayStep(words, next.centimetres) });
    case "height":
      return say(`height.${next.way}`);
    case "frames":
      return say("frames", { rate: ENOUGH_PICTURES });
    default:
      return say(next.kind);
  }
}
