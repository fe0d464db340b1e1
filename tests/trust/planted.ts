import path from "node:path";
import Papa from "papaparse";
import { openDatabase } from "@/db/client";
import type { OtherServer } from "./other-server";
import type { Answer } from "./raw-request";
import { ours } from "./refusal-senders";

/** Known again wherever it turns up. */
export const MARK = "Zqx";

/** Begins as a formula, closes what a page could have opened, draws, runs, and breaks the line. */
export const PLANTED = `=${MARK}'"</script></title><img src=x onerror=document.title='ran'><svg onload=document.title='ran'>{{1}}\${1}&amp;\r\nrefused ${MARK}`;
/** Nobody may have two lines in a name. */
export const PLANTED_NAME = PLANTED.replaceAll(/[\r\n]+/g, " ");

/** Texts that people type, by table; names are of one line. */
const TEXTS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  student: { alias: PLANTED_NAME },
  session: { note: PLANTED, aid: PLANTED },
  swing: { note: PLANTED },
  capture: { film_reference: PLANTED_NAME },
  drill: { name: PLANTED_NAME, how: PLANTED, cautions: PLANTED },
  drill_assignment: { dose: PLANTED, end_why: PLANTED },
  event: { note: PLANTED },
  goal_band: { reason: PLANTED },
  correction: { who: PLANTED_NAME, why: PLANTED },
  practice: { who: PLANTED_NAME },
  consent: { given_by: PLANTED },
  charge: { note: PLANTED },
  import_batch: { file_name: `${PLANTED_NAME}.csv` },
  reread_item: { film_reference: PLANTED_NAME },
  read_back_item: { film_reference: PLANTED_NAME },
  user: { name: PLANTED_NAME },
  academy: { name: PLANTED_NAME, owner_name: PLANTED_NAME },
};

/** Writes it into every text of the demo in a data folder; the number of cells. */
export function plant(data: string): number {
  const db = openDatabase(path.join(data, "demo", "proofband.db"));
  try {
    let cells = 0;
    for (const [table, columns] of Object.entries(TEXTS))
      for (const [column, text] of Object.entries(columns)) {
        const all = db.sqlite.prepare(`SELECT rowid AS row, "${column}" AS was FROM "${table}"`).all() as {
          row: number;
        }[];
        const write = db.sqlite.prepare(`UPDATE "${table}" SET "${column}" = ? WHERE rowid = ?`);
        // Names differ, so that none is taken for another.
        for (const { row } of all) cells += write.run(`${text}${text.endsWith(MARK) ? ` ${row}` : ""}`, row).changes;
      }
    db.sqlite.exec("UPDATE student SET revision = revision + 1");
    return cells;
  } finally {
    db.close();
  }
}

/** What a form of a page would be sent with: its address, its fields as they stand, and those that somebody types into. */
export interface ShownForm {
  readonly action: string;
  readonly fields: readonly (readonly [string, string])[];
  readonly typed: readonly string[];
}

const plain = (text: string): string =>
  text
    .replaceAll("&quot;", '"')
    .replaceAll("&#x27;", "'")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&");

function attribute(tag: string, name: string): string | null {
  const found = new RegExp(`\\s${name}(?:="([^"]*)")?(?=[\\s/>])`).exec(tag);
  return found ? plain(found[1] ?? "") : null;
}

/** The forms that are sent from a page, as a browser without scripts would read them. */
export function formsOf(html: string): ShownForm[] {
  return [...html.matchAll(/<form\b([^>]*)>(.*?)<\/form>/gs)].flatMap(([, head = "", inside = ""]) => {
    if ((attribute(`${head}>`, "method") ?? "").toLowerCase() !== "post") return [];
    const fields: [string, string][] = [];
    const typed: string[] = [];
    for (const [tag] of inside.matchAll(/<(?:input|select|textarea|button)\b[^>]*>/g)) {
      const name = attribute(tag, "name");
      if (name === null || name === "") continue;
      const type = attribute(tag, "type") ?? (tag.startsWith("<input") ? "text" : "");
      if (type === "file" || ((type === "checkbox" || type === "radio") && fields.some(([each]) => each === name)))
        continue;
      fields.push([name, attribute(tag, "value") ?? ""]);
      if (type !== "hidden" && !tag.startsWith("<button")) typed.push(name);
    }
    return [{ action: attribute(`${head}>`, "action") ?? "", fields, typed }];
  });
}

/** Cells that a spreadsheet would take for a formula, or that lost a part of what was planted. */
export function badCells(csv: string): string[] {
  const { data } = Papa.parse<string[]>(csv.replace(/^\uFEFF/, ""), { delimiter: ",", newline: "\r\n" });
  return data
    .flat()
    .filter(
      (cell) =>
        /^[=@\t\r\n\0＝＋－＠]|^[+-](?!\d+([.,]\d+)?$)/u.test(cell) ||
        (cell.includes(`=${MARK}`) && !cell.includes(`=${MARK}'"</script></title><img`)),
    );
}

/** Sends a form as a browser without scripts does. */
export async function submitForm(
  server: OtherServer,
  page: string,
  action: string,
  fields: readonly (readonly [string, string])[],
): Promise<Answer> {
  const boundary = "----proofband";
  const parts = fields.map(
    ([name, value]) => `--${boundary}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
  );
  const to = action === "" ? page : action;
  const urlencoded = to.startsWith("/api/");
  const body = urlencoded
    ? new URLSearchParams(fields.map(([name, value]) => [name, value])).toString()
    : `${parts.join("")}--${boundary}--\r\n`;
  const type = urlencoded ? "application/x-www-form-urlencoded" : `multipart/form-data; boundary=${boundary}`;
  return server.send("POST", to, ours(server, { "Content-Type": type }), body);
}
