import type { BriefSource } from "./brief-source";

/**
 * Students whose work is stopped, by id: it hurts, as far as the viewer may know it, or a pause is on. Nobody asks them for
 * films, nor for anything that takes one.
 */
export function stopped({ students }: Pick<BriefSource, "students">): ReadonlySet<string> {
  const held = students.filter(({ work }) => (work?.stop ?? null) !== null);
  return new Set(held.map(({ student }) => student.id));
}
