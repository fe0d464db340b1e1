import { notFound } from "next/navigation";
import { readStudent } from "@/db/read/students";
import { buildTakeOut, type TakeOutPage } from "@/lib/report/build-take-out";
import { buildCsv } from "@/lib/report/csv";
import type { TextPage } from "@/lib/report/form-model";
import { csvResponse, fileResponse } from "../door/download";
import { noteLookAtMany, requireStudent, requireViewer, type StudentViewer, type Viewer } from "../gate";
import { loadArchive } from "./load-archive";
import { packArchive, tablesOf } from "./pack-archive";

const ZIP = "application/zip";

/** The page that says what can be taken out of one student, and how. */
export async function loadTakeOut(viewer: StudentViewer): Promise<TakeOutPage> {
  const loaded = await loadArchive(viewer, viewer.student);
  return buildTakeOut(viewer.words, {
    student: readStudent(viewer.db, viewer.student),
    today: viewer.today,
    archive: loaded.archive,
    tables: tablesOf(loaded),
    withoutPain: loaded.withoutPain,
  });
}

/** What leads to the archive of the whole academy. */
export function loadAcademyTakeOut({ words }: Viewer): TextPage["parts"][number] {
  return {
    margin: words.say("take-out.academy.margin"),
    heading: words.say("take-out.academy.heading"),
    paragraphs: [
      words.say("take-out.academy.what"),
      words.say("archive.readme.keep"),
      words.say("archive.readme.rules"),
    ],
    links: [{ href: "/api/archive", label: words.say("take-out.academy.link") }],
  };
}

/** The archive of one student, or one table of it. */
export async function downloadArchive(studentId: string, wishedTable: string | null): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/archive", studentId);
  const loaded = await loadArchive(viewer, viewer.student);
  if (wishedTable === null) return fileResponse(`proofband-${studentId}.zip`, ZIP, packArchive(viewer, loaded));
  const found = tablesOf(loaded).find(({ name }) => name === wishedTable);
  if (!found) notFound();
  return csvResponse(`${found.name}.csv`, buildCsv(found.columns, found.rows));
}

/** The archive of the whole academy. */
export async function downloadAcademyArchive(): Promise<Response> {
  const viewer = await requireViewer("GET /api/archive");
  const loaded = await loadArchive(viewer, "everybody");
  const ids = loaded.archive.students.map(({ id }) => id);
  noteLookAtMany(viewer, "GET /api/archive", ids);
  return fileResponse("proofband-academy.zip", ZIP, packArchive(viewer, loaded));
}
