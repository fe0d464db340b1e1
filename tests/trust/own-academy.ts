import { randomUUID } from "node:crypto";
import { admitMachine, admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { addStudent } from "@/app/_server/season/student-desk";
import { startOwnAcademy } from "@/app/_server/settings/own-academy";
import { readStudents } from "@/db/read/students";

/** Fields as a browser sends them. */
export function formOf(fields: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.append(name, value);
  return data;
}

/** The owner of the own academy in the data folder of this process, which is made when it isn't there. */
export async function ownViewer(): Promise<Viewer> {
  await startOwnAcademy({ name: "Range", ownerName: "Coach Lark", zone: "Europe/Berlin", locale: "en" });
  const viewer = await admitMachine({ choice: "own", locale: null });
  if (!viewer) throw new Error("there is no academy");
  return viewer;
}

/** The same with one student, Ari, who is added when she isn't there. */
export async function viewerOfAri(): Promise<StudentViewer> {
  const viewer = await ownViewer();
  const fields = { alias: "Ari", hand: "right", zone: "Europe/Berlin", consentGivenBy: "Ari", consentOnPaper: "yes" };
  const known = readStudents(viewer.db, viewer.scope).find((each) => each.alias === "Ari");
  if (!known) addStudent(viewer, formOf(fields));
  const ari = known ?? readStudents(viewer.db, viewer.scope).find((each) => each.alias === "Ari");
  const student = ari ? admitToStudent(viewer, ari.id) : null;
  if (!student) throw new Error("Ari was not added");
  return { ...viewer, student };
}

/** A session's form with an id of its own: two swings of two fundamentals, four readings. */
export function sessionFields(day: string): Record<string, string> {
  return {
    draft: randomUUID(),
    version: "0",
    writer: randomUUID(),
    day,
    clubGroup: "iron",
    circumstance: "unaided",
    "r.1.hinge": "92",
    "r.1.hip-sway": "6",
    "r.2.hinge": "90",
    "r.2.hip-sway": "8,5",
  };
}

/** Readings that such a form holds. */
export const SESSION_READINGS = 4;
