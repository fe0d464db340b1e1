import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { buildFamilyFile } from "@/lib/report/build-family-file";
import type { FamilyFile } from "@/lib/report/tell-model";
import { seeOther } from "../access/sign-in-desk";
import { fileResponse } from "../door/download";
import { requireStudent } from "../gate";
import { mayShare } from "./link-desk";
import { loadTelling } from "./load-telling";

/** The style sheets of a file as text, and what stands in its policy for a style. */
export interface FileSheets {
  readonly tokens: string;
  readonly file: string;
  readonly marks: string;
  readonly picture: string;
  readonly digest: (style: string) => string;
}

function readSheets(): FileSheets {
  const read = (...parts: readonly string[]): string =>
    readFileSync(path.join(/* turbopackIgnore: true */ process.cwd(), "app", "_ui", ...parts), "utf8");
  return {
    tokens: read("tokens.css"),
    file: read("chart-file", "family-file.css"),
    marks: read("chart-marks", "chart-marks.module.css"),
    picture: read("family", "picture.module.css"),
    digest: (style) => createHash("sha256").update(style).digest("base64"),
  };
}

/**
 * What a family is told as one file. Without consent to share there is none, and the page says why.
 *
 * @param write makes the file's text; its markup belongs to the pages
 */
export async function downloadFamilyFile(
  studentId: string,
  write: (file: FamilyFile, sheets: FileSheets) => string,
): Promise<Response> {
  const viewer = await requireStudent("GET /api/students/[studentId]/tell/file", studentId);
  if (!mayShare(viewer)) return seeOther(`/students/${viewer.student.studentId}/tell?done=no-consent`);
  const { words, telling } = await loadTelling(viewer);
  const text = write(buildFamilyFile(words, telling), readSheets());
  return fileResponse(`for-the-family-${viewer.today}.html`, "text/html; charset=utf-8", text);
}
