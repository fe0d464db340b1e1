import type { Archive, ArchivedStudent } from "@/lib/domain/archive";
import type { ArchivedSession, ArchivedSnapshot } from "@/lib/domain/archive-session";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { alias, type OfStudent, ofAll } from "./archive-of-student";
import { eventTables, personTables } from "./archive-person-tables";
import { planTables } from "./archive-plan-tables";
import { readingTables } from "./archive-reading-tables";
import { type ArchiveTable, table } from "./archive-table";

function sessionTable(archive: Archive): ArchiveTable {
  const all = ofAll<ArchivedSession>(archive, (student) => student.sessions);
  return table("sessions", all, {
    student: alias,
    session: ({ row }) => row.id,
    date: ({ row }) => row.day,
    sequence: ({ row }) => row.sequence,
    "club group": ({ row }) => row.clubGroup,
    "club group said": ({ row }) => row.saidClubGroup,
    club: ({ row }) => row.club,
    reader: ({ row }) => row.reader,
    circumstance: ({ row }) => row.circumstance,
    aid: ({ row }) => row.aid,
    "stance width cm": ({ row }) => row.stanceWidthCm,
    "days since practice": ({ row }) => row.daysSincePractice,
    marks: ({ row }) => row.marks,
    note: ({ row }) => row.note,
    solid: ({ row }) => row.solid,
    balls: ({ row }) => row.balls,
    "set aside": ({ row }) => row.setAsideReason,
    entered: ({ row }) => row.createdAt,
    "group session": ({ row }) => row.groupId,
  });
}

function captureTables(archive: Archive): ArchiveTable[] {
  const of = <T>(rows: (session: ArchivedSession) => readonly T[]) =>
    ofAll(archive, ({ sessions }) => sessions.flatMap((session) => rows(session).map((one) => ({ session, one }))));
  const place = {
    student: alias,
    session: ({ row }: OfStudent<{ session: ArchivedSession }>) => row.session.id,
    date: ({ row }: OfStudent<{ session: ArchivedSession }>) => row.session.day,
  };
  return [
    table(
      "captures",
      of((session) => session.captures),
      {
        ...place,
        view: ({ row }) => row.one.view,
        placement: ({ row }) => row.one.placement,
        "placement label": ({ row }) => row.one.placementLabel,
        squareness: ({ row }) => row.one.squareness,
        "off by": ({ row }) => row.one.offBy,
        "pointing stick lean": ({ row }) => row.one.pointingStickLean,
        "across stick slope": ({ row }) => row.one.acrossStickSlope,
        "plumb lean": ({ row }) => row.one.plumbLean,
        "lens height cm": ({ row }) => row.one.lensHeightCm,
        "hands height cm": ({ row }) => row.one.handsHeightCm,
        "distance cm": ({ row }) => row.one.distanceCm,
        "beside hands cm": ({ row }) => row.one.besideHandsCm,
        "frames per second": ({ row }) => row.one.framesPerSecond,
        "shutter per second": ({ row }) => row.one.shutterPerSecond,
        "placed by": ({ row }) => row.one.placedBy,
        "set aside": ({ row }) => row.one.setAsideReason,
        film: ({ row }) => row.one.filmReference,
      },
    ),
    table(
      "camera-sds",
      of((session) => session.statedCaptureSds),
      { ...place, fundamental: ({ row }) => row.one.fundamentalId, "camera sd": ({ row }) => row.one.sd },
    ),
  ];
}

