import type { Database } from "@/db/client";
import { readClubGrouping } from "@/db/read/club-groups";
import { readEvents } from "@/db/read/events";
import { readLookNoise } from "@/db/read/looks";
import { readOwnFundamentals, readOwnReadingCounts } from "@/db/read/own-fundamentals";
import { readOwningRules } from "@/db/read/owning-rules";
import { readReadingsInForce } from "@/db/read/readings";
import { readReaderErrors } from "@/db/read/rereads";
import { readCaptures, readSessions, readStatedCaptureSds } from "@/db/read/sessions";
import { readStudent } from "@/db/read/students";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import { isRead } from "@/lib/domain/fundamental-on";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { RecordedOwningRule } from "@/lib/domain/owning-rule";
import type { MeasuredReaderError } from "@/lib/domain/reread";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import { parseOwnFundamental } from "@/lib/ingest/parse-own-fundamental";
import type { StudentRecord } from "@/lib/verdict/track-history";
import { todayOf } from "../clock";
import { bandsOf, loadBands } from "../goals/bands";

/** What is an academy's and the same for all its students. */
export interface AcademyRules {
  /** Built-in and own, in the order of work. */
  readonly fundamentals: readonly Fundamental[];
  readonly bands: readonly GoalBand[];
  readonly grouping: ClubGrouping;
  readonly seasonStart: string;
  /** Every fitted error of the academy's readers. */
  readonly readerErrors: readonly MeasuredReaderError[];
  /** Every owning rule of the academy, in the order of entry. */
  readonly owningRules: readonly RecordedOwningRule[];
  /** Last day taken in: goals of later days are not in force yet. */
  readonly today: string;
}

/** An academy's own fundamentals as they are defined; those too that are read no more. */
export function readOwn(db: Database, scope: AcademyScope): readonly Fundamental[] {
  return readOwnFundamentals(db, scope).map((row) => {
    const parsed = parseOwnFundamental(row.definition);
    if (!parsed) throw new Error(`the definition of ${row.id} can't be read`);
    return parsed;
  });
}

/** Of an academy's own fundamentals those of which there is something to say: what is read no more and never was isn't one. */
function readStandingOwn(db: Database, scope: AcademyScope, today: string): readonly Fundamental[] {
  const own = readOwn(db, scope);
  if (own.every((fundamental) => isRead(fundamental, today))) return own;
  const counts = readOwnReadingCounts(db, scope);
  return own.filter((fundamental) => isRead(fundamental, today) || counts.has(fundamental.id));
}

export function loadAcademyRules(
  db: Database,
  scope: AcademyScope,
  academy: { readonly seasonStart: string; readonly fixedToday: string | null; readonly zone: string },
): AcademyRules {
  return {
    fundamentals: orderedFundamentals(readStandingOwn(db, scope, todayOf(academy))),
    bands: loadBands(db, scope, academy),
    grouping: readClubGrouping(db, scope),
    seasonStart: academy.seasonStart,
    readerErrors: readReaderErrors(db, scope),
    owningRules: readOwningRules(db, scope),
    today: todayOf(academy),
  };
}

/** Everything on file of one student that a verdict may rest on. */
export function loadStudentRecord(db: Database, scope: StudentScope, rules: AcademyRules): StudentRecord {
  return {
    student: readStudent(db, scope),
    sessions: readSessions(db, scope),
    captures: readCaptures(db, scope),
    statedCaptureSds: readStatedCaptureSds(db, scope),
    readings: readReadingsInForce(db, scope),
    events: readEvents(db, scope),
    lookNoise: readLookNoise(db, scope),
    fundamentals: rules.fundamentals,
    bands: bandsOf(rules.bands, scope.studentId),
    seasonStart: rules.seasonStart,
    readerErrors: rules.readerErrors,
    owningRules: rules.owningRules,
  };
}
