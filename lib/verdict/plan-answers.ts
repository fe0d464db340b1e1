import type { ClubGroup } from "@/lib/domain/club-group";
import type { FilmPlan } from "@/lib/domain/film-plan";
import { plannedSwings } from "@/lib/domain/film-plan";
import type { View } from "@/lib/domain/fundamental";

/** A film as it came. */
export interface SentFilm {
  readonly clubGroup: ClubGroup;
  readonly day: string;
  /** ISO instant at which it was entered. */
  readonly enteredAt: string;
  readonly views: readonly View[];
  /** Swings of which anything was read. */
  readonly swings: number;
}

/** What came of what was asked for. */
export interface PlanAnswers {
  /** Films in a row that were asked for the view and lacked it; any film that shows it begins anew, asked or not. */
  readonly notSent: Readonly<Record<View, number>>;
  /**
   * The same for swings, and how many the latest of them had. A film begins anew that has the most that was asked for in vain:
   * having the fewer that were asked for since proves nothing of more.
   */
  readonly short: { readonly films: number; readonly came: number };
  /** The latest plan that stands as the last one of its clubs, if no film with these has come since; null: nothing is awaited. */
  readonly awaited: FilmPlan | null;
}

/** Whether a film with its clubs came after a plan was told: one of the same day only where it was entered afterwards. */
export function followsPlan(
  plan: Pick<FilmPlan, "clubGroup" | "answeredWith" | "madeOn" | "recordedAt">,
  film: Pick<SentFilm, "clubGroup" | "day" | "enteredAt">,
): boolean {
  if (!(plan.answeredWith ?? [plan.clubGroup]).includes(film.clubGroup)) return false;
  return film.day > plan.madeOn || (film.day === plan.madeOn && film.enteredAt > plan.recordedAt);
}

type Short = PlanAnswers["short"] & { readonly asked: number };

const NEVER_SHORT: Short = { films: 0, came: 0, asked: 0 };

/** @param asked null: the film answers no plan */
function shortAfter(short: Short, swings: number, asked: number | null): Short {
  if (asked !== null && swings < asked)
    return { films: short.films + 1, came: swings, asked: Math.max(short.asked, asked) };
  if (short.films === 0 || swings >= short.asked) return NEVER_SHORT;
  return asked === null ? short : { ...short, came: swings };
}

interface Answer {
  /** Undefined: nothing was asked for with these clubs yet. */
  readonly plan: FilmPlan | undefined;
  readonly film: Pick<SentFilm, "views" | "swings">;
}

/** One view after the other shows the same swings over again, or as many more of another; the same view twice shows more of them. */
function merged(one: Answer["film"], next: Answer["film"]): Answer["film"] {
  const isAgain = next.views.some((view) => one.views.includes(view));
  return {
    views: [...new Set([...one.views, ...next.views])],
    swings: isAgain ? one.swings + next.swings : Math.max(one.swings, next.swings),
  };
}

/** Films with the plan that each may answer; what came with the same clubs on one day after the same plan is one film. */
function filmsOfDays(standing: readonly FilmPlan[], films: readonly SentFilm[]): readonly Answer[] {
  const found = new Map<string, Answer>();
  for (const film of films) {
    const plan = standing.findLast((each) => followsPlan(each, film));
    const key = JSON.stringify([film.day, film.clubGroup, plan?.id]);
    const before = found.get(key);
    found.set(key, { plan, film: before === undefined ? film : merged(before.film, film) });
  }
  return [...found.values()];
}

/** @returns null: a film came after the last plan of every group of clubs */
function awaitedOf(standing: readonly FilmPlan[], films: readonly SentFilm[]): FilmPlan | null {
  const last = new Map(standing.map((plan) => [plan.clubGroup, plan]));
  const awaited = [...last.values()].filter((plan) => !films.some((film) => followsPlan(plan, film)));
  return standing.findLast((plan) => awaited.includes(plan)) ?? null;
}

/**
 * What a family sent of what it was asked for. A plan is answered by the first film with its clubs after it, whole as it came
 * on that day; one that was replaced before any such film came is answered by none. Misses are counted over all clubs: what
 * isn't filmed with one is no more likely to be filmed with another.
 *
 * @param plans of one student, in the order in which they were told; what was taken back counts for nothing
 * @param films of the student by day
 */
export function planAnswers(plans: readonly FilmPlan[], films: readonly SentFilm[]): PlanAnswers {
  const standing = plans.filter(({ voidedAt }) => voidedAt === null);
  const notSent = { "face-on": 0, "down-the-line": 0 };
  let short = NEVER_SHORT;
  const answered = new Set<string>();
  for (const { plan, film } of filmsOfDays(standing, films)) {
    const body = plan === undefined || answered.has(plan.id) ? null : plan.body;
    if (plan) answered.add(plan.id);
    for (const view of body?.views ?? []) notSent[view] += 1;
    for (const view of film.views) notSent[view] = 0;
    short = shortAfter(short, film.swings, body && plannedSwings(body));
  }
  return { notSent, short: { films: short.films, came: short.came }, awaited: awaitedOf(standing, films) };
}

/** How often a film of each fundamental was asked for and didn't come, by id: as often in a row as its view didn't. */
export function askedInVain(
  fundamentals: readonly { readonly id: string; readonly view: View }[],
  { notSent }: Pick<PlanAnswers, "notSent">,
): ReadonlyMap<string, number> {
  return new Map(fundamentals.map(({ id, view }) => [id, notSent[view]]));
}
