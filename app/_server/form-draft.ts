import { randomUUID } from "node:crypto";
import { readDraft } from "@/db/read/drafts";
import { insertDraft } from "@/db/write/drafts";
import { currentInstant } from "./clock";
import type { Viewer } from "./gate";

/** What was typed into a form that was refused, with what was wrong by field. */
export interface FormDraft {
  readonly entries: readonly (readonly [string, string])[];
  readonly errors: Readonly<Record<string, string>>;
  readonly refusal: string;
}

/** Keeps a refused form, so that nothing typed is lost; a form already kept keeps its id. */
export function keepFormDraft(
  viewer: Viewer,
  kind: string,
  data: FormData,
  errors: Readonly<Record<string, string>>,
  refusal: string,
): string {
  const wished = String(data.get("draft") ?? "");
  const id = wished !== "" && findFormDraft(viewer, kind, wished) ? wished : randomUUID();
  const entries = [...data].flatMap(([name, value]) =>
    typeof value === "string" && !name.startsWith("$") ? [[name, value] as const] : [],
  );
  const body: FormDraft = { entries, errors, refusal };
  insertDraft(viewer.db, viewer.scope, { id, kind, body: JSON.stringify(body), updatedAt: currentInstant() });
  return id;
}

/** A refused form of that kind; null: there is none. */
export function findFormDraft(viewer: Viewer, kind: string, id: string | undefined): FormDraft | null {
  if (id === undefined || id === "") return null;
  const row = readDraft(viewer.db, viewer.scope, id);
  return row && row.kind === kind ? (JSON.parse(row.body) as FormDraft) : null;
}
