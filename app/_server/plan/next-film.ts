import { readFilmPlans } from "@/db/read/film-plans";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FilmPlan } from "@/lib/domain/film-plan";
import type { Fundamental } from "@/lib/domain/fundamental";
import { chooseWork, type WorkFacts } from "@/lib/report/order-of-work";
import { buildTrackSummary } from "@/lib/report/track-summary";
import { type PlanAnswers, planAnswers, type SentFilm } from "@/lib/verdict/plan-answers";
import { type PlanInput, planSession, type SessionPlan } from "@/lib/verdict/plan-session";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts, type StudentVerdicts } from "../roster/load-verdicts";
import { loadStudentWork } from "../season/load-work";
import { USUAL_GROUP } from "../session/load-forms";
import { chooseClubGroup } from "../settings/club-links";
import { loadSentFilms } from "./sent-films";

/** What a plan of the next film is worked out from. */
export interface NextFilm {
  readonly verdicts: StudentVerdicts;
  readonly clubGroup: ClubGroup;
  readonly plans: readonly FilmPlan[];
  readonly films: readonly SentFilm[];
  readonly answers: PlanAnswers;
  /** What stops all work, as far as the viewer may know it. */
  readonly stop: WorkFacts["stop"];
  /** What a coach may tick: all that is read from stills, and whatever was measured. */
  readonly offered: readonly Fundamental[];
  plan(wish: PlanInput["wish"]): SessionPlan;
}

/**
 * Everything of one student that the plan of the next film rests on, in the wished clubs; where none are wished for, in
 * those of the plan that is awaited, else those in hand.
 */
export async function loadNextFilm(viewer: StudentViewer, wishedClub: string | undefined): Promise<NextFilm> {
  const verdicts = await loadStudentVerdicts(viewer);
  const { record, tracks, grouping } = verdicts;
  const plans = readFilmPlans(viewer.db, viewer.student);
  const films = loadSentFilms(viewer, record);
  const all = planAnswers(plans, films);
  const clubGroup = chooseClubGroup(grouping, tracks, wishedClub ?? all.awaited?.clubGroup) ?? USUAL_GROUP;
  const mine = tracks.filter(({ history }) => history.clubGroup === clubGroup);
  const own = plans.filter((plan) => plan.clubGroup === clubGroup);
  const answers = { ...all, awaited: planAnswers(own, films).awaited };
  const { work } = loadStudentWork(viewer, clubGroup, "said");
  const ranked = mine.map(({ history, verdict }) => ({
    fundamental: history.fundamental,
    summary: buildTrackSummary(history, verdict),
  }));
  const priority = chooseWork(record.fundamentals, ranked, work);
  const hand = mine.length === 0 ? null : (priority.inHand ?? priority.rule);
  const measured = new Set<string>(mine.map(({ history }) => history.fundamental.id));
  const input: Omit<PlanInput, "wish"> = {
    tracks: mine,
    fundamentals: record.fundamentals,
    inHand: hand?.item.fundamental.id ?? null,
    blocks: hand?.blocks.map(({ fundamental }) => fundamental.id) ?? [],
    answers,
    films: record.sessions.flatMap((session) => (session.clubGroup === clubGroup ? [session.id] : [])),
    today: viewer.today,
  };
  return {
    ...{ verdicts, clubGroup, plans, films, answers, stop: work.stop },
    offered: record.fundamentals.filter(({ id, derivedFrom }) => derivedFrom === null || measured.has(id)),
    plan: (wish) => planSession({ ...input, wish }),
  };
}
