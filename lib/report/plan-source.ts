import type { ClubGroup } from "@/lib/domain/club-group";
import type { FilmPlan } from "@/lib/domain/film-plan";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { PlanAnswers, SentFilm } from "@/lib/verdict/plan-answers";
import type { SessionPlan } from "@/lib/verdict/plan-session";
import type { Words } from "@/lib/words/catalogue";
import type { Link } from "./basic-model";

/** Everything that the page of the next film rests on. */
export interface PlanSource {
  readonly student: Student;
  /** In which the family is told. */
  readonly family: Words;
  readonly plan: SessionPlan;
  readonly answers: PlanAnswers;
  /** In the order in which they were told. */
  readonly plans: readonly FilmPlan[];
  readonly films: readonly SentFilm[];
  /** Of the academy, for the names in earlier plans. */
  readonly fundamentals: readonly Fundamental[];
  readonly clubGroup: ClubGroup;
  /** With which clubs, finished for a family. */
  readonly club: string;
  readonly clubs: readonly (Link & { readonly current: "yes" | "no" })[];
  /** What its buttons send along, so that the page shows the same clubs and the same form afterwards. */
  readonly shown: Readonly<Record<string, string>>;
  readonly dueOn: string;
  readonly today: string;
  /** Whether practice rests on a day's pause. */
  readonly hold: "paused" | "no";
  /** What was just done. */
  readonly done: "told" | "no";
  readonly notices: readonly string[];
  readonly dayOf: (instant: string) => string;
}
