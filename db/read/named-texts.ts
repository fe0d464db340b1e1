import { isAliasIn } from "@/lib/domain/named-in";
import type { Database } from "../client";

/** What is written about others by hand, with whose it is. */
const TEXTS: readonly (readonly [table: string, column: string, whose: string])[] = [
  ["session", "note", "student_id"],
  ["event", "note", "student_id"],
  ["charge", "note", "student_id"],
  ["goal_band", "reason", "student_id"],
  ["record_change", "why", "student_id"],
];

/**
 * How many texts about other students name one of the aliases. They stay, since what was written about somebody else is
 * theirs; a person may look at them.
 */
export function readNamedTexts(
  db: Database,
  {
    academyId,
    studentIds,
    aliases,
  }: {
    readonly academyId: string;
    readonly studentIds: readonly string[];
    readonly aliases: readonly string[];
  },
): number {
  const given = { academyId, ids: JSON.stringify(studentIds) };
  return TEXTS.reduce((sum, [table, column, whose]) => {
    const found = db.sqlite
      .prepare<[typeof given], string>(
        `SELECT ${table}.${column} FROM ${table} JOIN student ON student.id = ${table}.${whose}
         WHERE student.academy_id = :academyId AND ${table}.${column} <> ''
           AND ${whose} NOT IN (SELECT value FROM json_each(:ids))`,
      )
      .pluck()
      .all(given);
    return sum + found.filter((text) => isAliasIn(text, aliases)).length;
  }, 0);
}
