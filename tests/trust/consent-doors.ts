import { randomUUID } from "node:crypto";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { setGoal } from "@/app/_server/goals/goal-desk";
import { makeKey, takeShownKey } from "@/app/_server/import/access-keys";
import { receiveAtDoor } from "@/app/_server/import/import-door";
import { confirmImport } from "@/app/_server/import/write-import";
import { tellPlan } from "@/app/_server/plan/plan-desk";
import { drawAgain, saveRereads } from "@/app/_server/reread/reread-desk";
import { giveDrill } from "@/app/_server/season/drill-desk";
import { addEvent } from "@/app/_server/season/event-desk";
import { logPractice } from "@/app/_server/season/practice-desk";
import { choosePriorityByCoach } from "@/app/_server/season/priority-desk";
import { saveReadBack, startReadBack } from "@/app/_server/season/read-back-desk";
import { saveCorrection } from "@/app/_server/session/correct-desk";
import { addGroup } from "@/app/_server/session/group-desk";
import { saveMove } from "@/app/_server/session/move-desk";
import { addSession } from "@/app/_server/session/session-desk";
import { filmDays } from "../app/server/reread-season";
import { formOf, sessionFields } from "./own-academy";

/** Whom the doors are tried for: somebody with films, somebody else of the academy, and what was drawn while all was well. */
export interface DoorCase {
  readonly viewer: Viewer;
  readonly mine: StudentViewer;
  readonly alias: string;
  readonly other: StudentViewer;
  readonly drawId: string;
  readonly readBackId: string;
  /** Of the other, with two swings, to be given to the one without a consent. */
  readonly othersSession: string;
}

/** What came of it; a form that was not taken lies under `draftId`. */
interface Came {
  readonly kind: string;
  readonly draftId?: string;
}

/** One way in, tried once. */
export type Door = (at: DoorCase) => Promise<Came> | Came;

const withId = (fields: Readonly<Record<string, string>>) =>
  formOf({ draft: randomUUID(), version: "0", writer: randomUUID(), ...fields });

function rowFor({ alias, mine }: DoorCase): string {
  return `student,date,club,swing,fundamental,value\n${alias},${mine.today},7-iron,1,hinge,${88 + Math.random()}\n`;
}

/** Every way in which something new is recorded of one student, in a process of the server. */
export const DOORS: Readonly<Record<string, Door>> = {
  "a session": ({ mine }) => addSession(mine, formOf(sessionFields(mine.today))),
  "a group session": ({ viewer, mine, other }) => {
    const ids = [mine, other].map(({ student }) => student.studentId);
    const read = Object.fromEntries(ids.map((id) => [`r.@${id}.1.hinge`, "88"]));
    return addGroup(viewer, withId({ students: ids.join(","), day: mine.today, clubGroup: "iron", ...read }));
  },
  "a goal band": ({ mine }) =>
    setGoal(
      mine,
      withId({ fundamental: "hinge", clubGroup: "iron", low: "81", high: "96", from: mine.today, reason: "agreed" }),
    ),
  practice: ({ mine }) => logPractice(mine, withId({ [`minutes.${mine.today}`]: "20" })),
  growth: ({ mine }) => addEvent(mine, withId({ kind: "growth", day: mine.today, heightCm: "151" })),
  "new clubs": ({ mine }) => addEvent(mine, withId({ kind: "new-club", day: mine.today, note: "longer" })),
  "a drill": ({ mine }) => {
    const how = { drill: "new", name: `Freeze ${randomUUID()}`, fundamental: "hinge", how: "Stop.", words: "daily" };
    return giveDrill(mine, withId({ ...how, start: mine.today }));
  },
  "what is in hand": ({ mine }) =>
    choosePriorityByCoach(mine, withId({ fundamentalId: "hip-sway", clubGroup: "iron", reason: "his wish" })),
  "a plan of a film": ({ mine }) =>
    tellPlan(mine, withId({ fundamentals: "hinge", swings: "5", dueOn: mine.today, clubGroup: "iron" })),
  "a draw of re-reads": ({ viewer }) =>
    drawAgain(viewer, withId({ fundamental: "hinge", level: "b", reader: viewer.name, count: "3" })),
  "a re-read": ({ viewer, drawId }) => saveRereads(viewer, drawId, withId({ "v.1": "84", confirmUnusual: "yes" })),
  "a read-back": ({ mine, viewer }) =>
    startReadBack(mine, withId({ fundamental: "hip-sway", reader: viewer.name, each: "1", films: "film0" })),
  "a value read back": ({ mine, readBackId }) => saveReadBack(mine, readBackId, withId({ "v.1": "7" })),
  "a value that was never read": ({ mine }) =>
    saveCorrection(mine, "film1", withId({ "r.1.hip-sway": "6", why: "left out then" })),
  "some swings of somebody else's": ({ other, mine, othersSession }) => {
    const at = { to: mine.student.studentId, why: "hers", signs: "keep", swings: "2" };
    const when = { day: filmDays(other)[0] ?? "", clubGroup: "iron", club: "" };
    return saveMove(other, { kind: "split", sessionId: othersSession }, withId({ ...at, ...when }));
  },
  "somebody else's session": ({ other, mine, othersSession }) => {
    const wish = { kind: "move", sessionId: othersSession } as const;
    return saveMove(other, wish, withId({ to: mine.student.studentId, why: "hers", signs: "keep" }));
  },
  "a row on the import page": async (at) => {
    const file = Buffer.from(rowFor(at)).toString("base64");
    const answers = [
      ["answer:consent:x", "on-paper"],
      ["answer-givenBy:consent:x", "nobody"],
    ] as const;
    return confirmImport(at.viewer, { fileName: "season.csv", file, answers }, "page");
  },
  "a row at the door for programs": async (at) => {
    const made = makeKey(at.viewer, `bay ${randomUUID()}`);
    const key = made.kind === "made" ? (takeShownKey(at.viewer, made.id)?.key ?? "") : "";
    const headers = { host: "127.0.0.1:3000", authorization: `Bearer ${key}` };
    const sent = new Request("http://127.0.0.1:3000/api/door/import?confirm=yes&consent=mother", {
      ...{ method: "POST", headers, body: rowFor(at), duplex: "half" },
    } as RequestInit);
    const answer = await receiveAtDoor(sent);
    return { kind: answer.status === 201 ? "imported" : "nothing-ready" };
  },
};
