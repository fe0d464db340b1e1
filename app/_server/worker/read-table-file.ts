import { createHash } from "node:crypto";
import type { ImportPlan } from "@/lib/domain/session-entry";
import { foreignKind } from "@/lib/ingest/decode-text";
import type { ImportInput } from "@/lib/ingest/import-preview";
import { parseAnswers } from "@/lib/ingest/parse-answers";
import { parseImport } from "@/lib/ingest/parse-import";
import { readWorkbook } from "@/lib/ingest/read-workbook";
import { wordsFor } from "@/lib/words/catalogue";
import { buildPreviewPage } from "../import/import-page";
import { restOfImport, rowsOfImport } from "../import/import-rest";
import { rememberedSource } from "../import/import-source";
import { type FileMessage, type FileResult, type FileTask, PHASES, PROGRESS } from "./file-tasks";

/** Readings of one message: so few take the server's thread a few milliseconds. */
const PART_READINGS = 2000;

/** Where a reader says the parts of a long plan. */
export type Tell = (message: FileMessage) => void;

async function inputOf(task: FileTask, numbers: Int32Array): Promise<ImportInput> {
  const bytes = Uint8Array.from(Buffer.from(task.draft.file, "base64"));
  Atomics.store(numbers, PROGRESS.phase, PHASES.opening);
  const workbook = foreignKind(bytes) === "workbook" ? await readWorkbook(bytes) : null;
  Atomics.store(numbers, PROGRESS.phase, PHASES.reading);
  return {
    fileName: task.draft.fileName,
    bytes,
    contentHash: createHash("sha256").update(bytes).digest("hex"),
    today: task.today,
    students: task.students,
    fundamentals: task.fundamentals,
    grouping: task.grouping,
    answers: parseAnswers(new Map(task.draft.answers)),
    defaults: { reader: task.reader },
    workbook,
    sourceOf: (heads) => rememberedSource(task.sources, heads),
    onProgress(read, of) {
      Atomics.store(numbers, PROGRESS.read, read);
      Atomics.store(numbers, PROGRESS.of, of);
      if (read >= of) Atomics.store(numbers, PROGRESS.phase, PHASES.settling);
    },
  };
}

/** Sends a long plan in parts, so that the server's thread takes in none that is long. */
function tellPlan(plan: ImportPlan, tell: Tell): ImportPlan {
  let part: ImportPlan["sessions"][number][] = [];
  let readings = 0;
  for (const entry of plan.sessions) {
    part.push(entry);
    readings += entry.session.swings.reduce((sum, swing) => sum + swing.readings.length, 0);
    if (readings < PART_READINGS) continue;
    tell({ kind: "part", part });
    [part, readings] = [[], 0];
  }
  tell({ kind: "part", part });
  return { ...plan, sessions: [] };
}

/** Reads a table on this thread: only one of little memory, which may be ended, takes a file that nobody has looked at. */
export async function readTableFile(task: FileTask, numbers: Int32Array, tell: Tell): Promise<FileResult> {
  const input = await inputOf(task, numbers);
  const preview = parseImport(input);
  const speaker = { words: wordsFor(task.locale), fundamentals: task.fundamentals, grouping: task.grouping };
  if (task.want === "page") {
    return { kind: "page", page: buildPreviewPage(speaker, task.draftId, task.draft, preview) };
  }
  if (task.want !== "plan") {
    const csv = task.want === "rest" ? restOfImport(speaker, input, preview) : rowsOfImport(speaker, input, preview);
    return { kind: "csv", csv };
  }
  return { kind: "plan", preview: { ...preview, plan: preview.plan && tellPlan(preview.plan, tell) } };
}
