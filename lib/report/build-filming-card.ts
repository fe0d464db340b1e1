import { DISTANCE_ACCEPT_CM, OFFSET_DISTANCE_CM } from "@/lib/capture/camera-limits";
import { ENOUGH_PICTURES, FARTHEST_CM, sidewaysLimit } from "@/lib/capture/phone-place";
import { IMPACT_FILM } from "@/lib/domain/camera-geometry";
import { VIEWS, type View } from "@/lib/domain/fundamental";
import { HANDS, type Hand } from "@/lib/domain/handedness";
import type { MessageArguments, Words } from "@/lib/words/catalogue";
import { langOf } from "@/lib/words/family-words";
import { sayNumber } from "@/lib/words/number-words";
import { buildFilmingPicture } from "./build-filming-picture";
import { buildFilmingPlan } from "./build-filming-plan";
import { buildFilmingSide } from "./build-filming-side";
import type { Drawing } from "./drawing-model";
import type { CardFigure, FilmingCard } from "./filming-model";
import { mirrorDrawing } from "./mirror-drawing";

/** A grown-up's big step, and a foot, cm. */
const BIG_STEP_CM = 100;
const FOOT_CM = 30.48;

/** The steps of each view in order. */
const STEPS: Readonly<Record<View, readonly string[]>> = {
  "face-on": ["stick-1", "face-on.stick-2", "face-on.walk", "face-on.side", "height", "rate", "spot"],
  "down-the-line": [
    "stick-1",
    "down-the-line.behind",
    "down-the-line.walk",
    "down-the-line.put",
    "height",
    "rate",
    "spot",
  ],
};

/** A length in metres, without a digit that says nothing. */
function metres(words: Words, cm: number): string {
  return sayNumber(words, cm / 100, cm % 100 === 0 ? 0 : 1);
}

/**
 * Every number and side that the card's words need. `side` is where a right-hander's target (from the front) or ball
 * (from behind) lies for whoever stands by the phone.
 */
function cardArguments(words: Words, view: View, hand: Hand): MessageArguments {
  return {
    steps: sayNumber(words, OFFSET_DISTANCE_CM / BIG_STEP_CM, 0),
    metres: metres(words, OFFSET_DISTANCE_CM),
    feet: sayNumber(words, OFFSET_DISTANCE_CM / FOOT_CM, 0),
    nearest: metres(words, DISTANCE_ACCEPT_CM),
    farthest: metres(words, FARTHEST_CM),
    rate: ENOUGH_PICTURES,
    cm: sayNumber(words, 5 * Math.round(sidewaysLimit(view) / 5), 0),
    side: words.say(`card.hand.${hand}`),
    other: words.say(`card.hand.${hand === "right" ? "left" : "right"}`),
  };
}

/** The address of a card. */
function address(view: View, hand: Hand): string {
  return `/filming?view=${view}&hand=${hand}`;
}

function choices(words: Words, view: View, hand: Hand): FilmingCard["choices"] {
  const current = (same: boolean) => (same ? "yes" : "no") as "yes" | "no";
  return [
    {
      label: words.say("card.choose.view"),
      links: VIEWS.map((each) => ({
        href: address(each, hand),
        label: words.say(`card.choose.view.${each}`),
        current: current(each === view),
      })),
    },
    {
      label: words.say("card.choose.hand"),
      links: HANDS.map((each) => ({
        href: address(view, each),
        label: words.say(`card.choose.hand.${each}`),
        current: current(each === hand),
      })),
    },
  ];
}

/**
 * The card of one view and hand. Drawings are built for a right-hander and mirrored here for a left-hander; the words
 * take their sides from the hand, so that nothing has to be turned in the reader's head.
 */
export function buildFilmingCard(words: Words, view: View, hand: Hand): FilmingCard {
  const args = cardArguments(words, view, hand);
  const say = (key: string, more: MessageArguments = {}): string => words.say(`card.${key}`, { ...args, ...more });
  const turned = (drawing: Drawing): Drawing => (hand === "left" ? mirrorDrawing(drawing) : drawing);
  const picture = (stands: "right" | "wrong"): CardFigure => {
    const lead = say(`picture.${stands}`);
    const caption = say(`picture.${view}.${stands}`);
    const said = { title: say(`picture.title.${stands}`), description: caption };
    return { drawing: turned(buildFilmingPicture(view, stands, said)), lead, caption };
  };
  const steps = say("steps");
  const plan = { steps, lengths: say("lengths"), title: say("plan.title"), description: say(`plan.${view}`) };
  const side = { steps, title: say("side.title"), description: say("side.description") };
  return {
    lang: langOf(words),
    documentTitle: words.say("document-title", { page: say("document-title") }),
    title: say(`title.${view}.${hand}`),
    lede: say("lede"),
    back: { href: "/students", label: say("back") },
    backLang: langOf(words),
    choices: choices(words, view, hand),
    place: {
      margin: say("place"),
      heading: say(`place.${view}.heading`),
      plan: { drawing: turned(buildFilmingPlan(words, view, plan)), lead: "", caption: say("plan.caption") },
      steps: STEPS[view].map((step) => say(`step.${step}`)),
      side: { drawing: turned(buildFilmingSide(words, view, side)), lead: "", caption: say("side.caption") },
    },
    picture: {
      margin: say("picture"),
      heading: say(`picture.${view}.heading`),
      figures: [picture("right"), picture("wrong")],
      notes: [
        say(`picture.${view}.rule`),
        say("picture.limit"),
        say("picture.whole"),
        ...(view === "face-on"
          ? [say("picture.fast", { rate: IMPACT_FILM.framesPerSecond, shutter: IMPACT_FILM.shutterPerSecond })]
          : []),
      ],
    },
    checks: {
      margin: say("checks"),
      heading: say("checks.heading"),
      items: [view, "seen", "still", "toes"].map((check) => say(`check.${check}`)),
      otherwise: say("checks.otherwise"),
    },
    care: {
      margin: say("care"),
      heading: say("care.heading"),
      items: ["space", "stand", "toes"].map((item) => say(`care.${item}`)),
    },
  };
}
