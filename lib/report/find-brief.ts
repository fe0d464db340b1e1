import type { Words } from "@/lib/words/catalogue";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource } from "./brief-source";
import { findAway } from "./find-away";
import { findBegin } from "./find-begin";
import { findBlocked } from "./find-blocked";
import { findDue } from "./find-due";
import { findPain } from "./find-pain";
import { findProofs } from "./find-proofs";
import { findReady } from "./find-ready";
import { findStalled } from "./find-stalled";
import { findWatched } from "./find-watched";

/**
 * Everything that the brief finds, in the coach's order: pain before all, then what has slipped, what is to be looked at
 * again, who may move on, what else is newly proved, who begins, what the films can't tell, which films
 * are awaited, who stands still, who is away.
 */
export function findBrief(words: Words, source: BriefSource): readonly BriefFinding[] {
  const proofs = findProofs(words, source);
  return [
    ...findPain(words, source),
    ...proofs.filter(({ word }) => word === "slip"),
    ...findWatched(words, source),
    ...findReady(words, source),
    ...proofs.filter(({ word }) => word !== "slip"),
    ...findBegin(words, source),
    ...findBlocked(words, source),
    ...findDue(words, source),
    ...findStalled(words, source),
    ...findAway(words, source),
  ];
}
