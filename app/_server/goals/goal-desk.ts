import { randomUUID } from "node:crypto";
import { insertGoalBand } from "@/db/write/goal-bands";
import { currentGroups } from "@/lib/domain/club-grouping";
import type { GoalBand } from "@/lib/domain/goal-band";
import { parseGoalForm } from "@/lib/ingest/parse-goal-form";
import { buildAllGoals, standingBands } from "@/lib/report/build-all-goals";
import { buildGoalsPage, goalNow } from "@/lib/report/build-goals";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import type { Link } from "@/lib/report/page-model";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { judgeSoon } from "../analysis/judge-soon";
import { linkTables } from "../archive/table-links";
import { instantOf } from "../clock";
import { warnBeforehand, whyNotRecorded } from "../consent/consent-gate";
import { type AskedForm, kindOf } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer, Viewer } from "../gate";
import { loadRules, loadStudentVerdicts, type StudentVerdicts } from "../roster/load-verdicts";
import { loadAcademyRules } from "../season/student-record";
import { buildGoalForm } from "./goal-form";
import { type AskedGoal, type GoalRoom, loadGoalRoom, ownStands } from "./goal-source";

/** The forms of a student's band, and of the academy's, among those that are kept. */
const FORMS = { student: "goal-form", academy: "academy-goal-form" } as const;

function pageOf(viewer: Viewer | StudentViewer) {
  return "student" in viewer
    ? {
        page: "student" as const,
        studentId: viewer.student.studentId,
        path: `/students/${viewer.student.studentId}/goals`,
      }
    : { page: "academy" as const, studentId: "", path: "/settings/goals" };
}

type Ways = { readonly label: string; readonly links: readonly (Link & { readonly current: "yes" | "no" })[] };

/** A page of bands: what holds, its history, the form, and the ways to the other fundamentals and clubs. */
export interface GoalsRoom {
  readonly page: HappenPage;
  readonly form: FormModel;
  readonly ways: readonly Ways[];
}

function waysOf({ words }: Viewer, { source, fundamentals, grouping }: GoalRoom, path: string): readonly Ways[] {
  const { fundamental, clubGroup } = source;
  const link = (id: string, club: string, label: string, current: "yes" | "no") => ({
    ...{ href: `${path}?fundamental=${id}&club=${club}`, label, current },
  });
  return [
    {
      label: words.say("goals.choose.fundamental"),
      links: fundamentals.map((each) =>
        link(each.id, clubGroup, sayFundamental(words, each), each.id === fundamental.id ? "yes" : "no"),
      ),
    },
    {
      label: words.say("club.choose"),
      links: currentGroups(grouping).map((group) =>
        link(fundamental.id, group.id, sayGroupOfClubs(words, group), group.id === clubGroup ? "yes" : "no"),
      ),
    },
  ];
}

/** The tables of a page of bands, without its form. */
export async function loadGoalsPage(viewer: Viewer | StudentViewer, asked: AskedGoal): Promise<HappenPage> {
  return pageModel(viewer, loadGoalRoom(viewer, asked, await tracksOf(viewer)));
}

async function tracksOf(viewer: Viewer | StudentViewer): Promise<StudentVerdicts["tracks"]> {
  return "student" in viewer ? (await loadStudentVerdicts(viewer)).tracks : [];
}

function pageModel(viewer: Viewer | StudentViewer, room: GoalRoom): HappenPage {
  const { words, today } = viewer;
  const { page, studentId } = pageOf(viewer);
  const { source, fundamentals, grouping, all } = room;
  const model = buildGoalsPage(words, source);
  const more = page === "student" ? [] : [buildAllGoals(words, { bands: all, fundamentals, grouping, today })];
  return linkTables(
    words,
    page === "student" ? "goals" : "academy-goals",
    {
      ...(page === "student" ? { student: studentId } : {}),
      ...{ fundamental: source.fundamental.id, club: source.clubGroup },
    },
    { ...model, parts: [...model.parts, ...more] },
  );
}

