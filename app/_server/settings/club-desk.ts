import { randomUUID } from "node:crypto";
import { readClubGrouping, readGroupClubs, readGroupUse, readRegroupings } from "@/db/read/club-groups";
import { insertRegrouping } from "@/db/write/club-groups";
import { currentGroups, requireGroup } from "@/lib/domain/club-grouping";
import { readClubWord } from "@/lib/domain/club-word";
import { CLUB_CHANGES, type ClubChange } from "@/lib/domain/regroup-clubs";
import { parseClubForm } from "@/lib/ingest/parse-club-form";
import { buildClubsPage, type ClubsPage } from "@/lib/report/build-clubs";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import { linkTables } from "../archive/table-links";
import { currentInstant } from "../clock";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import type { Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { buildClubForm } from "./club-form";

const DRAFT = "club-form";

/** What the form of a change is asked for. */
export interface ClubWish {
  readonly change?: string;
  readonly group?: string;
  readonly draft?: string;
}

/** The page of the academy's club groups. */
export function loadClubsPage({ db, scope, words, academy }: Viewer): ClubsPage {
  const page = buildClubsPage(words, {
    grouping: readClubGrouping(db, scope),
    use: readGroupUse(db, scope),
    changes: readRegroupings(db, scope),
    kind: academy.kind,
  });
  return linkTables(words, "clubs", {}, page);
}

/** The way from the settings to the club groups. */
export function loadClubsDoor({ db, scope, words }: Viewer): TextPage["parts"][number] {
  const groups = currentGroups(readClubGrouping(db, scope)).map((group) => sayGroupOfClubs(words, group));
  return {
    margin: words.say("settings.clubs"),
    heading: groups.join(", "),
    paragraphs: [words.say("settings.clubs.text")],
    links: [{ href: "/settings/clubs", label: words.say("settings.clubs.open") }],
  };
}

/** The form of one change; null: that change or group isn't there, or not to be changed. */
export function loadClubForm(viewer: Viewer, wish: ClubWish): FormModel | null {
  const { db, scope, words } = viewer;
  const change = CLUB_CHANGES.find((each) => each === wish.change);
  if (change === undefined || viewer.academy.kind === "demo") return null;
  const grouping = readClubGrouping(db, scope);
  const draft = findFormDraft(viewer, DRAFT, wish.draft);
  const group = wish.group ?? draft?.entries.find(([name]) => name === "group")?.[1] ?? "";
  const clubs = readGroupClubs(db, scope, group);
  const own = grouping.some((each) => each.id === group) ? requireGroup(grouping, group).clubs : [];
  const isNamed = (club: string | null): boolean => {
    const named = club === null ? null : (readClubWord(club)?.club ?? null);
    return named !== null && own.includes(named);
  };
  return buildClubForm(words, {
    change,
    grouping,
    group,
    sessions: clubs.length,
    unnamed: clubs.filter((club) => !isNamed(club)).length,
    draft,
    draftId: draft ? wish.draft : undefined,
  });
}

/** Records a change of the club groups and judges anew what it moved; a refused form is kept with what is wrong in it. */
export async function changeClubs(
  viewer: Viewer,
  data: FormData,
): Promise<
  | { readonly kind: "recorded" | "not-there" }
  | { readonly kind: "refused"; readonly change: ClubChange; readonly group: string; readonly draftId: string }
> {
  const { db, scope, words } = viewer;
  const change = CLUB_CHANGES.find((each) => each === data.get("change"));
  if (change === undefined || viewer.academy.kind === "demo") return { kind: "not-there" };
  const group = String(data.get("group") ?? "");
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string) =>
    ({ kind: "refused", change, group, draftId: keepFormDraft(viewer, DRAFT, data, errors, refusal) }) as const;
  const parsed = parseClubForm(data, { change, grouping: readClubGrouping(db, scope) });
  if (parsed.kind === "issues") {
    const errors = sayFieldIssues(words, parsed.issues);
    return refuse(errors, words.say("club-form.refusal", { problems: Object.keys(errors).length }));
  }
  const recorded = insertRegrouping(
    db,
    scope,
    { kind: change, ...parsed.value, day: viewer.today, who: viewer.name },
    { now: currentInstant(), newId: randomUUID },
  );
  if (recorded.kind === "in-use") return refuse({}, words.say("club-form.in-use", { sessions: recorded.sessions }));
  await loadRules(viewer);
  return { kind: "recorded" };
}
