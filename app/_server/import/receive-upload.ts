import { type UploadKind, uploadKind } from "@/lib/ingest/upload-kind";
import type { Words } from "@/lib/words/catalogue";
import { readLimited } from "../door/read-limited";
import { refusalResponse } from "../door/refusal-page";
import { FORM_BYTES, refuseTooBig, UPLOAD_LIMIT } from "../door/upload-limit";
import { answerDiskFailure } from "../door/when-disk-fails";
import { requireViewer, type Viewer } from "../gate";
import { keepUpload } from "./import-desk";
import { whenWritable } from "./write-gate";

/** A file and a pasted table are two; 32 MB of the smallest parts would be read for eight seconds (measured: 13 µs each). */
const MOST_PARTS = 20;

/** Whether a form is cut into more parts than any of ours; counted before it is read. */
function hasTooManyParts(bytes: Uint8Array, type: string): boolean {
  const boundary = /boundary="?([^";]+)/i.exec(type)?.[1];
  if (boundary === undefined) return false;
  const body = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let lines = 0;
  // One before each part, and one that ends the form.
  for (let at = body.indexOf(`--${boundary}`); at >= 0 && lines <= MOST_PARTS + 1; lines++)
    at = body.indexOf(`\n--${boundary}`, at + 1);
  return lines > MOST_PARTS + 1;
}

/** Takes an uploaded file in as a draft and leads to its preview. */
export async function receiveUpload(request: Request): Promise<Response> {
  const viewer = await requireViewer("POST /api/import");
  const { words } = viewer;
  const body = await readLimited(request, UPLOAD_LIMIT + FORM_BYTES);
  if (body.kind === "too-big") return refuseTooBig(words, new URL(request.url).pathname);
  if (body.kind === "broken") return refusalResponse(words, 422, words.say("import-page.half"));
  if (hasTooManyParts(body.bytes, request.headers.get("content-type") ?? ""))
    return refusalResponse(words, 413, words.say("import-page.parts", { limit: MOST_PARTS }));
  let file: FormDataEntryValue | null = null;
  let pasted: FormDataEntryValue | null = null;
  try {
    const type = request.headers.get("content-type") ?? "";
    const form = await new Response(new Uint8Array(body.bytes), { headers: { "content-type": type } }).formData();
    [file, pasted] = [form.get("file"), form.get("paste")];
  } catch {
    return refusalResponse(words, 422, words.say("import-page.half"));
  }
  return answerDiskFailure(words, () => takeIn(viewer, file, pasted));
}

async function takeIn(
  viewer: Viewer,
  file: FormDataEntryValue | null,
  pasted: FormDataEntryValue | null,
): Promise<Response> {
  const { words } = viewer;
  // While the body came, an import may have begun to write.
  await whenWritable();
  if (typeof pasted === "string" && pasted.trim() !== "") {
    const name = words.say("import-page.paste.name");
    return seeOther(`/import/${keepUpload(viewer, name, new TextEncoder().encode(pasted))}`);
  }
  const empty = file === null || typeof file === "string" || (file.size === 0 && file.name === "");
  if (empty) return seeOther("/import?problem=no-file");
  const upload = file as File;
  const bytes = new Uint8Array(await upload.arrayBuffer());
  const refused = refuseContent(words, uploadKind(bytes));
  if (refused) return refused;
  return seeOther(`/import/${keepUpload(viewer, upload.name.normalize("NFC").slice(0, 200), bytes)}`);
}

/** A refusal of what holds no table by its content, whatever it is called; nothing of it is kept. */
function refuseContent(words: Words, kind: UploadKind): Response | null {
  if (kind === "table") return null;
  if (kind === "empty") return refusalResponse(words, 422, words.say("import.issue.empty-file"));
  const args = { kind: kind === "old-workbook" ? "oldWorkbook" : kind };
  return refusalResponse(words, 415, words.say("import.issue.not-a-csv", args));
}

/** Leads on by a path alone: the server may be reached by several names. */
function seeOther(path: string): Response {
  return new Response(null, { status: 303, headers: { location: path } });
}
