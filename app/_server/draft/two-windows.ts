import type { Draft } from "@/db/read/drafts";
import { updateDraftBody } from "@/db/write/drafts";
import type { Difference } from "@/lib/report/keep-answer";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";
import { type AsideEntries, bodyOf, type Entries, type FormDraft, typedEntries } from "./form-draft";
import { keptAt } from "./kept-at";

/** What was in sight of a field when it was filled in: no content of its own, nobody chooses between two of it. */
const SIGHT = /^(?:was|seen)(?:\.|$)/;

function valuesOf(entries: Entries): ReadonlyMap<string, readonly string[]> {
  const values = new Map<string, string[]>();
  for (const [name, value] of entries)
    if (value !== "" && !SIGHT.test(name)) values.set(name, [...(values.get(name) ?? []), value]);
  return values;
}

/** The fields in which two contents of one form differ, in the order of the first, then of the second. */
export function differencesOf(here: Entries, there: Entries): readonly Difference[] {
  const [mine, theirs] = [valuesOf(here), valuesOf(there)];
  const names = [...new Set([...mine.keys(), ...theirs.keys()])];
  return names
    .map((name) => ({ name, here: mine.get(name) ?? [], there: theirs.get(name) ?? [] }))
    .filter(({ here: a, there: b }) => a.join("\n") !== b.join("\n"));
}

/** Most windows whose content is kept apart; who opens more than that of one form loses the oldest. */
const MOST_ASIDE = 8;

/** The other windows' contents with one window's newest put in. */
export function withAside(body: FormDraft, mine: AsideEntries): readonly AsideEntries[] {
  return [...(body.aside ?? []).filter((each) => each.writer !== mine.writer), mine].slice(-MOST_ASIDE);
}

function rewrite(viewer: Viewer, row: Draft, change: Partial<FormDraft>): void {
  updateDraftBody(viewer.db, viewer.scope, row.id, JSON.stringify({ ...bodyOf(row), ...change }));
}

/** Keeps what an outdated page sent beside what another one kept meanwhile; returns the id of both. */
export function keepAside(viewer: Viewer, row: Draft, data: FormData): string {
  const mine = { writer: String(data.get("writer") ?? ""), at: currentInstant(), entries: typedEntries(data) };
  const at = keptAt(viewer, row.updatedAt);
  rewrite(viewer, row, {
    aside: withAside(bodyOf(row), mine),
    refusal: viewer.words.say("draft.changed-elsewhere", { at }),
  });
  return row.id;
}

/**
 * Puts into a form what was chosen between it and another window, field by field (`pick.<name>`: `here` or `there`).
 *
 * @returns `open` while a field that differs has no answer, or another window waits; then nothing is put in
 */
export function mergePicks(viewer: Viewer, row: Draft, data: FormData): "open" | "settled" {
  const body = bodyOf(row);
  const other = body.aside?.[0];
  if (!other) return "settled";
  const all = data.get("pick.*");
  const picks = differencesOf(body.entries, other.entries).map(({ name, there }) => {
    const own = data.get(`pick.${name}`);
    return { name, there, picked: own === "here" || own === "there" ? own : all };
  });
  if (picks.some(({ picked }) => picked !== "here" && picked !== "there")) return "open";
  for (const { name, there, picked } of picks) {
    if (picked !== "there") continue;
    data.delete(name);
    for (const value of there) data.append(name, value);
  }
  const rest = body.aside?.slice(1) ?? [];
  rewrite(viewer, row, { aside: rest });
  return rest.length === 0 ? "settled" : "open";
}
