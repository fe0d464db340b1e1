import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { type Notice, readEndedLinks, readNotices, readRecordTimes } from "@/db/read/keeping";
import { deleteNotice, insertNotice, updateNoticesPostponed } from "@/db/write/keeping";
import { announcedDue, keepingEnd } from "@/lib/domain/keeping";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { currentInstant, daysHere } from "../clock";
import type { Viewer } from "../gate";
import { firstDueDay } from "./watch-clock";

/** What runs out, with the first day on which its time is over. */
type Ending = Pick<Notice, "kind" | "studentId" | "linkId"> & { readonly endDay: string };

/** Everything in an academy that has a time, and when that is over. */
function endingsOf(viewer: Viewer): Ending[] {
  const { db, scope, academy } = viewer;
  const dayOf = daysHere(academy);
  const records = readRecordTimes(db, scope).map((each): Ending => {
    const record = { departedOn: each.departedOn, lastEntered: dayOf(each.lastEntered) };
    return { ...keepingEnd(record, academy.keepMonths), studentId: each.studentId, linkId: null };
  });
  const links = readEndedLinks(db, scope, currentInstant()).map(
    ({ linkId, studentId, endedAt }): Ending => ({ kind: "link", studentId, linkId, endDay: dayOf(endedAt) }),
  );
  return [...records, ...links];
}

const keyOf = ({ studentId, linkId }: Pick<Notice, "studentId" | "linkId">): string => `${studentId} ${linkId ?? ""}`;

/**
 * Announces what will be erased and isn't announced yet, and takes back what is used again or has another time since. What
 * somebody keeps after all is announced no more. A record whose family waits for an answer isn't due before it has one, and can
 * read it for as long as an announcement stands.
 *
 * @returns the announcements that stand and that nobody holds
 */
export function announce(viewer: Viewer): Notice[] {
  const { db, scope, today } = viewer;
  return inTransaction(db, () => {
    const notices = new Map(readNotices(db, scope).map((notice) => [keyOf(notice), notice]));
    const due = new Map(
      endingsOf(viewer).flatMap((ending) => {
        const dueDay = announcedDue(ending.endDay, today, ERASING_THRESHOLDS.noticeDays.value);
        return dueDay === null ? [] : [[keyOf(ending), { ...ending, dueDay }] as const];
      }),
    );
    for (const [key, notice] of notices) {
      const ending = due.get(key);
      // An academy that keeps records longer from now on announces them anew.
      const stands = ending?.kind === notice.kind && notice.dueDay >= ending.endDay;
      if (stands || (notice.heldAt !== null && ending !== undefined)) continue;
      deleteNotice(db, scope, notice.id);
      notices.delete(key);
    }
    for (const [key, { endDay: _, ...ending }] of due) {
      if (notices.has(key)) continue;
      insertNotice(db, scope, { ...ending, id: randomUUID(), announcedAt: currentInstant() });
    }
    updateNoticesPostponed(db, scope, { day: firstDueDay(today), of: "waiting" });
    return readNotices(db, scope).filter(({ heldAt }) => heldAt === null);
  });
}
