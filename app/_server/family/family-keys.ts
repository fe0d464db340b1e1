import type { FamilyViewer } from "../family-gate";
import type { StudentViewer } from "../gate";

/** Words with which the keys begin of what is held in memory about a family; each key bears the student's id. */
export const FAMILY_KEYS = ["family", "family-link"] as const;

const [TYPED, LINK] = FAMILY_KEYS;

/** Under which what was typed waits to be shown again, in memory, to the one link that sent it. */
export function typedKey({ link, student }: FamilyViewer): string {
  return `${TYPED} ${student.studentId} ${link.id}`;
}

/** Under which a link just made waits for whoever made it. */
export function heldLinkKey({ userId, student }: StudentViewer, id: string): string {
  return `${LINK} ${userId} ${student.studentId} ${id}`;
}
