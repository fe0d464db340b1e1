import { z } from "zod";
import type { ClubGroup } from "./club-group";

/** A test of two drills by the lot, as it was planned. */
export interface FairTest {
  readonly id: string;
  readonly fundamentalId: string;
  readonly firstDrillId: string;
  readonly secondDrillId: string;
  /** The least difference worth finding, in the fundamental's unit. */
  readonly least: number;
  /** Sd of what students gain with either drill, in the unit, as it was taken for the plan. */
  readonly spread: number;
  /** How many are to be drawn. */
  readonly students: number;
  readonly looks: number;
  /** Days after a draw whose films count. */
  readonly days: number;
  readonly seed: string;
  readonly day: string;
  readonly who: string;
  readonly recordedAt: string;
}

/** The first drill of a test, or its second. */
export type Arm = 0 | 1;

/** Which drill a student drew. */
export interface FairAllocation {
  readonly id: string;
  readonly testId: string;
  readonly studentId: string;
  readonly clubGroup: ClubGroup;
  /** Whose order it is taken from, and its place there, from 0. */
  readonly coachId: string;
  readonly place: number;
  readonly arm: Arm;
  readonly day: string;
  readonly who: string;
  readonly recordedAt: string;
}

/** What a test says: which drill gains more, that neither does by the least that is worth it, or that it can't be told. */
export const FAIR_WORDS = ["first", "second", "alike", "open"] as const;
export type FairWord = (typeof FAIR_WORDS)[number];

const figures = z.strictObject({
  says: z.enum(FAIR_WORDS),
  /** Share of the plan that was in. */
  fraction: z.number().positive().max(1),
  /** By how much the second drill gains more than the first, in the unit. */
  estimate: z.number(),
  /** Null: no end can be said at this look. */
  low: z.number().nullable(),
  high: z.number().nullable(),
  /** Share of the orders that the lot could have had with a difference as large. */
  p: z.number().positive().max(1),
  orders: z.number().int().positive(),
  counted: z.enum(["all", "drawn"]),
  /** Students whose films were in, by drill. */
  have: z.tuple([z.number().int(), z.number().int()]),
  /** Drawn and followed to the end, but without a film. */
  missing: z.number().int().min(0),
  version: z.string().min(1),
});

/** What a look found, as it is kept. */
export type FairFigures = z.infer<typeof figures>;

/** A planned look, or the end. */
export interface FairStep {
  readonly number: number;
  readonly kind: "look" | "end";
  readonly figures: FairFigures | null;
  readonly why: string;
  readonly day: string;
  readonly who: string;
  readonly recordedAt: string;
}

/** What a draw was found to be worth, at the look (0-based) at which it was first in. */
export interface FairValue {
  readonly allocationId: string;
  readonly look: number;
  readonly value: number;
}

/** The text under which figures are kept. */
export function fairFiguresText(found: FairFigures): string {
  return JSON.stringify(found);
}

/** Reads kept figures. A text that isn't any is a mistake and throws. */
export function parseFairFigures(text: string): FairFigures {
  return figures.parse(JSON.parse(text));
}

/** Whether a test goes on: nobody ended it, its looks aren't used up, and none has proved anything. */
export function isRunning(test: Pick<FairTest, "looks">, steps: readonly FairStep[]): boolean {
  const looks = steps.filter(({ kind }) => kind === "look");
  const last = looks.at(-1)?.figures ?? null;
  const proved = last?.says === "first" || last?.says === "second";
  return !proved && looks.length < test.looks && last?.fraction !== 1 && steps.every(({ kind }) => kind !== "end");
}
