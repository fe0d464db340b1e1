import { readMergedInto } from "@/db/read/students";
import { parseKeepRequest } from "@/lib/ingest/parse-keep-request";
import type { KeepAnswer } from "@/lib/report/keep-answer";
import { referenceHere } from "../door/answering";
import { diskFailureOf } from "../door/disk-failure";
import { ownPath } from "../door/own-path";
import { answerDiskFailure, DISK_STATUS } from "../door/when-disk-fails";
import { admitToStudent, requireViewer, type Viewer } from "../gate";
import { whenWritable } from "../import/write-gate";
import { DRAFT_FORMS, isDraftId } from "./draft-forms";
import { typedEntries } from "./form-draft";
import { type KeepOutcome, keepDraft, lookAtDraft } from "./keep-draft";
import { moveDraft } from "./unfinished";

/** A form with notes as long as they may be has a tenth of this. */
const LIMIT_KB = 256;

const STATUS: Readonly<Record<KeepOutcome["kind"], number>> = { kept: 200, changed: 409, saved: 410, absent: 404 };

function answer(status: number, body: KeepAnswer): Response {
  return Response.json(status < 400 ? body : { ...body, reference: referenceHere() }, { status });
}

function refuse({ words }: Viewer, status: number, why: string): Response {
  return answer(status, { kind: "refused", said: words.say(`draft.refused.${why}`, { limit: LIMIT_KB }) });
}

/** The body as text up to the limit; null: there is more, which isn't read. */
async function readText(request: Request): Promise<string | null> {
  if (Number(request.headers.get("content-length") ?? 0) > LIMIT_KB * 1024) return null;
  const reader = request.body?.getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (let next = await reader?.read(); next && !next.done; next = await reader?.read()) {
    size += next.value.byteLength;
    if (size > LIMIT_KB * 1024) {
      await reader?.cancel();
      return null;
    }
    parts.push(next.value);
  }
  return Buffer.concat(parts).toString("utf8");
}

/** Keeps what a page sends while somebody types, or says whether it has seen the newest. */
export async function receiveDraft(request: Request): Promise<Response> {
  const viewer = await requireViewer("POST /api/drafts");
  const text = await readText(request);
  if (text === null) return refuse(viewer, 413, "too-big");
  const asked = parseKeepRequest(text);
  if (asked === null || !isDraftId(asked.draft)) return refuse(viewer, 422, "unreadable");
  const isKnown = Object.hasOwn(DRAFT_FORMS, asked.form);
  const about = isKnown ? DRAFT_FORMS[asked.form]?.about : null;
  const student = about === "student" ? admitToStudent(viewer, asked.studentId) : null;
  if (!isKnown || (about === "student" && student === null)) return refuse(viewer, 404, "absent");
  // The form's page leads to the other student's: what is kept here nobody would find again.
  if (student !== null && readMergedInto(viewer.db, student) !== null) return refuse(viewer, 409, "merged");
  if (asked.act === "look") return answer(200, lookAtDraft(viewer, asked.draft, asked.version));
  await whenWritable();
  try {
    const studentId = about === "student" ? asked.studentId : "";
    const outcome = keepDraft(viewer, { ...asked, studentId, entries: typedEntries(asked.entries) });
    return outcome.kind === "absent" ? refuse(viewer, 404, "absent") : answer(STATUS[outcome.kind], outcome);
  } catch (error) {
    const failure = diskFailureOf(error);
    if (failure === null) throw error;
    return refuse(viewer, DISK_STATUS[failure], failure);
  }
}

/** Drops an unfinished form, or takes it back, and leads to where that was asked. */
export async function moveDraftFrom(request: Request, to: "dropped" | "unfinished"): Promise<Response> {
  const viewer = await requireViewer(`POST /api/drafts/${to === "dropped" ? "drop" : "take-back"}`);
  const text = (await readText(request)) ?? "";
  const fields = new URLSearchParams(text);
  const id = fields.get("draft") ?? "";
  const back = ownPath(fields.get("back") ?? "");
  return answerDiskFailure(viewer.words, async () => {
    await whenWritable();
    return leadOn(isDraftId(id) ? moveDraft(viewer, id, to) : null, id, to, back);
  });
}

function leadOn(page: string | null, id: string, to: "dropped" | "unfinished", back: string): Response {
  if (page === null) return seeOther(back);
  if (to === "unfinished") return seeOther(`${page}?draft=${id}`);
  return seeOther(back === page ? `${page}?dropped=${id}` : back);
}

function seeOther(path: string): Response {
  return new Response(null, { status: 303, headers: { location: path } });
}
