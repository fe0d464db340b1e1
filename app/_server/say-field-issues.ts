import type { FieldIssue } from "@/lib/ingest/field-issue";
import type { Words } from "@/lib/words/catalogue";

/** What is wrong with each field, and what to do. */
export function sayFieldIssues(words: Words, issues: readonly FieldIssue[]): Readonly<Record<string, string>> {
  const said: Record<string, string> = {};
  for (const issue of issues) {
    const key = `form.issue.${issue.code}`;
    said[issue.field] ??= words.has(key) ? words.say(key, issue.args) : words.say("form.unexpected");
  }
  return said;
}
