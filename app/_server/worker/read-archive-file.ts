import { createHash } from "node:crypto";
import { archiveText } from "@/lib/domain/archive";
import { planArchive } from "@/lib/ingest/plan-archive";
import { readArchive } from "@/lib/ingest/read-archive";
import { type ArchiveResult, type ArchiveTask, type FileMessage, PHASES, PROGRESS } from "./file-tasks";

/** Reads a file that may be an archive; of a plan the students are told one by one, so that no message is long. */
export function readArchiveFile(
  { draft, onFile, want }: ArchiveTask,
  numbers: Int32Array,
  tell: (message: FileMessage) => void,
): ArchiveResult {
  Atomics.store(numbers, PROGRESS.phase, PHASES.reading);
  const read = readArchive(Uint8Array.from(Buffer.from(draft.file, "base64")));
  if (read.kind !== "archive") return read;
  const contentHash = createHash("sha256").update(archiveText(read.archive)).digest("hex");
  const { plan, ...preview } = planArchive(
    read.archive,
    onFile,
    { fileName: draft.fileName, contentHash },
    new Map(draft.answers),
  );
  const state = plan === null ? "not-ready" : "ready";
  if (plan === null || want === "archive") return { kind: "archive", state, contentHash, plan: null, ...preview };
  for (const student of plan.students) tell({ kind: "part", part: [student] });
  return { kind: "archive", state, contentHash, plan: { ...plan, students: [] }, ...preview };
}
