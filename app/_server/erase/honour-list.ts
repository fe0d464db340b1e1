import { type Database, IN_MEMORY } from "@/db/client";
import { readListedGroups } from "@/db/read/erased-group";
import { wordsFor } from "@/lib/words/catalogue";
import { clearTraces } from "./clear-traces";
import { eraseGroup } from "./erase-group";
import { erasedDigest, erasedListOf, readErasedList } from "./erased-list";

/**
 * Erases whoever stands in the list of erased students and is on file all the same: out of a copy from before, or because
 * the process that erased was killed. Done whenever a database is opened, so before anything of it is shown.
 *
 * @returns how many
 */
export function honourErasedList(db: Database, list = erasedListOf(db.file)): number {
  const listed = db.file === IN_MEMORY ? new Map<string, never>() : readErasedList(list);
  if (listed.size === 0) return 0;
  const words = wordsFor("en");
  let erased = 0;
  for (const group of readListedGroups(db, (student) => listed.has(erasedDigest(student)))) {
    const line = group.studentIds.flatMap(
      (studentId) => listed.get(erasedDigest({ academyId: group.academyId, studentId })) ?? [],
    )[0];
    const note = { who: words.say("erase.program"), reason: line?.reason ?? "asked", words, list } as const;
    if (eraseGroup(db, group, note)) erased += 1;
  }
  clearTraces(db);
  return erased;
}
