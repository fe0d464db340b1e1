import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { readStudents } from "@/db/read/students";

/** A form as an action receives it. */
export function formOf(entries: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  return data;
}

/** The academy's first student by the alias, or the one of an alias, as a page's request has the viewer of one. */
export function firstStudent(viewer: Viewer, alias?: string): StudentViewer {
  const named = readStudents(viewer.db, viewer.scope).filter((each) => alias === undefined || each.alias === alias);
  const student = admitToStudent(viewer, named[0]?.id ?? "");
  if (!student) throw new Error("no student");
  return { ...viewer, student };
}
