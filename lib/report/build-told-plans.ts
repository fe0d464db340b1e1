import type { FilmPlan } from "@/lib/domain/film-plan";
import { plannedSwings } from "@/lib/domain/film-plan";
import { followsPlan } from "@/lib/verdict/plan-answers";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { PlanPage } from "./plan-model";
import type { PlanSource } from "./plan-source";

/** What a plan asked for, in one line. */
export function sayAsked(
  words: Words,
  { body }: Pick<FilmPlan, "body">,
  fundamentals: PlanSource["fundamentals"],
): string {
  if (body === null) return words.say("plan.told.unread");
  const names = body.fundamentals.map(({ id }) => {
    const found = fundamentals.find((each) => each.id === id);
    return found ? sayFundamental(words, found) : id;
  });
  return words.say("plan.told.asked", {
    names: names.join(", "),
    swings: plannedSwings(body),
    views: body.views.map((view) => words.say(`ask.view.${view}`)).join(", "),
  });
}

function sayState(words: Words, { plans, films, today, dayOf }: PlanSource, plan: FilmPlan): string {
  const say = (state: string, args = {}): string => words.say(`plan.told.state.${state}`, args);
  const day = (instant: string): string => sayDay(words, dayOf(instant), "short");
  if (plan.voidedAt !== null) return say("back", { day: day(plan.voidedAt) });
  const later = plans
    .slice(plans.indexOf(plan) + 1)
    .find((each) => each.voidedAt === null && each.clubGroup === plan.clubGroup);
  const came = films.find((film) => followsPlan(plan, film));
  if (came !== undefined && (later === undefined || !followsPlan(later, came))) return say("came");
  if (later !== undefined) return say("replaced");
  if (plan.dueOn >= today) return say("awaited");
  return plan.remindedAt === null ? say("late") : say("reminded", { day: day(plan.remindedAt) });
}

/** Every plan that was told, latest first, with the button that takes it back; null: none was. */
export function toldPart(words: Words, source: PlanSource): PlanPage["told"] {
  const latest = [...source.plans].reverse();
  if (latest.length === 0) return null;
  const standing = latest.filter(({ voidedAt }) => voidedAt === null).length;
  return {
    margin: words.say("plan.margin.told"),
    heading: words.say("plan.told.heading", { count: standing }),
    table: {
      caption: words.say("plan.told.caption"),
      columns: ["made", "due", "what", "by", "state"].map((column) => ({
        label: words.say(`plan.told.${column}`),
        align: "start" as const,
      })),
      rows: latest.map((plan) => ({
        cells: [
          sayDay(words, plan.madeOn, "with-weekday"),
          sayDay(words, plan.dueOn, "with-weekday"),
          sayAsked(words, plan, source.fundamentals),
          plan.who,
          sayState(words, source, plan),
        ],
        tone: plan.voidedAt === null ? ("plain" as const) : ("quiet" as const),
      })),
    },
    change: words.say("plan.told.change"),
    presses: latest.map((plan) => ({
      label: words.say(plan.voidedAt === null ? "plan.told.take" : "plan.told.put", {
        day: sayDay(words, plan.madeOn, "short"),
      }),
      hidden: {
        studentId: source.student.id,
        planId: plan.id,
        ...source.shown,
        wish: plan.voidedAt === null ? "take" : "put",
      },
    })),
  };
}