function workTables(archive: Archive): ArchiveTable[] {
  const drills = new Map(archive.rules.drills.map((drill) => [drill.id, drill]));
  const nameOf = (student: ArchivedStudent, assignmentId: string | null): string | null => {
    const drillId = student.assignments.find(({ id }) => id === assignmentId)?.drillId;
    return drillId === undefined ? null : (drills.get(drillId)?.name ?? null);
  };
  return [
    table(
      "drills",
      ofAll(archive, (student) => student.assignments),
      {
        student: alias,
        drill: ({ row }) => drills.get(row.drillId)?.name ?? null,
        fundamental: ({ row }) => row.fundamentalId,
        date: ({ row }) => row.startDay,
        "end date": ({ row }) => row.endDay,
        dose: ({ row }) => row.dose,
        reps: ({ row }) => row.reps,
        "minutes a day": ({ row }) => row.minutesADay,
        "days a week": ({ row }) => row.daysAWeek,
        "stop rule": ({ row }) => row.stopRule,
        "measured again": ({ row }) => row.remeasureOn,
        "why ended": ({ row }) => row.endWhy,
        "taken back": ({ row }) => row.voidedAt,
        how: ({ row }) => drills.get(row.drillId)?.how ?? null,
        cautions: ({ row }) => drills.get(row.drillId)?.cautions ?? null,
        who: ({ row }) => row.who,
        entered: ({ row }) => row.recordedAt,
      },
    ),
    table(
      "practice",
      ofAll(archive, (student) => student.practice),
      {
        student: alias,
        date: ({ row }) => row.day,
        drill: ({ student, row }) => nameOf(student, row.assignmentId),
        minutes: ({ row }) => row.minutes,
        balls: ({ row }) => row.balls,
        felt: ({ row }) => row.felt,
        source: ({ row }) => row.source,
        who: ({ row }) => row.who,
        entered: ({ row }) => row.recordedAt,
        "taken back": ({ row }) => row.voidedAt,
      },
    ),
  ];
}

function contactTable(archive: Archive): ArchiveTable {
  const counted = ofAll(archive, ({ sessions }) =>
    sessions.filter(({ solid, balls }) => solid !== null || balls !== null),
  );
  return table("contact", counted, {
    student: alias,
    session: ({ row }) => row.id,
    date: ({ row }) => row.day,
    "club group": ({ row }) => row.clubGroup,
    circumstance: ({ row }) => row.circumstance,
    solid: ({ row }) => row.solid,
    balls: ({ row }) => row.balls,
    note: ({ row }) => row.note,
  });
}

function bandTable(archive: Archive): ArchiveTable {
  const names = new Map(archive.students.map((student) => [student.id, student.alias]));
  return table("goal-bands", archive.rules.goalBands, {
    student: (band) => (band.studentId === null ? null : (names.get(band.studentId) ?? null)),
    scope: (band) => band.scope,
    "age from": (band) => band.ageFrom,
    "age to": (band) => band.ageTo,
    fundamental: (band) => band.fundamentalId,
    "club group": (band) => band.clubGroup,
    low: (band) => band.low,
    high: (band) => band.high,
    date: (band) => band.fromDay,
    reason: (band) => band.reason,
    who: (band) => band.who,
    entered: (band) => band.createdAt,
  });
}

function looksOf(snapshot: ArchivedSnapshot) {
  const { verdict } = JSON.parse(snapshot.body) as { readonly verdict: TrackVerdict };
  return (verdict.looks ?? []).map((look, at) => ({ snapshot, look, listed: snapshot.listedLooks[at] ?? false }));
}

function sayTables(archive: Archive): ArchiveTable[] {
  return [
    table(
      "looks",
      ofAll(archive, (student) => student.snapshots.flatMap(looksOf)),
      {
        student: alias,
        fundamental: ({ row }) => row.snapshot.fundamentalId,
        "club group": ({ row }) => row.snapshot.clubGroup,
        date: ({ row }) => row.look.date,
        verdict: ({ row }) => row.look.verdict,
        listed: ({ row }) => (row.listed ? "yes" : "no"),
        "log bayes factor": ({ row }) => row.look.logBayesFactor,
        "direction up": ({ row }) => row.look.directionUp,
        policy: ({ row }) => row.snapshot.policyVersion,
      },
    ),
    table(
      "askings",
      ofAll(archive, (student) => student.askings),
      {
        student: alias,
        fundamental: ({ row }) => row.fundamentalId,
        "club group": ({ row }) => row.clubGroup,
        state: ({ row }) => row.state,
        date: ({ row }) => row.day,
        plan: ({ row }) => row.plan,
        who: ({ row }) => row.who,
        entered: ({ row }) => row.recordedAt,
      },
    ),
  ];
}

/** The tables of an archive, one a kind of thing; every cell is a field of the archive. */
export function archiveTables(archive: Archive): readonly ArchiveTable[] {
  return [
    ...personTables(archive),
    sessionTable(archive),
    ...captureTables(archive),
    ...readingTables(archive),
    ...eventTables(archive),
    ...workTables(archive),
    ...planTables(archive),
    contactTable(archive),
    bandTable(archive),
    ...sayTables(archive),
  ];
}
