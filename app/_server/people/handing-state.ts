import { type NamedCharge, readStudentCharges } from "@/db/read/handing";
import { chargeOn } from "@/lib/domain/charge";
import type { Person } from "@/lib/domain/person";
import type { StudentViewer } from "../gate";
import { coachesHere } from "./coaches-here";

/** Who has a student in charge, and what is planned. */
export interface HandingState {
  /** Every charge, oldest first. */
  readonly charges: readonly NamedCharge[];
  /** Whose the student is today; more than one only where several were given before hand-overs were kept. */
  readonly own: readonly NamedCharge[];
  /** A hand-over that has not begun; null: none. */
  readonly planned: NamedCharge | null;
  /** Covers that run or are to come. */
  readonly covers: readonly NamedCharge[];
  /** Whether the viewer may hand over or have covered: a director, or whose the student is; who only covers may not. */
  readonly may: "hand-over" | "look";
  /** Those to whom the student may be given. */
  readonly coaches: readonly Person[];
}

/** How a student's charges stand today. */
export function handingState(viewer: StudentViewer): HandingState {
  const { db, academy, student, today } = viewer;
  const charges = readStudentCharges(db, student);
  const standing = charges.filter((each) => each.coaches === 1);
  const own = standing.filter((each) => each.kind === "own" && chargeOn(each, today) === "in-force");
  const mine = own.some(({ coachId }) => coachId === viewer.userId);
  return {
    charges,
    own,
    planned: charges.find((each) => each.kind === "own" && chargeOn(each, today) === "to-come") ?? null,
    covers: standing.filter((each) => each.kind === "cover" && chargeOn(each, today) !== "over"),
    may: viewer.roles.includes("director") || mine ? "hand-over" : "look",
    coaches: coachesHere(db, academy.id).filter(({ userId }) => !own.some((each) => each.coachId === userId)),
  };
}

/** Who had the student last, with or without a charge in force; null: nobody ever had. */
export function lastCoach({ charges, own }: HandingState): string | null {
  return (
    (
      own.at(-1) ??
      charges.findLast(({ kind, endedAt }) => kind === "own" && endedAt === null) ??
      charges.findLast(({ kind }) => kind === "own")
    )?.coachId ?? null
  );
}
