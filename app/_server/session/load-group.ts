import { randomUUID } from "node:crypto";
import { redirect } from "next/navigation";
import { readGroupSessions } from "@/db/read/group-sessions";
import { readStudentsHere } from "@/db/read/students";
import { currentGroups } from "@/lib/domain/club-grouping";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import type { ChooseGroupPage } from "@/lib/report/group-page-model";
import { sayDay } from "@/lib/words/day-words";
import { sayClubGroup, sayGroupOfClubs } from "@/lib/words/say-club";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { mayPass } from "../access/matrix";
import { isDraftId } from "../draft/draft-forms";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { loadRead } from "./grid-desk";
import { answerGroup, chosenStudents, findGroupDraft, GROUP_FORM } from "./group-desk";
import { buildGroupForm } from "./group-form";
import { loadGroupGrids } from "./group-grids";
import { groupNotices } from "./group-jumps";
import { chosenGroup, USUAL_GROUP } from "./load-forms";
import { answerDraftNote, groupNote } from "./note-desk";
import { GRID_SWINGS } from "./session-grid";

/** What the page of a group session is asked for. */
export interface GroupWish {
  readonly student?: string | readonly string[];
  readonly column?: string | readonly string[];
  readonly swings?: string;
  readonly group?: string;
  readonly draft?: string;
  readonly dropped?: string;
}

/** Swings that a student's grid has unless another number is chosen: five of each in a group's quarter of an hour. */
const USUAL_SWINGS = 5;
/** Students of one form; a page of more grids is no longer read to its end, and its form would outgrow what is taken. */
const MOST_STUDENTS = 20;
const SWING_CHOICES = [3, USUAL_SWINGS, GRID_SWINGS];

function listOf(wished: string | readonly string[] | undefined): readonly string[] {
  return wished === undefined ? [] : [wished].flat();
}

/** The page of a group session: first who was filmed, then the form. */
export async function loadGroupPage(
  viewer: Viewer,
  wish: GroupWish,
): Promise<
  { readonly kind: "choose"; readonly page: ChooseGroupPage } | { readonly kind: "form"; readonly form: FormModel }
> {
  const draft = findGroupDraft(viewer, wish.draft);
  const kept = (name: string): string => draft?.entries.findLast(([each]) => each === name)?.[1] ?? "";
  const ids = draft ? kept("students").split(",") : listOf(wish.student);
  const columns = draft ? kept("columns").split(",") : listOf(wish.column);
  const chosen = chosenStudents(viewer, ids);
  const students = chosen.filter((student) => student.consent === "given");
  if (students.length === 0 || chosen.length > MOST_STUDENTS)
    return { kind: "choose", page: choosePage(viewer, ids, columns, wish.group) };
  const { grouping } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  const clubGroup = chosenGroup(grouping, [draft ? kept("clubGroup") : wish.group]) ?? USUAL_GROUP;
  const swings = SWING_CHOICES.find((each) => String(each) === (draft ? kept("swings") : wish.swings)) ?? USUAL_SWINGS;
  const data = new FormData();
  for (const [name, value] of draft?.entries ?? []) data.append(name, value);
  data.set("students", students.map((student) => student.id).join(","));
  const form = buildGroupForm(viewer.words, {
    students,
    without: chosen.filter((student) => student.consent === "missing"),
    grids: await loadGroupGrids(viewer, students, clubGroup, columns),
    columns,
    grouping,
    clubGroup,
    today: viewer.today,
    swings,
    draft,
    noteOf: (studentId) => answerDraftNote(viewer, draft, groupNote(studentId)),
    answers: answerGroup(viewer, data),
  });
  const shown = { form: GROUP_FORM, studentId: "", draftId: requireGroupDraft(wish), dropped: wish.dropped };
  return { kind: "form", form: withKeep(viewer, form, shown) };
}

/** The id of the form, from its address; a choice without one is led to the same address with a new one. */
function requireGroupDraft(wish: GroupWish): string {
  if (isDraftId(wish.draft)) return wish.draft;
  const asked = new URLSearchParams({ draft: randomUUID(), swings: wish.swings ?? "", group: wish.group ?? "" });
  for (const id of listOf(wish.student)) asked.append("student", id);
  for (const id of listOf(wish.column)) asked.append("column", id);
  return redirect(`/record/group?${asked}`);
}

