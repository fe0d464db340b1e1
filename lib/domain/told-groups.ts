import { SMALL_GROUP } from "./small-group";

/** Something that counts rest on, of one student: their films with one group of clubs. */
export interface CountedPart {
  readonly key: string;
  readonly studentId: string;
}

/** A group of students, or of some of their clubs, of which counts may be asked. */
export interface CountedGroup {
  readonly id: string;
  readonly parts: readonly CountedPart[];
}

/** Cells that no told group parts from one another: how each told group counts them, and whose they are. */
interface Cells {
  readonly rows: number[][];
  readonly students: readonly ReadonlySet<string>[];
}

/** Two numbers nearer than this are one: entries are built from zeros and ones. No unit. */
const NEAR = 1e-9;

function cellsOf(groups: readonly CountedGroup[], keyOf: (part: CountedPart) => string): Cells {
  const marks = new Map<string, { readonly of: boolean[]; readonly studentId: string }>();
  for (const [at, { parts }] of groups.entries())
    for (const part of parts) {
      const mark = marks.get(keyOf(part)) ?? { of: groups.map(() => false), studentId: part.studentId };
      mark.of[at] = true;
      marks.set(keyOf(part), mark);
    }
  const cells = new Map<string, { readonly of: readonly boolean[]; readonly students: Set<string> }>();
  for (const { of, studentId } of marks.values()) {
    const name = of.map(Number).join("");
    const cell = cells.get(name) ?? { of, students: new Set<string>() };
    cell.students.add(studentId);
    cells.set(name, cell);
  }
  // The largest first: they become pivots, and whatever has five students needs no trying.
  const sorted = [...cells.values()].sort((a, b) => b.students.size - a.students.size);
  return {
    rows: groups.map((_, at) => sorted.map(({ of }) => (of[at] ? 1 : 0))),
    students: sorted.map(({ students }) => students),
  };
}

/** Each row with a pivot of its own, by Gauss and Jordan; rows that follow from others go. */
function reduce(rows: number[][]): { readonly row: readonly number[]; readonly pivot: number }[] {
  const left = rows.map((row) => [...row]);
  const done: { row: number[]; pivot: number }[] = [];
  for (let pivot = 0; pivot < (rows[0]?.length ?? 0); pivot++) {
    left.sort((a, b) => Math.abs(b[pivot] ?? 0) - Math.abs(a[pivot] ?? 0));
    const by = left[0]?.[pivot] ?? 0;
    if (Math.abs(by) < NEAR) continue;
    const row = (left.shift() ?? []).map((value) => value / by);
    for (const other of [...left, ...done.map((each) => each.row)]) {
      const times = other[pivot] ?? 0;
      for (const [at, value] of row.entries()) other[at] = (other[at] ?? 0) - times * value;
    }
    done.push({ row, pivot });
  }
  return done;
}

/** Whether some cells of one to four students come out as a sum of told groups, each taken any number of times. */
function givesAway({ rows, students }: Cells): "yes" | "no" {
  const reduced = reduce(rows);
  const size = students.length;
  const tell = (sum: readonly number[]): "yes" | "no" => {
    const found = new Set<string>();
    for (const [at, value] of sum.entries()) {
      if (Math.abs(value) < NEAR) continue;
      if (Math.abs(value - 1) > NEAR) return "no";
      for (const id of students[at] ?? []) found.add(id);
      if (found.size >= SMALL_GROUP) return "no";
    }
    return found.size > 0 ? "yes" : "no";
  };
  // In a sum of zeros and ones every pivot is a zero or a one, which is how often its row is taken.
  const search = (from: number, sum: readonly number[], whose: ReadonlySet<string>): "yes" | "no" => {
    if (whose.size > 0 && tell(sum) === "yes") return "yes";
    for (let at = from; at < reduced.length; at++) {
      const { row, pivot } = reduced[at] ?? { row: [], pivot: 0 };
      const both = new Set([...whose, ...(students[pivot] ?? [])]);
      if (both.size >= SMALL_GROUP) continue;
      const next = sum.map((value, place) => value + (row[place] ?? 0));
      if (search(at + 1, next, both) === "yes") return "yes";
    }
    return "no";
  };
  return search(0, Array<number>(size).fill(0), new Set());
}

const studentsIn = ({ parts }: CountedGroup): number => new Set(parts.map(({ studentId }) => studentId)).size;

/**
 * The groups of which counts may be told beside those of everybody, so that nobody learns the count of one to four students:
 * neither by reading it nor by adding and subtracting what is told, groups of different kinds too. Where a group is too small,
 * the smallest of its kind that is large enough goes as well.
 *
 * @param whole everybody; of fewer than five nothing is told
 * @param kinds groups of one kind each, in the order in which kinds give way to one another; groups may overlap
 * @returns ids of what is told, in the order asked for; null: not even everybody together
 */
export function toldGroups(
  whole: readonly CountedPart[],
  kinds: readonly (readonly CountedGroup[])[],
): ReadonlySet<string> | null {
  const everybody = { id: "", parts: whole };
  if (studentsIn(everybody) < SMALL_GROUP) return null;
  const told: CountedGroup[] = [everybody];
  for (const kind of kinds)
    for (const group of kind.toSorted((a, b) => studentsIn(b) - studentsIn(a))) {
      if (studentsIn(group) < SMALL_GROUP) continue;
      const tried = [...told, group];
      // Counts of films add up by parts, counts of students by students.
      const gives = [(part: CountedPart) => part.key, (part: CountedPart) => part.studentId].some(
        (keyOf) => givesAway(cellsOf(tried, keyOf)) === "yes",
      );
      if (!gives) told.push(group);
    }
  const ids = new Set(told.map(({ id }) => id));
  return new Set(kinds.flat().flatMap(({ id }) => (ids.has(id) ? [id] : [])));
}
