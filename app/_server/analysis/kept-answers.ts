import { createHash } from "node:crypto";
import { POLICY } from "@/lib/verdict/policy";
import type { TaskKind, TaskOf, TaskResultOf } from "../worker/tasks";
import { workOn } from "./analysis-worker";

/** Questions about a track whose answers are short and kept; what a look comes to is kept by `db`, and a noise model too. */
export type KeptKind = Exclude<TaskKind, "judge" | "learn">;

/** So many answers are kept; the ones longest unasked go first. */
const KEPT = 2000;

const KEY = Symbol.for("proofband.kept-answers");
const shared = globalThis as { [KEY]?: Map<string, Promise<TaskResultOf<KeptKind>>> };

function answers(): Map<string, Promise<TaskResultOf<KeptKind>>> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

/**
 * All that an answer rests on, as one short text from which nothing can be read back: the question as the worker is sent it
 * (so every reading, every goal and every noise model, number by number) and the policy. Not by any name: an import that is
 * undone gives its models' names to others.
 */
function nameOf(question: TaskOf<KeptKind>): string {
  return createHash("sha256")
    .update(JSON.stringify([POLICY.version, question]))
    .digest("base64");
}

/** An answer about a track, worked out beside the server's thread and once; asked by everybody who asks the worker for a page. */
export async function answerOnce<K extends KeptKind>(question: TaskOf<K>): Promise<TaskResultOf<K>> {
  const kept = answers();
  const name = nameOf(question);
  // The name holds the kind of the question.
  const answer = (kept.get(name) as Promise<TaskResultOf<K>> | undefined) ?? workOn(question);
  kept.delete(name);
  kept.set(name, answer);
  for (const oldest of kept.keys()) {
    if (kept.size <= KEPT) break;
    kept.delete(oldest);
  }
  // What failed is tried again by who asks next.
  answer.catch(() => kept.delete(name));
  return answer;
}
