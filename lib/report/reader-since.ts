import type { StudentEvent } from "@/lib/domain/student";

/** Who reads the films of a student, and since when. */
export interface ReaderSince {
  readonly name: string;
  readonly since: string;
}

/**
 * Who reads since films came from elsewhere. A cover reads for a while, and whoever is to come reads nothing yet.
 *
 * @param events of the student, by day
 * @param days the day of the import, and the one on which it is asked
 * @returns null: no change of reader since is on file
 */
export function readerSince(
  events: readonly StudentEvent[],
  { importedOn, seenOn }: { readonly importedOn: string; readonly seenOn: string },
): ReaderSince | null {
  const change = events.findLast(
    ({ kind, day, endDay }) => kind === "reader-change" && day >= importedOn && day <= seenOn && endDay === null,
  );
  return change ? { name: change.note, since: change.day } : null;
}
