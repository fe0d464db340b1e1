import { ImportLog } from "./import-log";
import type { ImportPreview } from "./import-preview";

/** A preview of nothing. */
export const NO_PREVIEW: ImportPreview = {
  form: null,
  source: null,
  encoding: null,
  delimiter: null,
  columns: [],
  heads: [],
  remembered: null,
  rowsTotal: 0,
  rowsReady: 0,
  restRows: [],
  waitingRows: [],
  plan: null,
  consents: [],
  issues: [],
  questions: [],
  notes: [],
  summaries: [],
  sheet: [],
};

/** The preview of a file of which nothing could be read, for a reason that lies outside it. */
export function refusedPreview(code: "heavy"): ImportPreview {
  const log = new ImportLog(new Map());
  log.issue({ code, row: null });
  return { ...NO_PREVIEW, issues: log.finish().issues };
}
