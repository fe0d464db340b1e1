import type { ToldOfStudent } from "@/lib/domain/archive-told";
import { type ArchiveTable, table } from "./archive-table";

/** Alias of a student of the archive, by id. */
export type AliasOf = (row: { readonly studentId: string }) => string | null;

function familyTables(student: AliasOf, told: readonly ToldOfStudent[]): ArchiveTable[] {
  return [
    table(
      "family-links",
      told.flatMap((each) => each.familyLinks),
      {
        student,
        link: (row) => row.id,
        label: (row) => row.label,
        who: (row) => row.who,
        made: (row) => row.madeAt,
        ends: (row) => row.expiresAt,
        renewed: (row) => row.renewedAt,
        "renewed by": (row) => row.renewedBy,
        revoked: (row) => row.revokedAt,
        "revoked by": (row) => row.revokedBy,
      },
    ),
    table(
      "family-openings",
      told.flatMap((each) => each.familyOpenings),
      { student, link: (row) => row.linkId, label: (row) => row.label, opened: (row) => row.openedAt },
    ),
    table(
      "family-requests",
      told.flatMap((each) => each.familyRequests),
      {
        student,
        link: (row) => row.linkId,
        kind: (row) => row.kind,
        asked: (row) => row.askedAt,
        settled: (row) => row.settledAt,
        "settled by": (row) => row.settledBy,
        answer: (row) => row.answer,
      },
    ),
    table(
      "told",
      told.flatMap((each) => each.told),
      {
        student,
        "club group": (row) => row.clubGroup,
        kind: (row) => row.kind,
        text: (row) => row.text,
        changes: (row) => row.findings,
        date: (row) => row.day,
        who: (row) => row.who,
        entered: (row) => row.recordedAt,
        "taken back": (row) => row.voidedAt,
      },
    ),
  ];
}

function fairTable(student: AliasOf, told: readonly ToldOfStudent[]): ArchiveTable {
  return table(
    "fair-allocations",
    told.flatMap((each) => each.fairAllocations),
    {
      student,
      fundamental: (row) => row.fundamentalId,
      "club group": (row) => row.clubGroup,
      "first drill": (row) => row.firstDrill,
      "second drill": (row) => row.secondDrill,
      drawn: (row) => (row.arm === 0 ? row.firstDrill : row.secondDrill),
      gain: (row) => row.gain,
      date: (row) => row.day,
      who: (row) => row.who,
      entered: (row) => row.recordedAt,
    },
  );
}

/** The tables of what an archive tells beside the record; none of them can be put back. */
export function archiveToldTables(student: AliasOf, told: readonly ToldOfStudent[]): readonly ArchiveTable[] {
  return [
    table(
      "charges",
      told.flatMap((each) => each.charges),
      {
        student,
        coach: (row) => row.coach,
        kind: (row) => row.kind,
        from: (row) => row.from,
        note: (row) => row.note,
        date: (row) => row.fromDay,
        "end date": (row) => row.untilDay,
        who: (row) => row.who,
        entered: (row) => row.recordedAt,
        ended: (row) => row.endedAt,
        "ended by": (row) => row.endedBy,
      },
    ),
    ...familyTables(student, told),
    fairTable(student, told),
    table(
      "waiting",
      told.flatMap((each) => each.waiting),
      {
        student,
        fundamental: (row) => row.fundamentalId,
        date: (row) => row.fromDay,
        "end date": (row) => row.untilDay,
        who: (row) => row.who,
        entered: (row) => row.recordedAt,
        "taken back": (row) => row.voidedAt,
      },
    ),
    table(
      "who-looked",
      told.flatMap((each) => each.recordViews),
      {
        student,
        who: (row) => row.who,
        role: (row) => row.role,
        what: (row) => row.what,
        place: (row) => row.place,
        looked: (row) => row.viewedAt,
      },
    ),
    table(
      "keeping",
      told.flatMap((each) => each.retentionNotices),
      {
        student,
        kind: (row) => row.kind,
        link: (row) => row.linkId,
        announced: (row) => row.announcedAt,
        due: (row) => row.dueDay,
        held: (row) => row.heldAt,
        "held by": (row) => row.heldBy,
        why: (row) => row.why,
      },
    ),
    table(
      "carried-looks",
      told.flatMap((each) => each.carriedLooks),
      {
        student,
        session: (row) => row.sessionId,
        fundamental: (row) => row.fundamentalId,
        "club group": (row) => row.clubGroup,
        "said by": (row) => row.saidBy,
        policy: (row) => row.policyVersion,
        "noise model": (row) => row.noiseModelName,
        said: (row) => row.body,
      },
    ),
    table(
      "changes",
      told.flatMap((each) => each.changes),
      {
        student,
        kind: (row) => row.kind,
        record: (row) => row.record,
        who: (row) => row.who,
        why: (row) => row.why,
        changed: (row) => row.changedAt,
        undone: (row) => row.undoneAt,
        "undone by": (row) => row.undoneBy,
      },
    ),
  ];
}
