import { notFound } from "next/navigation";
import { fileResponse } from "../door/download";
import { requireStudent, type StudentViewer } from "../gate";
import { loadJudgedTrack } from "../season/load-fundamental";

const PARTS = ["verdict", "tracks", "noise"] as const;

/** See `loadJudgedPart`. */
export type JudgedPart = (typeof PARTS)[number];

const line = (value: object): string => `${JSON.stringify(value)}\n`;

/** A part of what one fundamental was judged from, or the verdict, as lines of JSON. */
export async function loadJudgedPart(
  viewer: StudentViewer,
  fundamental: string,
  club: string | undefined,
  part: JudgedPart,
): Promise<string> {
  const { judged, models } = await loadJudgedTrack(viewer, fundamental, club);
  if (part === "verdict") return line(judged.verdict);
  if (part === "tracks") return line(judged.track);
  const named = new Set(judged.track.sessions.map((session) => session.noiseModel));
  const { pool } = judged.track;
  return models
    .filter((model) => named.has(model.id))
    .map(({ id, ...model }) => line({ noiseModel: id, pool, ...model }))
    .join("");
}

/**
 * What one fundamental was judged from and what came of it, in the form of the batch door: the judged track, the noise models
 * that its sessions name, or the verdict as `analyze --looks` writes it.
 */
export async function downloadJudged(
  which: { readonly studentId: string; readonly fundamental: string },
  asked: URLSearchParams,
): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/[fundamental]/judged", which.studentId);
  const part = PARTS.find((each) => each === (asked.get("part") ?? "verdict"));
  if (part === undefined) notFound();
  const body = await loadJudgedPart(viewer, which.fundamental, asked.get("club") || undefined, part);
  return fileResponse(`${which.fundamental}-${part}.ndjson`, "application/x-ndjson; charset=utf-8", body);
}
