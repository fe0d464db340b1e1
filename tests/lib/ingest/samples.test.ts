import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { readWorkbook } from "@/lib/ingest/read-workbook";
import { sampleJson, sampleWorkbook } from "../../seed/make-samples";
import { codes, planLines, readFile, sayAll, silentRows } from "./import-setup";

const sample = (name: string) => readFileSync(path.join(import.meta.dirname, "../../../seed/samples", name));
const NIA = { "answer:student:nia": "new-right", "answer-givenBy:student:nia": "mother" };

describe("the sample files", () => {
  it("both seasons ask only whose they are, and are ready whole after that", () => {
    for (const [name, alias, hand] of [
      ["season-long.csv", "nia", "right"],
      ["season-wide.csv", "tove", "left"],
    ] as const) {
      const asked = readFile(sample(name));
      expect(asked.questions.filter(({ standing }) => standing === null).map(({ id }) => id)).toEqual([
        `student:${alias}`,
      ]);
      const ready = readFile(sample(name), {
        [`answer:student:${alias}`]: `new-${hand}`,
        [`answer-givenBy:student:${alias}`]: "mother",
        "answer:left-sign": "neutral",
      });
      expect([ready.issues, ready.rowsReady, ready.restRows]).toEqual([[], ready.rowsTotal, []]);
    }
  });

  it("the workbook and the JSON are made from the long season, and give the same readings as it", async () => {
    expect(Buffer.from(sampleWorkbook()).equals(sample("season.xlsx"))).toBe(true);
    expect(sample("season.json").toString()).toBe(sampleJson());
    const [plain, book, json] = [
      readFile(sample("season-long.csv"), NIA),
      readFile(sample("season.xlsx"), NIA, { workbook: await readWorkbook(sample("season.xlsx")) }),
      readFile(sample("season.json"), NIA),
    ];
    expect(planLines(plain)).toHaveLength(90);
    expect(planLines(book)).toEqual(planLines(plain));
    expect(planLines(json)).toEqual(planLines(plain));
  });

  it("the deliberately bad one keeps more than twenty good rows and names every other row in words", () => {
    const preview = readFile(sample("deliberately-bad.csv"), NIA);
    expect(preview.rowsReady).toBeGreaterThan(20);
    expect(silentRows(preview)).toEqual([]);
    expect(new Set(codes(preview.issues))).toEqual(
      new Set([
        "not-finite",
        "too-large",
        "impossible-date",
        "future-date",
        "unknown-fundamental",
        "two-digit-year",
        "full-width",
        "not-a-number",
        "student-missing",
        "too-many-cells",
        "unclosed-quote",
      ]),
    );
    expect(new Set(codes(preview.questions))).toEqual(
      new Set([
        "student-unknown",
        "student-close",
        "same-swing",
        "date-order",
        "look-alike",
        "other-unit",
        "other-unit-stance",
        "out-of-range",
      ]),
    );
    for (const sentence of sayAll(preview)) expect(sentence).toMatch(/^[^{}]+$/);
  });
});
