import { buildPrescribe, type PrescribePart } from "@/lib/report/build-prescribe";
import { proposeDrill } from "@/lib/report/propose-drill";
import type { StudentViewer } from "../gate";
import { proposeSource, whyStop } from "./proposals";

/**
 * The drill for a fundamental, for a page: who may know what hurts is told it there. So it is no part of what is printed,
 * downloaded or sent.
 *
 * @param fundamentalId of the one in hand; null: none, and nothing is proposed
 */
export function loadPrescribe(viewer: StudentViewer, fundamentalId: string | null): PrescribePart | null {
  if (fundamentalId === null) return null;
  const source = proposeSource(viewer);
  return buildPrescribe(viewer.words, {
    studentId: viewer.student.studentId,
    fundamentalId,
    proposal: proposeDrill(viewer.words, source, { fundamentalId }),
    running:
      source.own.findLast(
        (given) => given.state === "stands" && given.end === null && given.fundamentalId === fundamentalId,
      ) ?? null,
    stop: whyStop(viewer),
    today: viewer.today,
  });
}
