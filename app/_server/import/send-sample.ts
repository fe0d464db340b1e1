import { readFile } from "node:fs/promises";
import path from "node:path";
import { notFound } from "next/navigation";
import { requireViewer } from "../gate";

/** The sample files that the import page offers; no other file can be asked for. */
const SAMPLES = ["season-long.csv", "season-wide.csv", "season.xlsx", "season.json", "deliberately-bad.csv"];

const TYPES: Readonly<Record<string, string>> = {
  ".csv": "text/csv; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/** A sample file to try the import with. */
export async function sendSample(name: string): Promise<Response> {
  await requireViewer("GET /api/samples/[name]");
  const known = SAMPLES.find((sample) => sample === name);
  if (!known) notFound();
  const body = await readFile(path.join(/* turbopackIgnore: true */ process.cwd(), "seed", "samples", known));
  return new Response(new Uint8Array(body), {
    headers: {
      "content-type": TYPES[path.extname(known)] ?? "",
      "content-disposition": `attachment; filename="${known}"`,
    },
  });
}
