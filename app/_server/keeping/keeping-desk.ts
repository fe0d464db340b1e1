import { deleteHeldNotice, updateNoticeHeld } from "@/db/write/keeping";
import { currentInstant } from "../clock";
import { admitToStudent, type Viewer } from "../gate";
import { settleLeap } from "./watch-clock";

/** A reason is a sentence. */
const LONGEST_WHY = 500;

/** The field in which somebody says why: its own for each announcement, since several stand on one page. */
export function whyOf(noticeId: string): string {
  return `why-${noticeId}`;
}

/** What came of a press: `held`, `released`; `gone`: there is no such announcement any more; `why`: no reason was said. */
export type HoldOutcome = "held" | "released" | "gone" | "why";

/** Keeps after all what was announced, with the reason that somebody says, or lets its time run again. */
export function holdNotice(viewer: Viewer, data: FormData, wish: "hold" | "release"): HoldOutcome {
  const { db, name } = viewer;
  const [id, studentId] = [String(data.get("noticeId") ?? ""), String(data.get("studentId") ?? "")];
  const student = admitToStudent(viewer, studentId);
  if (!student) return "gone";
  if (wish === "release") return deleteHeldNotice(db, student, id);
  const why = String(data.get(whyOf(id)) ?? "")
    .normalize("NFC")
    .trim()
    .slice(0, LONGEST_WHY);
  if (why === "") return "why";
  return updateNoticeHeld(db, student, id, { heldAt: currentInstant(), heldBy: name, why });
}

/** Takes the viewer's word that the machine's clock is right. */
export function sayClockIsRight(viewer: Viewer): void {
  settleLeap(viewer);
}
