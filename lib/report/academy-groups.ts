import { AGE_GROUPS, ageGroupOf } from "@/lib/domain/age-group";
import { HANDS } from "@/lib/domain/handedness";
import type { RosterView } from "@/lib/domain/roster-view";
import type { Student } from "@/lib/domain/student";
import { type CountedGroup, type CountedPart, toldGroups } from "@/lib/domain/told-groups";
import type { Words } from "@/lib/words/catalogue";

/** What groups of an academy are made of. */
export interface GroupsSource {
  readonly students: readonly Pick<Student, "id" | "birthYear" | "hand">[];
  /** Which clubs a student has a film or a track with; of nobody missing. */
  readonly clubsOf: (studentId: string) => readonly string[];
  /** By id and name, in the order in which they are offered. */
  readonly clubs: readonly { readonly value: string; readonly label: string }[];
  readonly coaches: readonly { readonly value: string; readonly label: string }[];
  /** Ids of the coaches in charge. */
  readonly coachesOf: (studentId: string) => readonly string[];
  readonly today: string;
}

/** A group that may be asked for. */
export interface AcademyGroup {
  /** As the address says it: `age-9-12`. */
  readonly id: string;
  readonly label: string;
  readonly studentIds: ReadonlySet<string>;
  /** The clubs that are counted; null: all. */
  readonly club: string | null;
  /** How the roster is cut to the same students. */
  readonly view: Partial<RosterView>;
}

/** The groups of an academy that may be counted. */
export interface AcademyGroups {
  readonly told: readonly AcademyGroup[];
  /** How many there are that are not told. */
  readonly hidden: number;
}

/** A student's films with one group of clubs; who has none stands for themselves. */
function partsOf({ clubsOf }: GroupsSource, studentIds: Iterable<string>, club: string | null): readonly CountedPart[] {
  return [...studentIds].flatMap((studentId) => {
    const clubs = clubsOf(studentId);
    const keys = clubs.length === 0 ? [""] : clubs;
    return keys.flatMap((key) => (club === null || key === club ? [{ key: `${studentId} ${key}`, studentId }] : []));
  });
}

function groupsOf(words: Words, source: GroupsSource): readonly (readonly AcademyGroup[])[] {
  const { students, today } = source;
  const group = (
    id: string,
    label: string,
    view: Partial<RosterView>,
    has: (student: (typeof students)[number]) => boolean,
  ) => ({
    ...{ id, view, club: view.club ?? null },
    label: words.say(`academy.group.${id.split("-")[0]}`, { name: label }),
    studentIds: new Set(students.filter(has).map((each) => each.id)),
  });
  const kinds = [
    HANDS.map((hand) =>
      group(`hand-${hand}`, words.say(`roster.hand.${hand}`), { hand }, (each) => each.hand === hand),
    ),
    AGE_GROUPS.map((age) =>
      group(`age-${age}`, words.say(`age-group.${age}`), { age }, (each) => ageGroupOf(each.birthYear, today) === age),
    ),
    source.clubs.map(({ value, label }) =>
      group(`club-${value}`, label, { club: value }, ({ id }) => source.clubsOf(id).includes(value)),
    ),
    source.coaches.map(({ value, label }) =>
      group(`coach-${value}`, label, { coach: value }, ({ id }) => source.coachesOf(id).includes(value)),
    ),
  ];
  return kinds.map((kind) => kind.filter(({ studentIds }) => studentIds.size > 0));
}

/**
 * The groups of an academy by hand, age, clubs and coach that may be counted beside everybody; null: fewer than five are here.
 * Two filters at once are not offered: what two groups have in common is soon one to four students.
 */
export function academyGroups(words: Words, source: GroupsSource): AcademyGroups | null {
  const kinds = groupsOf(words, source);
  const whole = partsOf(
    source,
    source.students.map(({ id }) => id),
    null,
  );
  const counted = kinds.map((kind) =>
    kind.map(({ id, studentIds, club }): CountedGroup => ({ id, parts: partsOf(source, studentIds, club) })),
  );
  const ids = toldGroups(whole, counted);
  if (ids === null) return null;
  const all = kinds.flat();
  const told = all.filter(({ id }) => ids.has(id));
  return { told, hidden: all.length - told.length };
}
