import { createHash } from "node:crypto";
import type { Arm, FairTest } from "@/lib/domain/fair-test";
import { allocationOrder } from "@/lib/drills/allocation-order";

const WORD = 2 ** 32;

/** Numbers from 0 to below 1 that follow from a text: the same ones each time, and nobody tells the next without the text. */
export function numbersOf(text: string): () => number {
  let turn = 0;
  return () => {
    const digest = createHash("sha256").update(`${text} ${turn}`).digest();
    turn += 1;
    return digest.readUInt32BE(0) / WORD;
  };
}

/** The order in which one coach's students draw in a test, as many blocks as hold so many places. */
export function orderOfLot({ seed }: Pick<FairTest, "seed">, coachId: string, places: number) {
  return allocationOrder(numbersOf(`${seed} coach ${coachId}`), places);
}

/** What the lot says at a place of a coach's order. */
export function armOfLot(test: Pick<FairTest, "seed">, coachId: string, place: number): Arm {
  return orderOfLot(test, coachId, place + 1).flat()[place] as Arm;
}
