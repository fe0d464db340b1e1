import { is } from "drizzle-orm";
import { getTableConfig, SQLiteTable } from "drizzle-orm/sqlite-core";
import * as base from "@/db/schema";
import * as entry from "@/db/schema-entry";
import * as people from "@/db/schema-people";
import * as plans from "@/db/schema-plans";
import * as privacy from "@/db/schema-privacy";
import * as rereads from "@/db/schema-rereads";
import * as work from "@/db/schema-work";

/*
 * A4: every column of text of every table, and who may be shown what stands in it. A column that stands in neither list fails
 * planted-columns.test.ts, so that no new text goes unlooked at.
 */

/**
 * Cells of TRUST.md's table. `name`: also told to whoever enters values for the student. `record`: the coach in charge and
 * directors. `pain`: the coach in charge alone. `person`: the owner and directors, and whose it is. `import`: whoever brought
 * it, and directors. `author`: who typed it. `nobody`: no page at all.
 */
export type Cell = "name" | "record" | "pain" | "person" | "import" | "author" | "nobody";

/** Texts of somebody's data; a word is planted in each. */
export const PRIVATE: Readonly<Record<string, Cell>> = {
  "student.alias": "name",
  "student.clubs": "name",
  "session.club": "record",
  "session.reader": "record",
  "session.aid": "record",
  "session.marks": "record",
  "session.note": "record",
  "session.set_aside_reason": "record",
  "capture.placement_label": "record",
  "capture.placed_by": "record",
  "capture.set_aside_reason": "record",
  "capture.film_reference": "record",
  "swing.note": "record",
  "reading.typed": "record",
  "correction.typed": "record",
  "correction.who": "record",
  "correction.why": "record",
  "asking.who": "record",
  "drill_assignment.dose": "record",
  "drill_assignment.who": "record",
  "drill_assignment.stop_rule": "record",
  "drill_decision.why": "record",
  "drill_decision.who": "record",
  "priority_choice.reason": "record",
  "priority_choice.who": "record",
  "film_plan.who": "record",
  "told.text": "record",
  "told.who": "record",
  "waiting.who": "record",
  "fair_allocation.who": "record",
  "drill_assignment.end_why": "record",
  "event.note": "record",
  "event.who": "record",
  "event.place": "pain",
  "rebaseline_change.who": "record",
  "rebaseline_change.why": "pain",
  "practice.who": "record",
  "practice.pain": "pain",
  "goal_band.reason": "record",
  "goal_band.who": "record",
  "read_back.reader": "record",
  "read_back.who": "record",
  "read_back_item.film_reference": "record",
  "read_back_item.typed": "record",
  "record_change.before": "record",
  "record_change.after": "record",
  "record_change.who": "record",
  "record_change.why": "record",
  "consent.given_by": "record",
  "consent.withdrawn_by": "record",
  "charge.note": "record",
  "charge.who": "record",
  "family_link.label": "record",
  "family_link.who": "record",
  "family_link.renewed_by": "record",
  "family_link.revoked_by": "record",
  "family_request.settled_by": "record",
  "family_request.answer": "record",
  "record_view.place": "record",
  "record_view.who": "record",
  "retention_notice.held_by": "record",
  "retention_notice.why": "record",
  "carried_look.said_by": "record",
  "reread_item.film_reference": "record",
  "import_batch.file_name": "import",
  "import_source.file_name": "import",
  "draft.body": "author",
  "access_token.name": "author",
  "access_token.who": "author",
  "user.email": "person",
  "invitation.name": "person",
  "invitation.email": "person",
  "invitation.who": "person",
  "erasure.who": "person",
  "form_receipt.outcome": "nobody",
  "account.password": "nobody",
  "account.access_token": "nobody",
  "account.refresh_token": "nobody",
  "account.id_token": "nobody",
  "two_factor.secret": "nobody",
  "two_factor.backup_codes": "nobody",
  "verification.identifier": "nobody",
  "verification.value": "nobody",
  "sign_in_try.key": "nobody",
};

const ACADEMY = "the academy's own words, about nobody";
const LISTED = "a word of a list, an id or several of them";
const DERIVED = "computed from the rest, and read by the rest's proof";
const STAFF = "a colleague's name, on the same row as a word that is planted";

