import { AsyncLocalStorage } from "node:async_hooks";
import { randomInt } from "node:crypto";

/** What is known of one request while it is answered. */
export interface Answering {
  /** Under which the log has a line about this answer; null: nobody has been told one. */
  reference: string | null;
  /** Why it is refused, in one word of ours. */
  why: string;
  /** The status of a page that is a refusal; null: its own. */
  status: number | null;
  /** What is to be done once it is answered or broken off; null: it is. */
  after: (() => void)[] | null;
}

// On the global object: the bundler loads this file once for the door and once for the pages.
const KEY = Symbol.for("proofband.answering");
const shared = globalThis as { [KEY]?: AsyncLocalStorage<Answering> };

function current(): AsyncLocalStorage<Answering> {
  shared[KEY] ??= new AsyncLocalStorage();
  return shared[KEY];
}

/** Signs of a reference: no vowel, so that it spells nothing, and none that is taken for another one. */
const SIGNS = "23456789BCDFGHJKMNPQRTVWXZ";
/** Twice four of 26 signs are 2 × 10¹¹ references: none is met twice in a log, and one can be read out on the phone. */
const [GROUPS, IN_GROUP] = [2, 4];

function newReference(): string {
  const group = () => Array.from({ length: IN_GROUP }, () => SIGNS[randomInt(SIGNS.length)]).join("");
  return Array.from({ length: GROUPS }, group).join("-");
}

/** From here on all that is done is done for this request. */
export function beginAnswering(): Answering {
  const answering: Answering = { reference: null, why: "", status: null, after: [] };
  current().enterWith(answering);
  return answering;
}

/** Where nobody is answered, the log has no line. */
const NO_REFERENCE = "–";

/** The reference that this request’s refusal tells, and by which the log finds it. */
export function referenceHere(answering: Pick<Answering, "reference"> | undefined = current().getStore()): string {
  if (!answering) return NO_REFERENCE;
  answering.reference ??= newReference();
  return answering.reference;
}

/** Says in a word why this request is refused; it stands in the log. */
export function noteWhy(why: string): void {
  const answering = current().getStore();
  if (answering) answering.why = why;
}

/** Gives a page that is a refusal its status, which a page of the framework can’t say itself. */
export function answerAs(status: number): void {
  const answering = current().getStore();
  if (answering) answering.status = status;
}

/** Does something once this request is answered or broken off; at once where it is already, or where nobody knows of one. */
export function afterAnswer(work: () => void): void {
  const answering = current().getStore();
  if (answering?.after) answering.after.push(work);
  else work();
}

/** The request is answered or broken off. */
export function endAnswering(answering: Answering): void {
  const works = answering.after ?? [];
  answering.after = null;
  for (const work of works) work();
}
