import { strFromU8, unzipSync } from "fflate";
import { loadAcademyPage } from "@/app/_server/academy/load-academy";
import { loadBoard } from "@/app/_server/academy/load-board";
import { loadSpread } from "@/app/_server/academy/load-spread";
import { MATRIX, mayPass, type RowKey } from "@/app/_server/access/matrix";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { loadJudgedPart } from "@/app/_server/archive/load-judged";
import { loadReport } from "@/app/_server/archive/load-report";
import { packArchive } from "@/app/_server/archive/pack-archive";
import { loadUnfinishedPart } from "@/app/_server/draft/unfinished";
import { loadLibrary, loadLibraryDrill, loadLibraryForm } from "@/app/_server/drill/library-desk";
import { loadComparedDrills } from "@/app/_server/drill/load-compared";
import { loadDecide } from "@/app/_server/drill/load-decide";
import { loadDrillSeasons } from "@/app/_server/drill/load-drill-seasons";
import { loadFairForm, loadFairTests } from "@/app/_server/fair/load-fair-tests";
import { loadLetter } from "@/app/_server/family/load-letter";
import { loadTell } from "@/app/_server/family/load-tell";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { loadGoals } from "@/app/_server/goals/goal-desk";
import { loadOwningForm, loadOwningPage } from "@/app/_server/goals/owning-desk";
import { loadKeys } from "@/app/_server/import/load-keys";
import { loadPastImports } from "@/app/_server/import/past-imports";
import { loadFrame } from "@/app/_server/load-frame";
import { loadCharges } from "@/app/_server/people/load-charges";
import { loadPeople } from "@/app/_server/people/load-people";
import { loadDuePage } from "@/app/_server/plan/load-due";
import { loadPlan } from "@/app/_server/plan/load-plan";
import { loadReaderError, loadRereads, loadWishForm } from "@/app/_server/reread/load-rereads";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadRosterCsv } from "@/app/_server/roster/load-roster-csv";
import { loadDrillForm, loadDrillPage, loadDrills } from "@/app/_server/season/load-drills";
import { loadEvents } from "@/app/_server/season/load-events";
import { loadFundamentalPage } from "@/app/_server/season/load-fundamental-page";
import { loadKnown } from "@/app/_server/season/load-known";
import { loadPriority } from "@/app/_server/season/load-priority";
import { loadReadBacks } from "@/app/_server/season/load-read-back";
import { loadReview } from "@/app/_server/season/load-review";
import { loadSeasonPage } from "@/app/_server/season/load-season";
import { loadPractice } from "@/app/_server/season/practice-desk";
import { loadRecordPage, loadSessionForm, loadStudentForm } from "@/app/_server/session/load-forms";
import { loadGroupPage, loadSavedGroup } from "@/app/_server/session/load-group";
import { loadHistory } from "@/app/_server/session/load-history";
import { loadReadingSheet } from "@/app/_server/session/load-sheet";
import { loadNoteCodings } from "@/app/_server/session/note-codings";
import { loadClubsPage } from "@/app/_server/settings/club-desk";
import { loadDefinition, loadDefinitionForm, loadDefinitions } from "@/app/_server/settings/definition-desk";
import { loadSettings } from "@/app/_server/settings/load-settings";
import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { readOwnFundamentals } from "@/db/read/own-fundamentals";

/** Every form has a writer by chance. */
const BY_CHANCE = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;
const textOf = (made: unknown): string => JSON.stringify(made).replaceAll(BY_CHANCE, "by-chance");

const DRAFT = "0f0f0f0f-0f0f-4f0f-8f0f-0f0f0f0f0f0f";

/** What is made of an academy for a viewer, by the row of the matrix that they must pass. */
const OF_ACADEMY: readonly (readonly [RowKey, (viewer: Viewer) => unknown])[] = [
  ["/settings", (viewer) => [loadFrame(viewer), loadSettings(viewer, { draft: DRAFT })]],
  ["/students", (viewer) => loadRoster(viewer, { q: "", who: "all" })],
  ["GET /api/roster/csv", (viewer) => loadRosterCsv(viewer, { who: "all" })],
  ["/academy", (viewer) => loadAcademyPage(viewer, {})],
  ["/academy/[fundamental]", (viewer) => loadSpread(viewer, "hinge", {})],
  ["/academy/board", (viewer) => loadBoard(viewer)],
  ["/drills", (viewer) => loadComparedDrills(viewer, {})],
  [
    "/drills/[drillId]",
    (viewer) =>
      Promise.all(readDrills(viewer.db, viewer.scope).map(({ id }) => loadDrillSeasons(viewer, id, undefined))),
  ],
  ["/drills/library", (viewer) => [loadLibrary(viewer), loadLibraryForm(viewer, null, DRAFT)]],
  [
    "/drills/[drillId]/change",
    (viewer) =>
      readDrills(viewer.db, viewer.scope).map(({ id }) => [
        loadLibraryDrill(viewer, id),
        loadLibraryForm(viewer, id, DRAFT),
      ]),
  ],
  ["/drills/lot", (viewer) => [loadFairTests(viewer, undefined), loadFairForm(viewer, DRAFT)]],
  ["/due", (viewer) => loadDuePage(viewer)],
  ["/students/new", (viewer) => loadStudentForm(viewer, DRAFT)],
  ["/record", (viewer) => [loadRecordPage(viewer), loadUnfinishedPart(viewer)]],
  ["/record/group", (viewer) => loadGroupPage(viewer, { draft: DRAFT })],
  ["/record/group/saved", (viewer) => loadSavedGroup(viewer, undefined)],
  [
    "/settings/fundamentals",
    (viewer) => [loadDefinitions(viewer), loadDefinitionForm(viewer, null, DRAFT), loadDefinition(viewer, "own-none")],
  ],
  [
    "/settings/fundamentals/[ownId]",
    (viewer) =>
      readOwnFundamentals(viewer.db, viewer.scope).map(({ id }) => [
        loadDefinition(viewer, id),
        loadDefinitionForm(viewer, id, DRAFT),
      ]),
  ],
  ["/settings/goals", (viewer) => loadGoals(viewer, { draft: DRAFT, fundamental: "hinge" })],
  ["/settings/owning", (viewer) => [loadOwningPage(viewer), loadOwningForm(viewer, DRAFT)]],
  ["/settings/clubs", (viewer) => loadClubsPage(viewer)],
  ["/settings/keys", (viewer) => loadKeys(viewer, {})],
  ["/settings/notes", (viewer) => loadNoteCodings(viewer)],
  ["/import/past", (viewer) => loadPastImports(viewer)],
  ["/rereads", (viewer) => loadRereads(viewer)],
  ["/rereads/of/[fundamental]", (viewer) => loadReaderError(viewer, "hinge")],
  ["/rereads/new", (viewer) => loadWishForm(viewer, { draft: DRAFT })],
  ["/people", (viewer) => loadPeople(viewer, {})],
  ["/people/charges", (viewer) => loadCharges(viewer, DRAFT, {})],
  [
    "GET /api/archive",
    async (viewer) => {
      const loaded = await loadArchive(viewer, "everybody");
      return [loaded.told, Object.values(unzipSync(packArchive(viewer, loaded))).map((file) => strFromU8(file))];
    },
  ],
];