/** A page of bands with its form; what is kept of a form knows its fundamental and clubs. */
export async function loadGoals(
  viewer: Viewer | StudentViewer,
  asked: AskedGoal & AskedForm & { readonly draft: string },
): Promise<GoalsRoom> {
  const { page, studentId, path } = pageOf(viewer);
  const draft = findFormDraft(viewer, kindOf(FORMS[page], studentId), asked.draft);
  const typed = new Map(draft?.entries);
  const wish = {
    fundamental: typed.get("fundamental") ?? asked.fundamental,
    club: typed.get("clubGroup") ?? asked.club,
  };
  const room = loadGoalRoom(viewer, wish, await tracksOf(viewer));
  const { source } = room;
  const form = buildGoalForm(viewer.words, {
    alias: source.student?.alias ?? null,
    fundamental: source.fundamental,
    clubGroup: source.clubGroup,
    now: goalNow(source),
    own: ownStands(room),
    today: viewer.today,
    draft,
  });
  const warned = "student" in viewer ? warnBeforehand(viewer, viewer.student) : null;
  return {
    page: pageModel(viewer, room),
    form: withKeep(
      viewer,
      { ...form, explains: warned ?? form.explains },
      { form: FORMS[page], studentId, draftId: asked.draft, dropped: asked.dropped },
    ),
    ways: waysOf(viewer, room, path),
  };
}

/** What leads to the academy's bands from the settings. */
export function loadGoalsDoor({ db, scope, words, academy, today }: Viewer): TextPage["parts"][number] {
  const { bands, fundamentals } = loadAcademyRules(db, scope, academy);
  const standing = standingBands({ bands: bands as GoalRoom["all"], fundamentals, today });
  return {
    margin: words.say("goals"),
    heading: words.say("settings.goals.heading", { bands: standing.length }),
    paragraphs: [words.say("settings.goals.text")],
    links: [{ href: "/settings/goals", label: words.say("settings.goals.open") }],
  };
}

interface GoalSet {
  readonly kind: "set";
  readonly path: string;
}

/** Sets a band from a day on, once, and judges anew whoever it reaches; a refused form is kept with what is wrong in it. */
export async function setGoal(viewer: Viewer | StudentViewer, data: FormData): Promise<GoalSet | Refused> {
  const { page, studentId } = pageOf(viewer);
  const outcome = submitOnce<GoalSet>(viewer, kindOf(FORMS[page], studentId), data, () => enterGoal(viewer, data));
  // A student's page shows at once what came of it; an academy may be large.
  if (outcome.kind === "set" && page === "student") await loadRules(viewer);
  else if (outcome.kind === "set") void judgeSoon(viewer);
  return outcome;
}

function enterGoal(viewer: Viewer | StudentViewer, data: FormData): GoalSet | Refused {
  const { words, db, scope, academy } = viewer;
  const { page, studentId, path } = pageOf(viewer);
  const { source } = loadGoalRoom(viewer, {
    fundamental: String(data.get("fundamental") ?? ""),
    club: String(data.get("clubGroup") ?? ""),
  });
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, kindOf(FORMS[page], studentId), data, errors, refusal),
  });
  // Split or merged while the form was open: what was typed is for clubs that are no group any more.
  if (source.clubGroup !== data.get("clubGroup")) return refuse({}, words.say("form.issue.regroup-not-a-group"));
  const parsed = parseGoalForm(data, {
    ...{ page, fundamental: source.fundamental, today: viewer.today, bands: source.bands, now: goalNow(source) },
    studentId: page === "student" ? studentId : null,
  });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("goals.form.refusal", { problems: Object.keys(errors).length }));
  }
  const why = "student" in viewer ? whyNotRecorded(viewer, viewer.student) : null;
  if (why !== null) return refuse({}, why);
  const { fundamental, clubGroup } = source;
  const band: GoalBand = {
    ...parsed.value,
    ...{ fundamentalId: fundamental.id, clubGroup, studentId: page === "student" ? studentId : null },
  };
  const set = insertGoalBand(db, scope, band, { now: instantOf(academy), newId: randomUUID, who: viewer.name });
  if (set.kind !== "inserted") throw new Error("a band for a student of another academy");
  return { kind: "set", path: `${path}?fundamental=${fundamental.id}&club=${clubGroup}` };
}
