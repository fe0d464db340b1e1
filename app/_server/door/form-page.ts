import type { FieldModel, FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { barePage, escapeText } from "./refusal-page";

const TYPES: Readonly<Record<string, string>> = {
  email: "email",
  password: "password",
  "new-password": "password",
};
const FILLED_BY: Readonly<Record<string, string>> = {
  email: "username",
  password: "current-password",
  "new-password": "new-password",
  code: "one-time-code",
};

function fieldOf(field: FieldModel): string {
  const [name, label, hint, error, value] = [field.name, field.label, field.hint, field.error, field.value].map(
    escapeText,
  );
  const notes = [hint === "" ? "" : `hint-${name}`, error === "" ? "" : `error-${name}`].filter((id) => id !== "");
  return [
    `<label for="field-${name}">${label}</label>`,
    `<input id="field-${name}" name="${name}" value="${value}" type="${TYPES[field.kind] ?? "text"}"`,
    FILLED_BY[field.kind] ? ` autocomplete="${FILLED_BY[field.kind]}"` : "",
    notes.length === 0 ? "" : ` aria-describedby="${notes.join(" ")}"`,
    error === "" ? ">" : ' aria-invalid="true">',
    hint === "" ? "" : `<p id="hint-${name}">${hint}</p>`,
    error === "" ? "" : `<p id="error-${name}" class="wrong">${error}</p>`,
  ].join("");
}

/**
 * A form that was refused, as an answer with its own status, which a page of the framework can't have: what was typed stands in
 * it, without passwords. For those who aren't logged in, of whom nothing is kept.
 */
export function formResponse(words: Words, status: number, model: FormModel, action: string): Response {
  const hidden = model.hidden.map(
    ({ name, value }) => `<input type="hidden" name="${escapeText(name)}" value="${escapeText(value)}">`,
  );
  const fields = model.parts.flatMap((part) => part.fields).map(fieldOf);
  const inside = [
    `<p role="alert" class="wrong">${escapeText(model.refusal)}</p>`,
    `<form method="post" action="${escapeText(action)}">${hidden.join("")}${fields.join("")}`,
    `<p><button type="submit">${escapeText(model.submit)}</button></p></form>`,
  ].join("");
  return new Response(barePage(words, escapeText(model.heading), inside), {
    status,
    headers: { "content-type": "text/html; charset=utf-8" },
  });
}
