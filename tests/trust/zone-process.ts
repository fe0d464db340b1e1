import { dayIn } from "@/app/_server/clock";
import { closeDatabases } from "@/app/_server/database";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { addStudent } from "@/app/_server/season/student-desk";
import { saveSession } from "@/app/_server/session/session-desk";
import { readSessions } from "@/db/read/sessions";
import { dayNumber } from "@/lib/domain/calendar-day";
import { sayDay } from "@/lib/words/day-words";
import { sayHour } from "@/lib/words/say-hour";
import { formOf, sessionFields, viewerOfAri } from "./own-academy";

// Says what this process, in its own time zone, makes of days near midnight and of a student's season.

const [, , cases = "[]"] = process.argv;

async function main(): Promise<void> {
  const days = (JSON.parse(cases) as { zone: string; instant: string }[]).map(({ zone, instant }) => {
    const day = dayIn(zone, new Date(instant));
    return [day, dayNumber(day)];
  });
  const viewer = await viewerOfAri();
  const { words } = viewer;
  const said = (JSON.parse(cases) as { zone: string; instant: string }[]).map(({ zone, instant }) => {
    const day = dayIn(zone, new Date(instant));
    return [sayDay(words, day, "full"), sayHour(words, instant, zone, day)];
  });
  addStudent(
    viewer,
    formOf({ alias: "Far", hand: "left", zone: "Pacific/Kiritimati", consentGivenBy: "x", consentOnPaper: "yes" }),
  );
  for (const day of ["2026-03-28", "2026-03-29", "2026-03-30", "2026-04-05", "2026-05-01"])
    saveSession(viewer, formOf({ ...sessionFields(day), note: day }));
  const { tracks } = await loadStudentVerdicts(viewer);
  const sessions = readSessions(viewer.db, viewer.student).map(({ day, sequence, note }) => [day, sequence, note]);
  const verdicts = tracks.map(({ verdict }) => ({ ...verdict, id: verdict.id.split("/").slice(1) }));
  process.stdout.write(`answer ${JSON.stringify({ days, said, sessions, verdicts })}\n`);
  closeDatabases();
  process.exit(0);
}

void main();
