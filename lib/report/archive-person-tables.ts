import type { Archive } from "@/lib/domain/archive";
import { alias, ofAll } from "./archive-of-student";
import { type ArchiveTable, table } from "./archive-table";

/** What happened, and every change of what begins anew with it. */
export function eventTables(archive: Archive): ArchiveTable[] {
  const events = ofAll(archive, (student) => student.events);
  const changes = ofAll(archive, (student) =>
    student.events.flatMap((event) => event.changes.map((change) => ({ event, change }))),
  );
  return [
    table("events", events, {
      student: alias,
      kind: ({ row }) => row.kind,
      date: ({ row }) => row.day,
      "end date": ({ row }) => row.endDay,
      note: ({ row }) => row.note,
      "begins anew": ({ row }) => row.rebaselines,
      who: ({ row }) => row.who,
      entered: ({ row }) => row.recordedAt,
      "taken back": ({ row }) => row.voidedAt,
    }),
    table("event-changes", changes, {
      student: alias,
      kind: ({ row }) => row.event.kind,
      date: ({ row }) => row.event.day,
      before: ({ row }) => row.change.before,
      after: ({ row }) => row.change.after,
      who: ({ row }) => row.change.who,
      why: ({ row }) => row.change.why,
      entered: ({ row }) => row.change.changedAt,
    }),
  ];
}

/** Who the students are, their heights, and who consented to what. */
export function personTables(archive: Archive): ArchiveTable[] {
  return [
    table(
      "students",
      archive.students.map((student) => ({ student, row: student })),
      {
        student: alias,
        id: ({ row }) => row.id,
        "birth year": ({ row }) => row.birthYear,
        hand: ({ row }) => row.hand,
        zone: ({ row }) => row.zone,
        clubs: ({ row }) => row.clubs,
        language: ({ row }) => row.language,
        departed: ({ row }) => row.departedOn,
        entered: ({ row }) => row.createdAt,
      },
    ),
    table(
      "heights",
      ofAll(archive, (student) => student.heights),
      { student: alias, date: ({ row }) => row.day, cm: ({ row }) => row.cm },
    ),
    table(
      "consents",
      ofAll(archive, (student) => student.consents),
      {
        student: alias,
        kind: ({ row }) => row.kind,
        "given by": ({ row }) => row.givenBy,
        giver: ({ row }) => row.giverIs,
        date: ({ row }) => row.fromDay,
        "end date": ({ row }) => row.untilDay,
        withdrawn: ({ row }) => row.withdrawnOn,
        "withdrawn by": ({ row }) => row.withdrawnBy,
        entered: ({ row }) => row.recordedAt,
      },
    ),
  ];
}
