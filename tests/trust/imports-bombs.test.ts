import { createServer } from "node:net";
import { zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startFile } from "@/app/_server/import/import-worker";
import type { FileTask } from "@/app/_server/worker/file-tasks";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { spentSince } from "../cpu-time";
import { BEA, codes, sayAll, TODAY } from "../lib/ingest/import-setup";
import { makeWorkbook, sheetXml, workbookParts, zipParts } from "../lib/ingest/made-workbook";
import { countCases } from "./count-cases";

/** Whoever reads what a workbook points to outside would knock here. */
const OUTSIDE_PORT = 34_417;
const HEAD = ["student", "date", "club", "swing", "hinge"];
const ROW = ["Bea", "2026-03-08", "7-iron", 1, 66];
const GOOD = [HEAD, ROW];
const parts = () => workbookParts([{ name: "S", rows: GOOD }]);
const sheetWith = (xml: string) => zipParts({ ...parts(), "xl/worksheets/sheet1.xml": xml });
const SHEET = sheetXml(GOOD);
const bytesOf = (text: string) => new TextEncoder().encode(text);

/** Reads a file in the capped worker, as the server does. */
async function inWorker(bytes: Uint8Array): Promise<ImportPreview | "heavy"> {
  const task: FileTask = {
    draft: { fileName: "x.xlsx", file: Buffer.from(bytes).toString("base64"), answers: [] },
    draftId: "",
    today: TODAY,
    students: [BEA],
    fundamentals: BUILT_IN,
    grouping: SHORT_LIST,
    sources: [],
    reader: "Wren",
    locale: "en",
    want: "plan",
  };
  const result = await startFile(task).result;
  if (result.kind === "plan") return result.preview;
  if (result.kind === "heavy") return "heavy";
  throw new Error(result.kind);
}

/** The archive with numbers of one entry in its directory changed: size unpacked 24 bytes behind the mark, flags 8. */
function patched(zip: Uint8Array, name: string, offset: number, value: number, width: 2 | 4): Uint8Array {
  const copy = Uint8Array.from(zip);
  const view = new DataView(copy.buffer);
  for (let at = copy.length - 46; at >= 0; at--) {
    if (view.getUint32(at, true) !== 0x02014b50) continue;
    const length = view.getUint16(at + 28, true);
    if (new TextDecoder().decode(copy.subarray(at + 46, at + 46 + length)) !== name) continue;
    if (width === 4) view.setUint32(at + offset, value, true);
    else view.setUint16(at + offset, value, true);
    return copy;
  }
  throw new Error(`no ${name}`);
}

/** An archive whose directory names one entry as another one of the same length. */
function renamed(zip: Uint8Array, from: string, to: string): Uint8Array {
  const text = Buffer.from(zip).toString("latin1").replaceAll(from, to);
  return Uint8Array.from(Buffer.from(text, "latin1"));
}

const SHEET_PART = "xl/worksheets/sheet1.xml";
const big = (size: number): Uint8Array => new Uint8Array(size).fill(32);

