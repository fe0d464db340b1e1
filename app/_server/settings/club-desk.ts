import { randomUUID } from "node:crypto";
import { readClubGrouping, readGroupClubs, readGroupUse, readRegroupings } from "@/db/read/club-groups";
import { insertRegrouping } from "@/db/write/club-groups";
import { currentGroups, requireGroup } from "@/lib/domain/club-grouping";
import { readClubWord } from "@/lib/domain/club-word";
import { CLUB_CHANGES } from "@/lib/domain/regroup-clubs";
import { parseClubForm } from "@/lib/ingest/parse-club-form";
import { buildClubsPage, type ClubsPage } from "@/lib/report/build-clubs";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import { linkTables } from "../archive/table-links";
import { currentInstant } from "../clock";
import type { AskedForm } from "../draft/draft-forms";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { sayFieldIssues } from "../draft/say-field-issues";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import { buildClubForm } from "./club-form";

const DRAFT = "club-form";

/** What the form of a change is asked for. */
export interface ClubWish extends AskedForm {
  readonly change?: string;
  readonly group?: string;
}

/** The page of the academy's club groups. */
export function loadClubsPage({ db, scope, words, academy }: Viewer): ClubsPage {
  const page = buildClubsPage(words, {
    grouping: readClubGrouping(db, scope),
    use: readGroupUse(db, scope),
    changes: readRegroupings(db, scope),
    sees: scope.students === "all" ? "everybody" : "some",
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
export function loadClubForm(viewer: Viewer, wish: ClubWish & { readonly draft: string }): FormModel | null {
  const { db, scope, words } = viewer;
  const draft = findFormDraft(viewer, DRAFT, wish.draft);
  const typed = new Map(draft?.entries);
  // What is kept knows its change: the way back to it says only its id.
  const change = CLUB_CHANGES.find((each) => each === (typed.get("change") ?? wish.change));
  if (change === undefined || viewer.academy.kind === "demo") return null;
  const grouping = readClubGrouping(db, scope);
  const group = typed.get("group") ?? wish.group ?? "";
  const clubs = readGroupClubs(db, scope, group);
  const own = grouping.some((each) => each.id === group) ? requireGroup(grouping, group).clubs : [];
  const isNamed = (club: string | null): boolean => {
    const named = club === null ? null : (readClubWord(club)?.club ?? null);
    return named !== null && own.includes(named);
  };
  const form = buildClubForm(words, {
    change,
    grouping,
    group,
    sessions: clubs.length,
    unnamed: clubs.filter((club) => !isNamed(club)).length,
    draft,
  });
  return form && withKeep(viewer, form, { form: DRAFT, studentId: "", draftId: wish.draft, dropped: wish.dropped });
}

/** What came of a change. */
type Changed = { readonly kind: "recorded" | "not-there" };

/**
 * Records a change of the club groups, once, and judges anew what it moved; a refused form is kept with what is wrong in it.
 */
export async function changeClubs(viewer: Viewer, data: FormData): Promise<Changed | Refused> {
  const outcome = submitOnce<Changed>(viewer, DRAFT, data, () => enterChange(viewer, data));
  if (outcome.kind === "recorded") await loadRules(viewer);
  return outcome;
}

function enterChange(viewer: Viewer, data: FormData): Changed | Refused {
  const { db, scope, words } = viewer;
  const change = CLUB_CHANGES.find((each) => each === data.get("change"));
  if (change === undefined || viewer.academy.kind === "demo") return { kind: "not-there" };
  const refuse = (errors: Readonly<Record<string, string>>, refusal: string): Refused => ({
    kind: "refused",
    draftId: keepFormDraft(viewer, DRAFT, data, errors, refusal),
  });
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
  return { kind: "recorded" };
}
