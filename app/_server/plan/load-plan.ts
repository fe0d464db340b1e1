import { readSaidPain } from "@/db/read/practice";
import { dayFromNumber, dayNumber, isCalendarDay } from "@/lib/domain/calendar-day";
import { MOST_PLANNED } from "@/lib/domain/film-plan";
import { buildPainNotices } from "@/lib/report/build-pain-notices";
import { buildPlanPage } from "@/lib/report/build-plan";
import type { FormModel } from "@/lib/report/form-model";
import type { PlanPage } from "@/lib/report/plan-model";
import type { PlanInput } from "@/lib/verdict/plan-session";
import { PLAN_THRESHOLDS } from "@/lib/verdict/plan-thresholds";
import { familyWords } from "@/lib/words/family-words";
import { linkTables } from "../archive/table-links";
import { daysHere } from "../clock";
import { warnBeforehand } from "../consent/consent-gate";
import { type FormDraft, findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import { type StudentViewer, seesPain } from "../gate";
import { clubLinks } from "../settings/club-links";
import { loadNextFilm, type NextFilm } from "./next-film";
import { PLAN_FORM, planDraft } from "./plan-desk";
import { buildPlanForm } from "./plan-form";
import { sayClubAsked } from "./say-club-asked";

/** What the page is asked for. */
export interface AskedPlan {
  readonly draft?: string;
  readonly dropped?: string;
  readonly club?: string;
  readonly told?: string;
}

type Wish = PlanInput["wish"];

/** What a form asks for as it stands, as far as it can be read. */
function typedWish({ entries }: FormDraft, { offered }: NextFilm): Wish {
  const ticked = entries.flatMap(([name, value]) => (name === "fundamentals" ? [value] : []));
  const known = ticked.filter((id) => offered.some((each) => each.id === id));
  const swings = Number(entries.findLast(([name]) => name === "swings")?.[1] ?? "");
  const isCount = Number.isInteger(swings) && swings >= 1 && swings <= MOST_PLANNED.swings;
  return { fundamentals: known.length === 0 ? null : known, swings: isCount ? swings : null };
}

/** What was told and is awaited stands until its film comes, for the clubs for which it was told. */
function toldWish({ answers: { awaited }, offered, clubGroup }: NextFilm): Wish {
  const body = awaited?.clubGroup === clubGroup ? awaited.body : null;
  const known = body?.fundamentals.filter(({ id }) => offered.some((each) => each.id === id)) ?? [];
  if (known.length === 0) return { fundamentals: null, swings: null };
  return { fundamentals: known.map(({ id }) => id), swings: Math.max(...known.map(({ swings }) => swings)) };
}

/** The page of a student's next film, and the form in which it is changed and kept. */
export async function loadPlan(
  viewer: StudentViewer,
  asked: AskedPlan,
): Promise<{ readonly page: PlanPage; readonly form: FormModel }> {
  const { words, db, today, student } = viewer;
  const draft = findFormDraft(viewer, planDraft(student.studentId), asked.draft);
  const typed = (name: string): string | undefined => draft?.entries.findLast(([each]) => each === name)?.[1];
  const next = await loadNextFilm(viewer, typed("clubGroup") ?? asked.club);
  const { record } = next.verdicts;
  const plan = next.plan(draft === null ? toldWish(next) : typedWish(draft, next));
  const { awaited } = next.answers;
  const usual = dayFromNumber(dayNumber(today) + PLAN_THRESHOLDS.planDueDays.value);
  const standing = awaited !== null && awaited.dueOn >= today ? awaited.dueOn : usual;
  const due = typed("dueOn");
  const dueOn = due !== undefined && isCalendarDay(due) ? due : standing;
  const pain = seesPain(viewer, student);
  const family = familyWords(words, record.student);
  const page = buildPlanPage(words, {
    ...{ student: record.student, family, plan, answers: next.answers, plans: next.plans, films: next.films },
    fundamentals: record.fundamentals,
    clubGroup: next.clubGroup,
    club: sayClubAsked(family, {
      ...{ grouping: next.verdicts.grouping, clubGroup: next.clubGroup },
      club: record.sessions.findLast((session) => session.clubGroup === next.clubGroup)?.club ?? null,
    }),
    clubs: clubLinks(words, next.verdicts.grouping, next.verdicts.tracks, {
      clubGroup: next.clubGroup,
      path: `/students/${student.studentId}/plan`,
    }),
    ...{ dueOn, today },
    shown: { club: next.clubGroup, ...(asked.draft === undefined ? {} : { draft: asked.draft }) },
    hold: next.stop === null ? "no" : "paused",
    done: asked.told === "yes" ? "told" : "no",
    notices: buildPainNotices(words, pain === null ? [] : readSaidPain(db, pain), viewer.academy.seasonStart),
    dayOf: daysHere(viewer.academy),
  });
  const form = buildPlanForm(words, {
    offered: next.offered,
    fundamentals: plan.items.map(({ fundamental }) => fundamental.id),
    ...{ swings: Math.max(1, plan.swings), dueOn: standing, clubGroup: next.clubGroup, draft },
    explains: warnBeforehand(viewer, student) ?? words.say("plan.form.explains"),
  });
  const { studentId } = student;
  return {
    page: linkTables(words, "plan", { student: studentId, club: next.clubGroup }, page),
    form:
      asked.draft === undefined
        ? form
        : withKeep(viewer, form, { form: PLAN_FORM, studentId, draftId: asked.draft, dropped: asked.dropped }),
  };
}
