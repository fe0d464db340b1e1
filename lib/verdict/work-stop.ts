import type { SaidPain } from "@/lib/domain/practice";
import type { StudentEvent } from "@/lib/domain/student";
import type { WorkStop } from "./choose-priority";

/** What may stop a student's work, as far as whoever asks may know it. */
export interface StopSource {
  /** What was said to hurt and stands; empty also for whoever may not know it. */
  readonly said: readonly Pick<SaidPain, "day">[];
  /** Any events; an injury is told as a pause to whoever may not know it. */
  readonly events: readonly Pick<StudentEvent, "kind" | "day" | "endDay">[];
}

/**
 * What stops all work of a student today: pain that was said and stands, else a pause in whose days today lies. A break is
 * none: nobody works in it, and nothing forbids it.
 *
 * @param today where the student is
 * @returns null: nothing does
 */
export function workStop({ said, events }: StopSource, today: string): WorkStop | null {
  const latest = said
    .map(({ day }) => day)
    .sort()
    .at(-1);
  if (latest !== undefined) return { kind: "pain", since: latest, until: null };
  const pauses = events
    .filter(({ kind }) => kind === "injury" || kind === "pause")
    .filter(({ day, endDay }) => day <= today && (endDay ?? today) >= today)
    .sort((a, b) => (a.day < b.day ? -1 : Number(a.day > b.day)));
  const pause = pauses.find(({ kind }) => kind === "injury") ?? pauses[0];
  if (pause === undefined) return null;
  return { kind: pause.kind === "injury" ? "pain" : "pause", since: pause.day, until: pause.endDay ?? null };
}
