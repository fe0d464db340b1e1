import { randomUUID } from "node:crypto";
import { vi } from "vitest";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { addTo, form } from "../app/server/inviting";
import { type PeopleAcademy, startPeopleAcademy } from "../app/server/people-academy";
import type { countCases } from "./count-cases";

/** An academy of a director, Ada; two coaches, Bo and Cy; Ed, who assists Bo; and Nia, who is Bo's. */
export interface HandingAcademy extends PeopleAcademy {
  readonly ada: Viewer;
  readonly nia: string;
  /** The viewer as a new request has them; null: Nia is none of theirs. */
  reach(userId: string): StudentViewer | null;
  /** The same; throws where Nia is none of theirs. */
  as(userId: string): StudentViewer;
  /** So many days after today. */
  later(days: number): string;
  /** A form about Nia that somebody types into; its id. */
  typeInto(userId: string, note?: string): string;
}

export async function startHandingAcademy(): Promise<HandingAcademy> {
  const academy = await startPeopleAcademy();
  const ada = academy.viewer(academy.ownerId);
  await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
  await academy.add({ userId: "cy", name: "Cy", roles: ["coach"] });
  await academy.add({ userId: "ed", name: "Ed", roles: ["assistant"], assists: ["bo"] });
  const nia = addTo(ada, "Nia");
  giveStudents(ada, form({ students: [nia], coach: "bo" }));
  const reach = (userId: string): StudentViewer | null => {
    const viewer = academy.viewer(userId);
    const student = admitToStudent(viewer, nia);
    return student === null ? null : { ...viewer, student };
  };
  const as = (userId: string): StudentViewer => {
    const viewer = reach(userId);
    if (viewer === null) throw new Error(`${userId} doesn't see the student`);
    return viewer;
  };
  return {
    ...academy,
    ...{ ada, nia, reach, as },
    later: (days) => dayFromNumber(dayNumber(ada.today) + days),
    typeInto(userId, note = "hands low") {
      const draft = randomUUID();
      const asked = { draft, form: "event-form", studentId: nia, version: 0, writer: userId, turn: 1, settles: "" };
      const entries = [["kind", "growth"] as const, ["note", note] as const];
      keepDraft(as(userId), { ...asked, entries });
      return draft;
    },
  };
}

/** Goes on some days; only the clock of dates is held. */
export function goTo(day: string, time = "12:00:00Z"): void {
  vi.useFakeTimers({ toFake: ["Date"], now: new Date(`${day}T${time}`) });
}

/** Who of the academy sees the student with the next request, each a case. */
export function seenBy(academy: HandingAcademy, cases: ReturnType<typeof countCases>): readonly string[] {
  return [academy.ownerId, "bo", "cy", "ed"]
    .filter((userId) => {
      cases.add();
      return academy.reach(userId) !== null;
    })
    .map((userId) => (userId === academy.ownerId ? "ada" : userId));
}
