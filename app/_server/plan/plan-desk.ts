import { randomUUID } from "node:crypto";
import { insertFilmPlan, updateFilmPlanReminded, updateFilmPlanVoided } from "@/db/write/film-plans";
import { isClubGroup } from "@/lib/domain/club-group";
import { parsePlanForm } from "@/lib/ingest/parse-plan-form";
import { planCare } from "@/lib/report/plan-care";
import { planHref } from "@/lib/report/plan-href";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { isDraftId, kindOf } from "../draft/draft-forms";
import { keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { keepLooked, type Refused, submitOnce } from "../draft/submit-once";
import type { StudentViewer } from "../gate";
import { loadNextFilm, type NextFilm } from "./next-film";

/** The word under which the form is kept. */
export const PLAN_FORM = "film-plan-form";

/** The kind under which a refused form is kept. */
export function planDraft(studentId: string): string {
  return kindOf(PLAN_FORM, studentId);
}

interface Told {
  readonly kind: "told";
  readonly clubGroup: string;
}

/** Keeps a plan as it was told, once; a refused form is kept with what is wrong in it. */
export async function tellPlan(viewer: StudentViewer, data: FormData): Promise<Told | Refused> {
  const kind = planDraft(viewer.student.studentId);
  // Asked before anything is judged for it.
  const why = whyNotRecorded(viewer, viewer.student);
  if (why !== null) return submitOnce<Told>(viewer, kind, data, () => refuse(viewer, data, {}, why));
  const next = await loadNextFilm(viewer, String(data.get("clubGroup") ?? ""));
  return submitOnce<Told>(viewer, kind, data, () => enterPlan(viewer, data, next));
}

function refuse(
  viewer: StudentViewer,
  data: FormData,
  errors: Readonly<Record<string, string>>,
  refusal: string,
): Refused {
  const draftId = keepFormDraft(viewer, planDraft(viewer.student.studentId), data, errors, refusal);
  return { kind: "refused", draftId };
}

function enterPlan(viewer: StudentViewer, data: FormData, next: NextFilm): Told | Refused {
  const { words, db, student } = viewer;
  const parsed = parsePlanForm(data, { today: viewer.today, offered: next.offered.map(({ id }) => id) });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(viewer, data, errors, words.say("plan.form.refusal", { problems: Object.keys(errors).length }));
  }
  if (next.stop !== null) return refuse(viewer, data, {}, words.say("plan.form.stopped"));
  const { fundamentals, swings, dueOn } = parsed.value;
  const plan = next.plan({ fundamentals, swings });
  if (plan.items.length === 0) return refuse(viewer, data, {}, words.say("plan.form.nothing"));
  insertFilmPlan(db, student, {
    id: randomUUID(),
    ...{ clubGroup: next.clubGroup, madeOn: viewer.today, dueOn },
    body: {
      fundamentals: plan.items.map((item) => ({ id: item.fundamental.id, swings: item.swings })),
      views: [...plan.views],
      care: planCare(plan.items).map(({ care }) => care),
    },
    ...{ who: viewer.name, recordedAt: instantOf(viewer.academy) },
  });
  return { kind: "told", clubGroup: next.clubGroup };
}

/** Keeps the form as it stands, so that the page works out what it says; returns the draft's id. */
export function keepPlanForm(viewer: StudentViewer, data: FormData): string {
  return keepLooked(viewer, planDraft(viewer.student.studentId), data);
}

/** The page on which a button of it was pressed, with its clubs and its form as they were shown. */
export function pagePressedOn({ student }: StudentViewer, data: FormData): string {
  const [club, draft] = ["club", "draft"].map((name) => String(data.get(name) ?? "")) as [string, string];
  return planHref(student.studentId, {
    club: isClubGroup(club) ? club : undefined,
    draft: isDraftId(draft) ? draft : undefined,
  });
}

/** Takes a plan back, or puts it back. */
export function movePlanBack(
  { db, student, academy }: StudentViewer,
  planId: string,
  wish: "take" | "put",
): "updated" | "unchanged" {
  return updateFilmPlanVoided(db, student, { planId, voidedAt: wish === "take" ? instantOf(academy) : null });
}

/** Notes that the family was reminded of a film that it promised. */
export function noteReminded({ db, student, academy }: StudentViewer, planId: string): "updated" | "unchanged" {
  return updateFilmPlanReminded(db, student, { planId, now: instantOf(academy) });
}
