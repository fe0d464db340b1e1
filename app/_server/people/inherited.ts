import { type NamedCharge, readInheritedCharges, readStudentCharges } from "@/db/read/handing";
import { readPreference, readPreferencesUnder } from "@/db/read/preferences";
import { insertPreference } from "@/db/write/preferences";
import { chargeOn } from "@/lib/domain/charge";
import type { RosterPage } from "@/lib/report/page-model";
import { sayDay } from "@/lib/words/day-words";
import { currentInstant } from "../clock";
import { type StudentViewer, type Viewer, viewerKey } from "../gate";

const seenName = (chargeId: string): string => `inherited ${chargeId}`;

/** The charge by which the viewer got a student from somebody; null: by none that is in force. */
export function inheritedBy(viewer: StudentViewer): NamedCharge | null {
  const mine = readStudentCharges(viewer.db, viewer.student).filter(
    (each) =>
      each.coachId === viewer.userId && each.fromCoachId !== null && chargeOn(each, viewer.today) === "in-force",
  );
  return mine.at(-1) ?? null;
}

/** Whether the viewer pressed "seen" on what they got with a charge. */
export function hasSeen(viewer: Viewer, chargeId: string): boolean {
  return readPreference(viewer.db, viewer.scope, viewerKey(viewer), seenName(chargeId)) !== undefined;
}

/** Keeps that the viewer has seen what they got; the notice goes from their roster. */
export function pressInheritedSeen(viewer: StudentViewer): void {
  const charge = inheritedBy(viewer);
  if (charge === null || hasSeen(viewer, charge.id)) return;
  const kept = { viewer: viewerKey(viewer), name: seenName(charge.id), value: currentInstant() };
  insertPreference(viewer.db, viewer.scope, kept);
}

/** What the roster says of students who came from another coach, until "seen" was pressed on each; null: nothing. */
export function loadInherited(viewer: Viewer): NonNullable<RosterPage["inherited"]> | null {
  const { db, scope, today, words, userId } = viewer;
  if (userId === null) return null;
  const seen = new Set(readPreferencesUnder(db, scope, viewerKey(viewer), seenName("")).map(({ name }) => name));
  const items = readInheritedCharges(db, scope, userId)
    .filter((each) => chargeOn(each, today) === "in-force" && !seen.has(seenName(each.id)))
    .map((each) => ({
      student: { href: `/students/${each.studentId}/handing-over/inherit`, label: each.alias },
      text: words.say(`inherit.notice.${each.kind}`, {
        coach: each.fromCoach,
        from: sayDay(words, each.fromDay, "full"),
        until: each.untilDay === null ? "" : sayDay(words, each.untilDay, "full"),
      }),
    }));
  if (items.length === 0) return null;
  return {
    margin: words.say("inherit.notice.margin"),
    heading: words.say("inherit.notice.heading", { count: items.length }),
    items,
    more: "",
  };
}