const BOMBS: readonly (readonly [string, () => Uint8Array])[] = [
  ["a part that grows a thousandfold", () => zipSync({ ...packed(parts()), [SHEET_PART]: big(64 * 1024 * 1024) })],
  [
    "parts that are large together",
    () =>
      zipSync(
        { ...packed(parts()), ...Object.fromEntries([1, 2, 3, 4].map((n) => [`xl/x${n}.xml`, noise(26)])) },
        { level: 1 },
      ),
  ],
  [
    "a cell at the far corner, 2 KB in all",
    () => sheetWith(SHEET.replace("</sheetData>", '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>')),
  ],
  ["a blank row at the far end", () => sheetWith(SHEET.replace("</sheetData>", '<row r="1048576"/></sheetData>'))],
  [
    "a rectangle of a hundred million blank cells",
    () => sheetWith(SHEET.replace("</sheetData>", '<row r="199999"><c r="SF199999"><v>1</v></c></row></sheetData>')),
  ],
  ["a size that says too little", () => patched(zipParts(parts()), SHEET_PART, 24, 10, 4)],
  ["a size that says too much", () => patched(zipParts(parts()), SHEET_PART, 24, 9_000, 4)],
  [
    "doubled entries",
    () => renamed(zipParts({ ...parts(), "xl/worksheets/sheet2.xml": SHEET }), "xl/worksheets/sheet2.xml", SHEET_PART),
  ],
  ["an entry that leads out", () => zipParts({ ...parts(), "../../x.xml": "x" })],
  ["an entry from the root", () => zipParts({ ...parts(), "/x.xml": "x" })],
  [
    "10,000 sheets",
    () =>
      zipParts({
        ...parts(),
        ...Object.fromEntries(Array.from({ length: 10_000 }, (_, at) => [`xl/worksheets/s${at}.xml`, ""])),
      }),
  ],
  [
    "300 sheets in 300 names",
    () => makeWorkbook(Array.from({ length: 300 }, (_, at) => ({ name: `S${at}`, rows: [["x"]] }))),
  ],
  [
    "entities that grow",
    () =>
      sheetWith(
        SHEET.replace(
          "?>",
          `?><!DOCTYPE l [<!ENTITY a "aaaaaaaaaa">${Array.from({ length: 9 }, (_, at) => `<!ENTITY ${String.fromCharCode(98 + at)} "${`&${String.fromCharCode(97 + at)};`.repeat(10)}">`).join("")}]>`,
        ).replace("<v>66</v>", "<v>&j;</v>"),
      ),
  ],
  [
    "an entity from a file",
    () =>
      sheetWith(
        SHEET.replace("?>", '?><!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/hostname">]>').replace(
          "<v>66</v>",
          "<v>&a;</v>",
        ),
      ),
  ],
  [
    "an entity from the network",
    () => sheetWith(SHEET.replace("?>", `?><!DOCTYPE x SYSTEM "http://127.0.0.1:${OUTSIDE_PORT}/x.dtd">`)),
  ],
  ["a locked part", () => patched(zipParts(parts()), SHEET_PART, 8, 1, 2)],
  [
    "a sheet kept outside the file",
    () =>
      zipParts({
        ...parts(),
        "xl/_rels/workbook.xml.rels": (parts()["xl/_rels/workbook.xml.rels"] ?? "").replace(
          'Target="worksheets/sheet1.xml"',
          `Target="http://127.0.0.1:${OUTSIDE_PORT}/s.xml" TargetMode="External"`,
        ),
      }),
  ],
];

function packed(texts: Readonly<Record<string, string>>): Record<string, Uint8Array> {
  return Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, bytesOf(text)]));
}

/** Bytes that hardly pack, in MB: a part of them is large without growing. */
function noise(megabytes: number): Uint8Array {
  const bytes = new Uint8Array(megabytes * 1024 * 1024);
  let state = 20260912;
  for (let at = 0; at < bytes.length; at++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    bytes[at] = 97 + ((state >>> 24) % 16);
  }
  return bytes;
}

let asked = 0;
const listener = createServer((socket) => {
  asked++;
  socket.destroy();
});
beforeAll(() => new Promise<void>((resolve) => listener.listen(OUTSIDE_PORT, "127.0.0.1", resolve)));
afterAll(() => {
  listener.close();
  expect(asked).toBe(0);
});

describe("I11: workbook bombs", () => {
  const ran = countCases("I11", 12);
  it("a good workbook is read in the worker", async () => {
    const preview = await inWorker(zipParts(parts()));
    expect(preview !== "heavy" && preview.rowsReady).toBe(1);
  });
  it.each(BOMBS)("%s: refused in words within 5 s, the server's memory untouched", async (_, make) => {
    ran.add();
    const bytes = make();
    const heap = process.memoryUsage().heapUsed;
    const begun = process.cpuUsage();
    const preview = await inWorker(bytes);
    expect(spentSince(begun)).toBeLessThan(5000);
    expect(preview).not.toBe("heavy");
    if (preview === "heavy") return;
    expect(preview.plan).toBeNull();
    expect(["workbook", "empty-file"]).toContain(codes(preview.issues)[0]);
    expect(sayAll(preview)[0]?.length).toBeGreaterThan(20);
    expect(process.memoryUsage().heapUsed - heap).toBeLessThan(150 * 1024 * 1024);
  });
  it("one cell of 60 MB: the capped worker ends or refuses, the server goes on", async () => {
    ran.add();
    const cell = `<c r="F2" t="inlineStr"><is><t>${"x".repeat(60 * 1024 * 1024)}</t></is></c></row>`;
    const bytes = zipSync({
      ...packed(parts()),
      [SHEET_PART]: [bytesOf(SHEET.replace("</row></sheetData>", `${cell}</sheetData>`)), { level: 1 }],
    });
    const preview = await inWorker(bytes);
    expect(preview === "heavy" || preview.plan === null || preview.rowsReady === 1).toBe(true);
    const after = await inWorker(zipParts(parts()));
    expect(after !== "heavy" && after.rowsReady).toBe(1);
  });
});