function choosePage(
  viewer: Viewer,
  ids: readonly string[],
  columns: readonly string[],
  group: string | undefined,
): ChooseGroupPage {
  const { words } = viewer;
  const students = readStudentsHere(viewer.db, viewer.scope);
  const missing = new Set(
    chosenStudents(
      viewer,
      students.map((student) => student.id),
    ).flatMap((student) => (student.consent === "missing" ? [student.id] : [])),
  );
  const { grouping } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  const wished = ids.length > MOST_STUDENTS ? "choose-group.too-many" : "choose-group.nobody";
  const tick = (list: readonly string[], value: string): "yes" | "no" => (list.includes(value) ? "yes" : "no");
  return {
    title: words.say("choose-group.title"),
    lede: words.say("choose-group.lede"),
    back: { href: "/record", label: words.say("choose-group.back") },
    margin: words.say("choose-group.margin"),
    explains: words.say("choose-group.explains"),
    error: ids.length === 0 ? "" : words.say(wished, { most: MOST_STUDENTS }),
    lists: [
      {
        name: "student",
        legend: words.say("choose-group.students"),
        options: students.map(({ id, alias }) => ({
          value: id,
          label: missing.has(id) ? words.say("choose-group.no-consent", { alias }) : alias,
          ticked: tick(ids, id),
        })),
      },
      {
        name: "column",
        legend: words.say("choose-group.columns"),
        options: loadRead(viewer)
          .filter((each) => each.derivedFrom === null)
          .map((each) => ({ value: each.id, label: sayFundamental(words, each), ticked: tick(columns, each.id) })),
      },
    ],
    clubGroup: {
      label: words.say("choose-group.club"),
      value: chosenGroup(grouping, [group]) ?? USUAL_GROUP,
      options: currentGroups(grouping).map((each) => ({ value: each.id, label: sayGroupOfClubs(words, each) })),
    },
    swings: { label: words.say("choose-group.swings"), value: USUAL_SWINGS, options: SWING_CHOICES },
    submit: words.say("choose-group.submit"),
  };
}

/** What came of a group session: each student with a link, and whether they moved together; without one, all there are. */
export function loadSavedGroup(viewer: Viewer, groupId: string | undefined): TextPage {
  const { words } = viewer;
  const all = readGroupSessions(viewer.db, viewer.scope);
  const own = all.filter((each) => each.groupId === groupId);
  const [first] = own;
  const again = { href: "/record/group", label: words.say("saved-group.again") };
  if (first === undefined) {
    const groups = [...new Map(all.map((each) => [each.groupId, each])).values()];
    return {
      title: words.say("saved-group.list"),
      lede: words.say("saved-group.list.lede"),
      parts: [
        {
          margin: words.say("saved-group.margin"),
          heading: words.say("saved-group.list.heading", { groups: groups.length }),
          paragraphs: [],
          links: [
            ...groups.map(({ groupId: id, day }) => ({
              href: `/record/group/saved?group=${id}`,
              label: words.say("saved-group.one", {
                day: sayDay(words, day, "full"),
                students: all.filter((each) => each.groupId === id).length,
              }),
            })),
            again,
          ],
        },
      ],
    };
  }
  const { grouping } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  return {
    title: words.say("saved-group.title", { students: own.length, day: sayDay(words, first.day, "full") }),
    lede: words.say("saved-group.lede", { club: sayClubGroup(words, grouping, first.clubGroup) }),
    parts: [
      ...phoneParts(viewer, own),
      {
        margin: words.say("saved-group.margin"),
        heading: words.say("saved-group.students"),
        paragraphs: [],
        links: [
          ...own.map(({ studentId, sessionId, alias }) => ({
            href: `/students/${studentId}/sessions/${sessionId}/saved`,
            label: alias,
          })),
          again,
        ],
      },
    ],
  };
}

/** Whether a group moved together, which rests on what was measured before: nothing for whoever reads no report. */
function phoneParts(viewer: Viewer, own: ReturnType<typeof readGroupSessions>): TextPage["parts"] {
  const { words } = viewer;
  if (!mayPass("/students/[studentId]", viewer.roles)) return [];
  const notices = groupNotices(viewer, own[0]?.groupId ?? "");
  return [
    {
      margin: words.say("saved-group.phone"),
      heading: words.say(notices.length === 0 ? "saved-group.apart" : "saved-group.together"),
      paragraphs: notices.length === 0 ? [words.say("saved-group.apart.text")] : notices,
      links:
        notices.length === 0
          ? []
          : own.map(({ studentId, sessionId, alias }) => ({
              href: `/students/${studentId}/sessions/${sessionId}/facts`,
              label: words.say("saved-group.set-aside", { alias }),
            })),
    },
  ];
}
