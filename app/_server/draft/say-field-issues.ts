import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { FieldIssue } from "@/lib/ingest/field-issue";
import type { Words } from "@/lib/words/catalogue";
import { sayGroupOfClubs } from "@/lib/words/say-club";

/** What is wrong with each field, and what to do; a club group among the arguments is said by its name. */
export function sayFieldIssues(
  words: Words,
  issues: readonly FieldIssue[],
  grouping: ClubGrouping = [],
): Readonly<Record<string, string>> {
  const said: Record<string, string> = {};
  for (const issue of issues) {
    const key = `form.issue.${issue.code}`;
    const group = grouping.find((each) => each.id === issue.args.group);
    const args = group ? { ...issue.args, group: sayGroupOfClubs(words, group) } : issue.args;
    said[issue.field] ??= words.has(key) ? words.say(key, args) : words.say("form.unexpected");
  }
  return said;
}
