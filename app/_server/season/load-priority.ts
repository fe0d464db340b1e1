import { readStudent } from "@/db/read/students";
import { currentGroups } from "@/lib/domain/club-grouping";
import { BY_ORDER } from "@/lib/ingest/parse-priority-form";
import { buildPriorityPage, sayChoice } from "@/lib/report/build-priority";
import type { FormModel } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import { chooseWork } from "@/lib/report/order-of-work";
import { buildTrackSummary } from "@/lib/report/track-summary";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import { linkTables } from "../archive/table-links";
import { warnBeforehand } from "../consent/consent-gate";
import { isDraftId } from "../draft/draft-forms";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { loadStudentVerdicts } from "../roster/load-verdicts";
import { chooseClubGroup } from "../settings/club-links";
import { loadStudentWork } from "./load-work";
import { PRIORITY_FORM, priorityDraft } from "./priority-desk";
import { field } from "./student-form";

/** What the address of the page says. */
export interface AskedPriority {
  readonly draft?: string;
  readonly dropped?: string;
  readonly club?: string;
}

/** The page on what is in hand, and the form that changes it; no form where nothing is measured, or only the title is asked for. */
export interface PriorityRoom {
  readonly page: HappenPage;
  readonly form: FormModel | null;
}

/** What is in hand of a student with a group of clubs, who put it there, and the form that changes it. */
export async function loadPriority(viewer: StudentViewer, asked: AskedPriority): Promise<PriorityRoom> {
  const { words, db, student } = viewer;
  const { studentId } = student;
  const { record, tracks, grouping } = await loadStudentVerdicts(viewer);
  const draft = findFormDraft(viewer, priorityDraft(studentId), asked.draft);
  const typed = new Map(draft?.entries);
  const clubGroup = chooseClubGroup(grouping, tracks, typed.get("clubGroup") ?? asked.club);
  const { work, choice, choices } = loadStudentWork(viewer, clubGroup, "said");
  const ranked = tracks
    .filter(({ history }) => history.clubGroup === clubGroup)
    .map(({ history, verdict }) => ({
      fundamental: history.fundamental,
      summary: buildTrackSummary(history, verdict),
    }));
  const group = currentGroups(grouping).find(({ id }) => id === clubGroup);
  const page = buildPriorityPage(words, {
    student: readStudent(db, student),
    clubName: group === undefined ? "" : sayGroupOfClubs(words, group),
    clubGroup,
    fundamentals: record.fundamentals,
    priority: chooseWork(record.fundamentals, ranked, work),
    choices,
  });
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, "priority-form", spec);
  const form: FormModel = {
    heading: words.say("priority-form.heading"),
    explains: warnBeforehand(viewer, student) ?? words.say("priority-form.explains"),
    parts: [
      {
        margin: "",
        explains: "",
        fields: [
          one({
            name: "fundamentalId",
            kind: "select",
            required: "yes",
            value: choice?.fundamentalId ?? BY_ORDER,
            options: [
              { value: BY_ORDER, label: words.say("priority.by-order") },
              ...record.fundamentals.map((fundamental) => ({
                value: fundamental.id,
                label: sayChoice(words, {
                  fundamental,
                  summary: ranked.find((track) => track.fundamental.id === fundamental.id)?.summary ?? null,
                }),
              })),
            ],
          }),
          one({ name: "reason", kind: "text", required: "yes" }),
        ],
      },
    ],
    grid: null,
    submit: words.say("priority-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "clubGroup", value: clubGroup ?? "" }],
  };
  const shown = { form: PRIORITY_FORM, studentId, draftId: asked.draft ?? "", dropped: asked.dropped };
  return {
    page: linkTables(words, "priority", { student: studentId, club: clubGroup ?? undefined }, page),
    form: clubGroup === null || !isDraftId(asked.draft) ? null : withKeep(viewer, form, shown),
  };
}
