import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";
import { SMALL_GROUP } from "@/lib/domain/small-group";
import type { Comparison } from "@/lib/drills/comparison";
import type { Words } from "@/lib/words/catalogue";
import { type AcademyGroup, type AcademyGroups, academyGroups, type GroupsSource } from "./academy-groups";
import { type GroupFilter, groupFilter } from "./group-filter";

/** Who is compared, and what each of them was given. */
export interface ComparedGroupsSource extends Omit<GroupsSource, "clubs" | "clubsOf"> {
  /** Names of the drills that a student was given. */
  readonly drillsOf: (studentId: string) => readonly string[];
}

/** The groups by hand, age and coach of which a comparison may be asked. */
export interface ComparedGroups extends AcademyGroups {
  /** Drills of which a group's figures may be told beside everybody's; of each other one to four students would be known. */
  readonly drillsTold: (group: AcademyGroup) => ReadonlySet<string>;
}

/** Null: fewer than five students are compared. */
export function comparedGroups(words: Words, source: ComparedGroupsSource): ComparedGroups | null {
  const bare = { ...source, clubs: [], clubsOf: () => [] };
  const groups = academyGroups(words, bare);
  if (groups === null) return null;
  const drills = new Set(source.students.flatMap(({ id }) => source.drillsOf(id)));
  const drillsTold = ({ id }: AcademyGroup): ReadonlySet<string> =>
    new Set(
      [...drills].filter((drill) => {
        const had = source.students.filter((student) => source.drillsOf(student.id).includes(drill));
        return academyGroups(words, { ...bare, students: had })?.told.some((told) => told.id === id) ?? false;
      }),
    );
  return { ...groups, drillsTold };
}

/** What may be told of a group's comparison: no drill that is not told, and no caution that is about one to four students. */
export function tellComparison(comparison: Comparison, drillsTold: ReadonlySet<string>): Comparison {
  const isTold = ({ drill }: { readonly drill: string }): boolean => drillsTold.has(drill);
  return {
    ...comparison,
    drills: comparison.drills.filter(isTold),
    beforeAfter: comparison.beforeAfter.filter(isTold),
    sensitivity: comparison.sensitivity.filter(isTold),
    caveats: comparison.caveats.filter(({ count }) => count >= SMALL_GROUP),
  };
}

/** Of whom the comparison tells and the way to others; null: too few are compared to make groups of them. */
export function comparedFilter(
  words: Words,
  source: {
    readonly fundamental: Pick<Fundamental, "id">;
    readonly clubGroup: ClubGroup | null;
    readonly groups: ComparedGroups | null;
    readonly group: AcademyGroup | null;
    readonly measured: number;
    readonly hiddenDrills: number;
  },
): GroupFilter | null {
  const { fundamental, clubGroup, groups, group, measured, hiddenDrills } = source;
  if (groups === null) return null;
  const club = clubGroup === null ? [] : [{ name: "club", value: clubGroup }];
  return groupFilter(words, {
    ...{ action: "/drills", kept: [{ name: "for", value: fundamental.id }, ...club], groups, group },
    state: words.say("compared.state", {
      ...{ students: measured, group: group === null ? "all" : "some", name: group?.label ?? "" },
    }),
    note: group === null ? "" : words.say("compared.note", { groups: groups.told.length, hidden: hiddenDrills }),
  });
}
