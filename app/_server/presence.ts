import { admitOwner, admitToStudent } from "./gate";
import type { ViewerWish } from "./viewer";

const STUDENT_PAGE = /^\/students\/([^/]+)/;
// Pages beside the students' own.
const NO_STUDENT = new Set(["new"]);

function decoded(segment: string): string | null {
  try {
    return decodeURIComponent(segment);
  } catch {
    return null;
  }
}

/**
 * Whether an address names a student whom the viewer can't be shown. Asked at the door, because a page that finds
 * nothing only while it is made answers with an empty body, which says nothing to a browser without scripts. The
 * gate asks again: this is no protection.
 */
export async function namesNobody(pathname: string, wish: ViewerWish): Promise<boolean> {
  const segment = STUDENT_PAGE.exec(pathname)?.[1];
  if (segment === undefined || NO_STUDENT.has(segment)) return false;
  const viewer = await admitOwner(wish);
  const studentId = decoded(segment);
  return viewer !== null && (studentId === null || admitToStudent(viewer, studentId) === null);
}