/** What is made of each drill of a student. */
async function everyDrill(
  viewer: StudentViewer,
  load: (viewer: StudentViewer, assignmentId: string) => unknown,
): Promise<readonly unknown[]> {
  const ids = readAssignmentLog(viewer.db, viewer.student).map(({ id }) => id);
  return Promise.all(ids.map((id) => load(viewer, id)));
}

const OF_STUDENT: readonly (readonly [RowKey, (viewer: StudentViewer) => unknown])[] = [
  ["/students/[studentId]", (viewer) => loadSeasonPage(viewer, undefined)],
  ["/students/[studentId]/[fundamental]", (viewer) => loadFundamentalPage(viewer, "hinge", undefined, {})],
  [
    "GET /api/students/[studentId]/[fundamental]/judged",
    (viewer) => loadJudgedPart(viewer, "hinge", undefined, "tracks"),
  ],
  ["/students/[studentId]/report", (viewer) => loadReport(viewer, undefined)],
  ["/students/[studentId]/events", (viewer) => loadEvents(viewer)],
  ["/students/[studentId]/tell", (viewer) => loadTell(viewer, undefined)],
  ["/students/[studentId]/tell/letter", (viewer) => loadLetter(viewer, { draft: DRAFT })],
  ["/students/[studentId]/plan", (viewer) => loadPlan(viewer, { draft: DRAFT })],
  ["/students/[studentId]/review", (viewer) => loadReview(viewer, undefined)],
  ["/students/[studentId]/practice", (viewer) => loadPractice(viewer, {})],
  ["/students/[studentId]/drills", (viewer) => loadDrills(viewer)],
  ["/students/[studentId]/drills/new", (viewer) => loadDrillForm(viewer, DRAFT, { for: "hinge" })],
  ["/students/[studentId]/drills/[assignmentId]", async (viewer) => everyDrill(viewer, loadDrillPage)],
  [
    "/students/[studentId]/drills/[assignmentId]/decide",
    async (viewer) => everyDrill(viewer, (of, id) => loadDecide(of, id, DRAFT)),
  ],
  ["/students/[studentId]/priority", (viewer) => loadPriority(viewer, { draft: DRAFT })],
  ["/students/[studentId]/goals", (viewer) => loadGoals(viewer, { draft: DRAFT, fundamental: "hinge" })],
  ["/students/[studentId]/known", (viewer) => loadKnown(viewer, {})],
  ["/students/[studentId]/history", (viewer) => loadHistory(viewer, undefined)],
  ["/students/[studentId]/read-back", (viewer) => loadReadBacks(viewer, { draft: DRAFT })],
  ["/students/[studentId]/sessions/new", (viewer) => loadSessionForm(viewer, DRAFT)],
  ["/students/[studentId]/sessions/sheet", (viewer) => loadReadingSheet(viewer, {})],
  ["GET /api/students/[studentId]/archive", async (viewer) => (await loadArchive(viewer, viewer.student)).archive],
];

/**
 * Everything that is made for a viewer: of their academy, and of each student whom they reach, as text by row and student. What
 * their roles don't open is left out.
 */
export async function everyLoad(viewer: Viewer, students: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const made = new Map<string, string>();
  const passes = (row: RowKey): boolean => row in MATRIX && mayPass(row, viewer.roles);
  for (const [row, load] of OF_ACADEMY)
    if (passes(row)) made.set(row, textOf(await Promise.all([await load(viewer)].flat())));
  for (const id of students) {
    const student = admitToStudent(viewer, id);
    if (student === null) continue;
    for (const [row, load] of OF_STUDENT)
      if (passes(row)) made.set(`${row} ${id}`, textOf(await load({ ...viewer, student })));
  }
  return made;
}
