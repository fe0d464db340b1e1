import { readStudent } from "@/db/read/students";
import type { SessionNotePage } from "@/lib/report/note-answer-model";
import { sayDay } from "@/lib/words/day-words";
import type { StudentViewer } from "../gate";
import { findSession } from "./correct-desk";
import { answerSessionNote, tapSessionNote } from "./note-desk";

/** What the note of a session says, to be corrected with one tap; null: the student has no such session. */
export function loadNotePage(viewer: StudentViewer, sessionId: string): SessionNotePage | null {
  const { words, student } = viewer;
  const session = findSession(viewer, sessionId);
  if (!session) return null;
  const { alias } = readStudent(viewer.db, student);
  const say = (key: string) => words.say(`note-page.${key}`);
  return {
    title: words.say("note-page.title", { alias, day: sayDay(words, session.day, "full") }),
    lede: say("lede"),
    back: {
      href: `/students/${student.studentId}/sessions/${encodeURIComponent(sessionId)}`,
      label: words.say("note-page.back", { day: sayDay(words, session.day, "full") }),
    },
    margin: say("margin"),
    explains: say("explains"),
    hidden: [
      { name: "studentId", value: student.studentId },
      { name: "sessionId", value: sessionId },
    ],
    answer: answerSessionNote(viewer, session),
    none: say("none"),
  };
}

/** Records what was tapped beside a session's note. */
export function tapNote(viewer: StudentViewer, sessionId: string, data: FormData): "recorded" | "not-there" {
  const session = findSession(viewer, sessionId);
  if (!session) return "not-there";
  tapSessionNote(viewer, session, data);
  return "recorded";
}