/** Texts that are nobody's data, each with the reason. */
export const PLAIN: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    [
      ...["academy.name", "academy.owner_name", "academy.zone", "academy.locale", "academy.fixed_today"],
      ...["academy.season_start", "club_regrouping.who", "club_regrouping.why", "club_regrouping.grouping"],
      ...[
        "drill.name",
        "drill.how",
        "drill.cautions",
        "drill.dose",
        "drill.earlier",
        "own_fundamental.definition",
        "note_coding.coding",
      ],
      ...["noise_model.pool", "noise_model.name", "noise_model.learned_up_to", "noise_model.body"],
      ...["owning_rule.who", "owning_rule.why", "fair_test.who", "fair_test.seed", "fair_step.figures"],
      ...["fair_step.why", "fair_step.who"],
      ...["import_source.fingerprint", "import_source.answers", "reader_error_fit.version"],
    ].map((name) => [name, ACADEMY]),
  ),
  "note_coding.phrase":
    "a phrase of the academy; one of a single note is hidden with its session (db/read/visible.test.ts)",
  "note_coding.who": ACADEMY,
  ...Object.fromEntries(
    [
      ...[
        "student.zone",
        "student.language",
        "student.merged_into",
        "session.club_group",
        "session.said_club_group",
        "reading.unit",
      ],
      ...["asking.club_group", "asking.plan", "club_regrouping.from_groups", "club_regrouping.to_groups"],
      ...["event.rebaselines", "goal_band.club_group", "look_noise.club_group", "look_noise.noise_model_name"],
      ...["rebaseline_change.before", "rebaseline_change.after", "draft.kind", "form_receipt.key", "form_receipt.kind"],
      ...["preference.name", "preference.value", "preference.viewer", "seen.viewer", "invitation.roles"],
      ...["invitation.assists", "carried_look.club_group", "carried_look.noise_model_name", "reread_draw.same_as"],
      ...["priority_choice.club_group", "film_plan.club_group", "film_plan.body"],
      ...["told.club_group", "told.findings", "fair_allocation.club_group"],
      ...["drill_decision.remeasure_was"],
      ...["carried_look.policy_version", "account.scope"],
    ].map((name) => [name, LISTED]),
  ),
  ...Object.fromEntries(
    [
      ...[
        "analysis.club_group",
        "analysis.as_of",
        "analysis.policy_version",
        "analysis.noise_model",
        "analysis.summary",
      ],
      ...["analysis.body", "roster_list.as_of", "roster_list.policy_version", "roster_list.input_digest"],
      ...["roster_list.body", "seen.as_of", "seen.body", "carried_look.body"],
    ].map((name) => [name, DERIVED]),
  ),
  ...Object.fromEntries(
    [
      ...["record_change.undone_by", "charge.ended_by", "import_batch.undone_by", "person.added_by", "person.ended_by"],
      ...["reread_draw.reader", "reread_draw.who", "user.name"],
    ].map((name) => [name, STAFF]),
  ),
  "reading.reader": "the reader of its session, whose word is planted there",
  "import_batch.answers": "read by whoever may read the row's file name",
  "user.image": "never written",
  "auth_session.token": "signed in a cookie; a log-in that anybody could read would be theirs (log-in.spec.ts)",
  "auth_session.ip_address": "never written",
  "auth_session.user_agent": "a browser's own words, on its owner's account page",
};

/** Names by which a column holds an id, a day, an instant or a digest. */
const STRUCTURAL = /^(id|day|from_day|until_day|due_day)$|_(id|at|on|day|hash)$/;

/** Every column of text that isn't a choice of few words, an id, a day or an instant: "table.column". */
export function textColumns(): readonly string[] {
  const found = new Set<string>();
  for (const room of [base, entry, people, plans, privacy, rereads, work])
    for (const table of Object.values(room)) {
      if (!is(table, SQLiteTable)) continue;
      const { name, columns } = getTableConfig(table);
      for (const column of columns) {
        const isFree = column.columnType === "SQLiteText" && (column.enumValues ?? []).length === 0;
        if (isFree && !STRUCTURAL.test(column.name)) found.add(`${name}.${column.name}`);
      }
    }
  return [...found].sort();
}
