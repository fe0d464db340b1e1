import { POLICY } from "@/lib/verdict/policy";
import type { Words } from "@/lib/words/catalogue";
import type { Brief } from "./brief-model";
import type { BriefSource, BriefStudent } from "./brief-source";
import { countPlaces } from "./count-places";

/** Whether one of a student's tracks has had the films of its first look; of everybody it is asked at every view. */
function hasFirstLook({ summaries }: BriefStudent): boolean {
  for (const { sessions } of summaries) {
    let used = 0;
    for (const { mark } of sessions) if (mark === "used" && ++used >= POLICY.firstLook) return true;
  }
  return false;
}

interface Known {
  readonly tracks: number;
  readonly inside: number;
  readonly edge: number;
  readonly outside: number;
  /** Students with a first look. */
  readonly ready: number;
}

/** Of the very same students: a brief is laid out anew at every view, and its students are held. */
const counted = new WeakMap<BriefSource, Known | null>();

/** Null: something is proved, or nobody is here. */
function countKnown({ students, all }: BriefSource): Known | null {
  if (students.length === 0 || all.some(({ verdict }) => verdict.listed === true)) return null;
  const levels = all.filter(({ verdict }) => verdict.levelNow !== null);
  return { ...countPlaces(levels), tracks: levels.length, ready: students.filter(hasFirstLook).length };
}

/**
 * What is known in the first weeks, while no track of anybody stands on the roster's list: where everything lies, and that
 * nothing needs to be proved yet. Null: something is proved, or nobody is here.
 */
export function buildBriefKnown(words: Words, source: BriefSource): Brief["known"] {
  const found = counted.get(source);
  const known = found === undefined ? countKnown(source) : found;
  counted.set(source, known);
  if (known === null) return null;
  const { ready, ...places } = known;
  return {
    margin: words.say("brief.known.margin"),
    heading: words.say("brief.known.heading", places),
    text: words.say(ready === source.students.length ? "brief.known.looked" : "brief.known.unproved", { ready }),
  };
}
