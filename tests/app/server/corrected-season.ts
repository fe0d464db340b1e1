import { randomUUID } from "node:crypto";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { addStudent } from "@/app/_server/season/student-desk";
import { readCaptures, readSessions } from "@/db/read/sessions";
import type { FormModel } from "@/lib/report/form-model";
import { fillSeason } from "./reread-season";

/** A form's entries as a browser sends them. */
export function formOf(entries: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  return data;
}

/** A form as it stands on the page, sent as it is but for some fields; an absent box is not ticked. */
export function sent(model: FormModel, typed: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const { name, value } of model.hidden) data.set(name, value);
  for (const part of model.parts)
    for (const field of [...part.fields, ...(part.more?.fields ?? [])])
      if (field.kind !== "checkbox" || field.value !== "") data.set(field.name, field.value);
  for (const cell of model.grid?.rows.flatMap((row) => row.cells) ?? []) data.set(cell.name, cell.value);
  for (const [name, value] of Object.entries(typed)) data.set(name, value);
  return data;
}

/** A student with a consent, and the viewer who may see it. */
export async function admitNew(viewer: Viewer, alias: string, hand: "right" | "left"): Promise<StudentViewer> {
  const added = await addStudent(
    viewer,
    formOf({
      ...{ alias, birthYear: "2010", hand, clubs: "", zone: "UTC" },
      ...{ consentGivenBy: "parent", consentOnPaper: "yes" },
    }),
  );
  if (added.kind !== "added") throw new Error("not added");
  const id = viewer.db.sqlite.prepare<[string], string>("SELECT id FROM student WHERE alias = ?").pluck().get(alias);
  const student = admitToStudent(viewer, id ?? randomUUID());
  if (!student) throw new Error("not there");
  return { ...viewer, student };
}

/** The same with eight films of three swings of hinge, ids film0 to film7. */
export async function admitFilmed(viewer: Viewer, alias: string): Promise<StudentViewer> {
  const mine = await admitNew(viewer, alias, "right");
  fillSeason(viewer, mine.student);
  return mine;
}

/** A session as it is on file, with its films. */
export function filmOf({ db, student }: StudentViewer, sessionId: string) {
  return {
    session: readSessions(db, student).find((session) => session.id === sessionId),
    films: readCaptures(db, student).filter((film) => film.sessionId === sessionId),
  };
}

/** How many sessions the judging of a student's first track uses; undefined: none is judged. */
export async function usedFilms(viewer: StudentViewer): Promise<number | undefined> {
  const [track] = (await loadStudentVerdicts(viewer)).tracks;
  return track?.judged.track.sessions.filter((session) => session.use).length;
}
