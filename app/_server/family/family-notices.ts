import { type EndingLink, readEndingLinks, readOpenRequests } from "@/db/read/family-links";
import { END_TOLD_DAYS } from "@/lib/domain/family-link";
import type { RosterPage } from "@/lib/report/page-model";
import { sayDay } from "@/lib/words/day-words";
import { dayIn } from "../clock";
import type { StudentViewer, Viewer } from "../gate";
import { latestInstant } from "../keeping/watch-clock";

const DAY_MS = 24 * 3_600_000;

function ending({ db, scope }: Viewer): EndingLink[] {
  const now = latestInstant({ db, scope });
  const by = new Date(Date.parse(now) + END_TOLD_DAYS * DAY_MS).toISOString();
  return readEndingLinks(db, scope, { now, by });
}

function dayOf({ words, academy }: Viewer, { expiresAt }: EndingLink): string {
  return sayDay(words, dayIn(academy.zone, new Date(expiresAt)), "short");
}

/** What the roster says of families: links that end within a week, and who waits for an answer; null: nothing. */
export function familyNotices(viewer: Viewer): RosterPage["families"] {
  const { words, db, scope } = viewer;
  const items = [
    ...ending(viewer).map((link) => ({
      student: { href: `/students/${link.studentId}/family`, label: link.alias },
      text: words.say("family-links.notice.ends", { label: link.label, day: dayOf(viewer, link) }),
    })),
    ...readOpenRequests(db, scope).map(({ studentId, alias, open }) => ({
      student: { href: `/students/${studentId}/family`, label: alias },
      text: words.say("family-links.notice.waits", { open }),
    })),
  ];
  return items.length === 0 ? null : { margin: words.say("family-links.notice.margin"), heading: "", items, more: "" };
}

/** The same of one student, as lines of the season's page. */
export function studentFamilyNotices(viewer: StudentViewer): string[] {
  const { words, student } = viewer;
  const own = ending(viewer).filter(({ studentId }) => studentId === student.studentId);
  return own.map((link) => words.say("family-links.notice.season", { label: link.label, day: dayOf(viewer, link) }));
}
