import { type ArrangedGroup, arrangeGroups } from "@/lib/domain/arrange-clubs";
import { type Club, clubsOfKind } from "@/lib/domain/club";
import { CLUB_KINDS } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import { readClubWord } from "@/lib/domain/club-word";
import { type ClubChange, mergeGroups, type Regrouping, renameGroup, splitGroup } from "@/lib/domain/regroup-clubs";
import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, choice, collectIssues, freeText, neededText, ticked } from "./form-fields";

/** Rows that the list of all groups offers: as many as there are kinds, and as many again to fill in. */
export const ARRANGED_ROWS = 2 * CLUB_KINDS.length;

/** A change of the club groups as a form asks for it. */
export interface EnteredRegrouping {
  readonly change: Extract<Regrouping, { readonly kind: "ok" }>;
  readonly why: string;
}

const NAME_LENGTH = 40;
const WHY_LENGTH = 300;
const PARTS = ["first", "second"] as const;
const WEDGES: readonly Club[] = ["lw", "sw", "gw", "pw"];

/** Clubs as a list of words; a word for a kind stands for all of its clubs. */
function readClubList(text: string, field: string, add: Collect): readonly Club[] {
  const words = text.split(/[,;\n]+/).filter((word) => word.trim() !== "");
  return words.flatMap((word): readonly Club[] => {
    const read = readClubWord(word);
    if (read === null) {
      add(field, "unknown-club", { value: word.trim().slice(0, NAME_LENGTH) });
      return [];
    }
    if (read.club !== null) return [read.club];
    return /wedge/i.test(word) ? WEDGES : clubsOfKind(read.kind);
  });
}

function readArranged(data: FormData, add: Collect): readonly ArrangedGroup[] {
  return Array.from({ length: ARRANGED_ROWS }, (_, row) => String(row + 1)).flatMap((field): ArrangedGroup[] => {
    const name = freeText(data, `name.${field}`, NAME_LENGTH, add) ?? "";
    const clubs = readClubList(fieldText(data, `clubs.${field}`), `clubs.${field}`, add);
    const kind = choice(data, `goals.${field}`, CLUB_KINDS, "iron", add);
    return name === "" && clubs.length === 0 ? [] : [{ field, name, clubs, kind }];
  });
}

function regroup(change: ClubChange, data: FormData, grouping: ClubGrouping, add: Collect): Regrouping {
  const group = fieldText(data, "group");
  switch (change) {
    case "arrange":
      return arrangeGroups(grouping, readArranged(data, add));
    case "split": {
      const clubs = currentGroups(grouping).find((each) => each.id === group)?.clubs ?? [];
      return splitGroup(grouping, {
        group,
        firstName: freeText(data, "firstName", NAME_LENGTH, add) ?? "",
        secondName: freeText(data, "secondName", NAME_LENGTH, add) ?? "",
        secondClubs: ticked(data, "secondClubs", clubs, add),
        rest: choice(data, "rest", PARTS, "first", add),
      });
    }
    case "merge":
      return mergeGroups(grouping, {
        first: fieldText(data, "first"),
        second: fieldText(data, "second"),
        name: freeText(data, "name", NAME_LENGTH, add) ?? "",
        goalsOf: choice(data, "goalsOf", PARTS, "first", add),
      });
    case "rename":
      return renameGroup(grouping, { group, name: freeText(data, "name", NAME_LENGTH, add) ?? "" });
  }
}

/**
 * A form that changes club groups. A split or merge needs its reason, since sessions on file change their group with it.
 */
export function parseClubForm(
  data: FormData,
  { change, grouping }: { readonly change: ClubChange; readonly grouping: ClubGrouping },
): FormOutcome<EnteredRegrouping> {
  const { issues, add } = collectIssues();
  const made = regroup(change, data, grouping, add);
  const needsWhy = change === "split" || change === "merge";
  const why = needsWhy ? neededText(data, "why", WHY_LENGTH, add) : "";
  if (made.kind === "issues")
    for (const { field, code, clubs } of made.issues) add(field, `regroup-${code}`, { clubs: clubs.join(", ") });
  if (issues.length > 0 || made.kind !== "ok") return { kind: "issues", issues };
  return { kind: "ok", value: { change: made, why } };
}
