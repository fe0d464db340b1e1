import { randomUUID } from "node:crypto";
import { inTransaction } from "@/db/client";
import { insertTold, updateToldVoided } from "@/db/write/told";
import { TOLD_KINDS, type ToldKind } from "@/lib/domain/told";
import { fileTextOf, messageOf } from "@/lib/report/build-tell";
import { toldFindings } from "@/lib/report/told-findings";
import { instantOf } from "../clock";
import type { StudentViewer } from "../gate";
import { USUAL_GROUP } from "../session/load-forms";
import { mayShare } from "./link-desk";
import { type LoadedTelling, loadTelling, shownDigest } from "./load-telling";

/** What became of a press, a word of `tell.done.…`. */
export type TellOutcome =
  | "kept"
  | "kept-before"
  /** The text is another one by now; nothing was written. */
  | "changed"
  | "no-consent"
  | "taken-back"
  | "put-back"
  | "unchanged";

/** Keeps a text as it was sent; the changes that it tells are read off it. To be called with consent asked before. */
export function keepText(
  viewer: StudentViewer,
  { words, telling, clubGroup }: LoadedTelling,
  { kind, text }: { readonly kind: ToldKind; readonly text: string },
): "kept" | "kept-before" {
  const { db, student, today, name, academy } = viewer;
  return insertTold(db, student, {
    ...{ id: randomUUID(), kind, text, day: today, who: name, recordedAt: instantOf(academy) },
    clubGroup: clubGroup ?? USUAL_GROUP,
    findings: toldFindings(words, telling.source, text),
  });
}

/** Keeps the message or the file as told, once, and only the very text that the page showed. */
export async function keepTold(viewer: StudentViewer, data: FormData): Promise<TellOutcome> {
  const kind = TOLD_KINDS.find((each) => each === data.get("kind") && each !== "letter");
  if (kind === undefined) return "unchanged";
  if (!mayShare(viewer)) return "no-consent";
  const loaded = await loadTelling(viewer);
  const { words, telling } = loaded;
  const text = kind === "message" ? messageOf(words, telling).text : fileTextOf(words, telling);
  if (shownDigest(text) !== String(data.get("shown") ?? "")) return "changed";
  return inTransaction(viewer.db, () => keepText(viewer, loaded, { kind, text }));
}

/** Says that a text was not sent after all, or that it was. */
export function moveToldBack({ db, student, academy }: StudentViewer, data: FormData): TellOutcome {
  const wish = data.get("wish") === "put" ? "put" : "take";
  const voidedAt = wish === "take" ? instantOf(academy) : null;
  const outcome = updateToldVoided(db, student, { toldId: String(data.get("toldId") ?? ""), voidedAt });
  if (outcome === "unchanged") return "unchanged";
  return wish === "take" ? "taken-back" : "put-back";
}
