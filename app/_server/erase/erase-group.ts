import { randomUUID } from "node:crypto";
import { type Database, IN_MEMORY } from "@/db/client";
import type { ErasedGroup } from "@/db/read/erased-group";
import { type Erased, eraseStudent } from "@/db/write/erase-student";
import type { ErasureReason } from "@/lib/domain/erasure";
import type { Naming } from "@/lib/domain/named-in";
import type { Words } from "@/lib/words/catalogue";
import { currentInstant } from "../clock";
import { noteTraces } from "./clear-traces";
import { addToErasedList, erasedDigest, erasedListOf } from "./erased-list";
import { mayHold } from "./may-hold";

/** Who erases, why, and in which language a blank stands for a file's name. */
export interface EraseNote {
  readonly who: string;
  readonly reason: ErasureReason;
  readonly words: Words;
  /** The list that it is written down in; absent: the one beside the data. */
  readonly list?: string;
}

/** What came of it, and by what the student would be found in what lies in memory. */
export type GroupErased = Erased & { readonly erasureId: string; readonly naming: Naming };

/**
 * Erases a student and writes that down beside the data, where no restore takes it away. The list is on the disk before the
 * erasure is: killed in between, the next start erases. What fails leaves the data and the list as they were.
 *
 * @returns null: nobody of the group is on file
 * @throws what the disk says where it took nothing
 */
export function eraseGroup(db: Database, group: ErasedGroup, note: EraseNote): GroupErased | null {
  const { who, reason, words, list = erasedListOf(db.file) } = note;
  const erasureId = randomUUID();
  const now = currentInstant();
  let takeBack = () => {};
  let known: Naming = { ids: new Set(), aliases: [] };
  try {
    const erased = eraseStudent(db, group, {
      ...{ erasureId, now, who, reason, mayHold },
      blank: words.say("erase.file-name"),
      beforeCommit(naming) {
        known = naming;
        noteTraces(db, group.academyId);
        if (db.file === IN_MEMORY) return;
        const day = now.slice(0, 10);
        takeBack = addToErasedList(
          list,
          group.studentIds.map((studentId) => ({
            student: erasedDigest({ academyId: group.academyId, studentId }),
            ...{ day, reason },
          })),
        );
      },
    });
    return erased && { ...erased, erasureId, naming: known };
  } catch (error) {
    takeBack();
    throw error;
  }
}
