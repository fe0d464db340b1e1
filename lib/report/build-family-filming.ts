import { plannedSwings } from "@/lib/domain/film-plan";
import { VIEWS, type View } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { buildFilmingCard } from "./build-filming-card";
import type { FamilyFilming } from "./family-look-model";
import type { LookSource } from "./family-look-source";
import { familyPhoneTip } from "./family-phone-tip";
import { familyVideos } from "./family-videos";

/** What is asked for: as it was told; else the view of what is in hand, of the last video, or the first of all. */
function viewsOf({ plan, tracks, inHand, captures }: LookSource): readonly View[] {
  if (plan?.body) return plan.body.views;
  const view = tracks.find(({ history }) => history.fundamental.id === inHand)?.history.fundamental.view;
  return [view ?? captures[0]?.view ?? VIEWS[0]];
}

function tipOf(words: Words, source: LookSource, views: readonly View[]): string {
  const { captures, student, videos } = source;
  if (videos.length === 0) return "";
  const praise = familyVideos(words, source) || words.say("family-page.film.thanks");
  const last = captures.find(({ view }) => views.includes(view));
  const tip = last === undefined ? "" : familyPhoneTip(words, last, student);
  if (tip !== "") return words.say("family-page.film.tip", { praise, tip });
  return videos.at(-1)?.use === "used" ? words.say("family-page.film.same-again", { praise }) : praise;
}

/** How the next video is made: the told plan's views and swings, praise and the one tip, the card of view and hand, and what to look at afterwards. */
export function buildFamilyFilming(words: Words, source: LookSource): FamilyFilming {
  const { plan, student, today } = source;
  const views = viewsOf(source);
  const [first, second] = views.map((view) => words.say(`ask.view.${view}`));
  const said =
    second === undefined ? (first ?? "") : words.say("family-page.film.both", { first: first ?? "", second });
  const due = plan !== null && plan.dueOn >= today ? sayDay(words, plan.dueOn, "with-weekday") : null;
  const cards = views.map((view) => ({ view, card: buildFilmingCard(words, view, student.hand) }));
  return {
    heading:
      due === null
        ? words.say("family-page.film", { views: said })
        : words.say("family-page.film.by", { day: due, views: said }),
    tip: tipOf(words, source, views),
    swings: plan?.body ? words.say("family-page.film.swings", { swings: plannedSwings(plan.body) }) : "",
    cards: cards.map(({ card }) => ({
      heading: card.place.heading,
      plan: card.place.plan.drawing,
      caption: card.place.plan.caption,
      steps: card.place.steps,
      pictures: card.picture.figures,
    })),
    checks: {
      heading: words.say("family-page.film.checks"),
      items: [...new Set(cards.flatMap(({ card }) => card.checks.items))],
      otherwise: words.say("card.checks.otherwise"),
      kept: words.say("family-page.film.checks.kept"),
    },
  };
}
