import type { Archive, ArchivedStudent } from "@/lib/domain/archive";
import type { ArchivedReading, ArchivedSession, ArchivedSwing } from "@/lib/domain/archive-session";
import { type ArchiveTable, table } from "./archive-table";

interface Placed {
  readonly student: ArchivedStudent;
  readonly session: ArchivedSession;
  readonly swing: ArchivedSwing;
  readonly reading: ArchivedReading;
}

function placedReadings(archive: Archive): Placed[] {
  return archive.students.flatMap((student) =>
    student.sessions.flatMap((session) =>
      session.swings.flatMap((swing) => swing.readings.map((reading) => ({ student, session, swing, reading }))),
    ),
  );
}

/** The value that counts: that of the latest correction, else as entered. */
function inForce({ value, typed, corrections }: ArchivedReading) {
  const latest = corrections.at(-1);
  if (latest?.kind === "void") return { value: "void", typed: latest.typed };
  const standing = latest ?? { value, typed };
  return { value: standing.value ?? "not measurable", typed: standing.typed };
}

const place = {
  student: ({ student }: Placed) => student.alias,
  session: ({ session }: Placed) => session.id,
  date: ({ session }: Placed) => session.day,
  "club group": ({ session }: Placed) => session.clubGroup,
  swing: ({ swing }: Placed) => swing.number,
  fundamental: ({ reading }: Placed) => reading.fundamentalId,
  reader: ({ reading }: Placed) => reading.reader,
  "read again": ({ reading }: Placed) => reading.reread,
};

function rereadTable(archive: Archive): ArchiveTable {
  const students = new Map(archive.students.map((student) => [student.id, student]));
  const items = archive.rereads.flatMap((draw) => draw.items.map((item) => ({ draw, item })));
  const sessionOf = (studentId: string, sessionId: string) =>
    students.get(studentId)?.sessions.find(({ id }) => id === sessionId);
  return table("rereads", items, {
    student: ({ item }) => students.get(item.studentId)?.alias ?? null,
    session: ({ item }) => item.sessionId,
    date: ({ item }) => sessionOf(item.studentId, item.sessionId)?.day ?? null,
    swing: ({ item }) => item.swing,
    fundamental: ({ item }) => item.fundamentalId,
    draw: ({ draw }) => draw.id,
    level: ({ draw }) => draw.level,
    reader: ({ draw }) => draw.reader,
    "read again": ({ item }) => item.reading?.reread ?? null,
    film: ({ item }) => item.filmReference,
    finished: ({ draw }) => draw.finishedOn,
  });
}

/** Readings with the value that counts and the value as entered, every correction, notes of swings, and what was read again. */
export function readingTables(archive: Archive): readonly ArchiveTable[] {
  const all = placedReadings(archive);
  const corrections = all.flatMap((placed) => placed.reading.corrections.map((mend) => ({ ...placed, mend })));
  const noted = archive.students.flatMap((student) =>
    student.sessions.flatMap((session) =>
      session.swings.filter(({ note }) => note !== null).map((swing) => ({ student, session, swing })),
    ),
  );
  return [
    table("readings", all, {
      ...place,
      value: ({ reading }) => inForce(reading).value,
      typed: ({ reading }) => inForce(reading).typed,
      unit: ({ reading }) => reading.unit,
      "sign rule": ({ reading }) => reading.signRule,
      "value entered": ({ reading }) => reading.value ?? "not measurable",
      "typed entered": ({ reading }) => reading.typed,
      entered: ({ reading }) => reading.enteredAt,
      corrections: ({ reading }) => reading.corrections.length,
    }),
    table("corrections", corrections, {
      ...place,
      kind: ({ mend }) => mend.kind,
      value: ({ mend }) => (mend.kind === "void" ? "void" : (mend.value ?? "not measurable")),
      typed: ({ mend }) => mend.typed,
      who: ({ mend }) => mend.who,
      why: ({ mend }) => mend.why,
      entered: ({ mend }) => mend.correctedAt,
    }),
    table("swings", noted, {
      student: ({ student }) => student.alias,
      session: ({ session }) => session.id,
      date: ({ session }) => session.day,
      swing: ({ swing }) => swing.number,
      note: ({ swing }) => swing.note,
    }),
    rereadTable(archive),
  ];
}
