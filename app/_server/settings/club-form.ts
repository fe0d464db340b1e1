import { CLUB_KINDS, clubKindOf } from "@/lib/domain/club-group";
import { type ClubGrouping, currentGroups } from "@/lib/domain/club-grouping";
import type { ClubChange } from "@/lib/domain/regroup-clubs";
import { ARRANGED_ROWS } from "@/lib/ingest/parse-club-form";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { sayClub, sayClubs, sayGroupOfClubs } from "@/lib/words/say-club";
import type { FormDraft } from "../draft/form-draft";
import { field } from "../season/student-form";

/** What a form that changes club groups is built from. */
export interface ClubFormSource {
  readonly change: ClubChange;
  readonly grouping: ClubGrouping;
  /** The group to change; empty: the change is not about one. */
  readonly group: string;
  /** Sessions of that group, and those among them that name none of its clubs. */
  readonly sessions: number;
  readonly unnamed: number;
  readonly draft: FormDraft | null;
}

type Part = FormModel["parts"][number];

/** The form of one change; null: there is no such group to change. */
export function buildClubForm(words: Words, source: ClubFormSource): FormModel | null {
  const { change, draft, grouping } = source;
  const group = currentGroups(grouping).find((each) => each.id === source.group);
  if (!group && (change === "split" || change === "rename")) return null;
  const name = group ? sayGroupOfClubs(words, group) : "";
  return {
    heading: words.say(`club-form.${change}.heading`, { name }),
    explains: words.say(`club-form.${change}.explains`, { name, sessions: source.sessions }),
    parts: partsOf(words, source),
    grid: null,
    submit: words.say(`club-form.${change}.submit`),
    refusal: draft?.refusal ?? "",
    hidden: [{ name: "change", value: change }, ...(group ? [{ name: "group", value: group.id }] : [])],
  };
}

function partsOf(words: Words, source: ClubFormSource): readonly Part[] {
  const { draft, grouping, change } = source;
  const one = (spec: Parameters<typeof field>[3]): FieldModel => field(words, draft, "club-form", spec);
  const part = (name: string, fields: readonly FieldModel[], args = {}): Part => ({
    margin: words.say(`club-form.part.${name}`, args),
    explains: words.say(`club-form.part.${name}.explains`, args),
    fields,
  });
  const why = part("why", [one({ name: "why", kind: "text", required: "yes" })]);
  const groups = currentGroups(grouping).map((each) => ({ value: each.id, label: sayGroupOfClubs(words, each) }));
  const sides = (name: string) =>
    ["first", "second"].map((side) => ({ value: side, label: words.say(`club-form.${name}.${side}`) }));
  switch (change) {
    case "arrange":
      return arrangeParts(words, source, part);
    case "split": {
      const clubs = grouping.find((each) => each.id === source.group)?.clubs ?? [];
      const options = clubs.map((club) => ({ value: club, label: sayClub(words, club) }));
      return [
        part("second", [
          one({ name: "secondName", kind: "text", required: "yes" }),
          one({ name: "secondClubs", kind: "checkbox", required: "yes", options }),
        ]),
        part("first", [
          one({ name: "firstName", kind: "text", required: "yes" }),
          one({
            name: "rest",
            kind: "radio",
            required: "yes",
            value: "first",
            options: sides("rest"),
            hint: words.say("club-form.rest.hint", { unnamed: source.unnamed }),
          }),
        ]),
        why,
      ];
    }
    case "merge":
      return [
        part("merge", [
          one({ name: "first", kind: "select", required: "yes", options: groups }),
          one({ name: "second", kind: "select", required: "yes", options: groups, value: groups[1]?.value ?? "" }),
          one({ name: "name", kind: "text", required: "yes" }),
          one({ name: "goalsOf", kind: "radio", required: "yes", value: "first", options: sides("goalsOf") }),
        ]),
        why,
      ];
    case "rename":
      return [part("rename", [one({ name: "name", kind: "text", required: "yes" })])];
  }
}

function arrangeParts(
  words: Words,
  { draft, grouping }: ClubFormSource,
  part: (name: string, fields: readonly FieldModel[], args?: { readonly number: number }) => Part,
): readonly Part[] {
  const groups = currentGroups(grouping);
  const kinds = CLUB_KINDS.map((kind) => ({ value: kind, label: words.say(`club.${kind}`) }));
  return Array.from({ length: ARRANGED_ROWS }, (_, row) => {
    const group = groups[row];
    const number = row + 1;
    const one = (name: string, spec: Pick<FieldModel, "kind"> & Partial<FieldModel>): FieldModel =>
      field(words, draft, "club-form", {
        name: `${name}.${number}`,
        label: words.say(`club-form.arrange.${name}`),
        ...spec,
      });
    return part(
      "arrange",
      [
        one("name", { kind: "text", value: group?.name ?? "" }),
        one("clubs", { kind: "text", value: group ? sayClubs(words, group.clubs) : "" }),
        one("goals", { kind: "select", options: kinds, value: group ? clubKindOf(group.id) : "iron" }),
      ],
      { number },
    );
  });
}
