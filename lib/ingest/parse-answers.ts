import type { ImportAnswer, ImportAnswers } from "./import-preview";

/**
 * Answers as a form sends them: `answer:<question id>` holds the option, `answer-<field>:<question id>` what was typed
 * beside it. Everything else is passed over.
 */
export function parseAnswers(entries: Iterable<readonly [string, string]>): ImportAnswers {
  const options = new Map<string, string>();
  const fields = new Map<string, Map<string, string>>();
  for (const [name, value] of entries) {
    const match = /^answer(?:-([a-zA-Z]{1,40}))?:(.{1,1000})$/s.exec(name);
    const id = match?.[2];
    if (id === undefined) continue;
    const field = match?.[1];
    if (field === undefined) {
      if (value !== "") options.set(id, value);
      continue;
    }
    const kept = fields.get(id) ?? new Map<string, string>();
    kept.set(field, value.slice(0, 500));
    fields.set(id, kept);
  }
  const answers = new Map<string, ImportAnswer>();
  for (const [id, option] of options) answers.set(id, { option, fields: fields.get(id) ?? new Map() });
  return answers;
}
