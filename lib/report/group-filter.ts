import type { Words } from "@/lib/words/catalogue";
import type { AcademyGroup, AcademyGroups } from "./academy-groups";
import type { Link } from "./basic-model";
import type { FieldModel } from "./form-model";

/** What a page that is cut to one group of an academy’s students says of it, and how another one is asked for. */
export interface GroupFilter {
  readonly action: string;
  /** What else the page was asked for. */
  readonly kept: readonly { readonly name: string; readonly value: string }[];
  readonly field: FieldModel;
  readonly submit: string;
  /** Of whom is counted. */
  readonly state: string;
  /** What has to be known of a group’s figures; empty: nothing. */
  readonly note: string;
  /** Which groups are left out, and why. */
  readonly privacy: string;
  /** Null: it is of everybody. */
  readonly all: Link | null;
}

/** The filter of the page under `action`; `kept` as the address says it. */
export function groupFilter(
  words: Words,
  given: {
    readonly action: string;
    readonly kept: GroupFilter["kept"];
    readonly groups: AcademyGroups;
    readonly group: AcademyGroup | null;
    readonly state: string;
    readonly note: string;
  },
): GroupFilter {
  const { action, kept, groups, group, state, note } = given;
  const query = new URLSearchParams(kept.map(({ name, value }) => [name, value])).toString();
  return {
    ...{ action, kept, state, note },
    field: {
      ...{ name: "of", label: words.say("academy.filter"), hint: "", kind: "select", value: group?.id ?? "" },
      options: [
        { value: "", label: words.say("academy.filter.all") },
        ...groups.told.map(({ id, label }) => ({ value: id, label })),
      ],
      ...{ required: "no", error: "" },
    },
    submit: words.say("academy.filter.submit"),
    privacy: words.say("academy.privacy", { hidden: groups.hidden }),
    all:
      group === null ? null : { href: query === "" ? action : `${action}?${query}`, label: words.say("academy.all") },
  };
}
