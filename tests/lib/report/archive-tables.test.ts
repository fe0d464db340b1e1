import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Archive } from "@/lib/domain/archive";
import { archiveReadme } from "@/lib/report/archive-readme";
import { archiveTables } from "@/lib/report/archive-tables";
import { wordsFor } from "@/lib/words/catalogue";
import { anyArchive } from "../ingest/made-archive";

const SEED = 20261129;
const readingsOf = ({ students }: Archive) =>
  students.flatMap(({ sessions }) => sessions.flatMap(({ swings }) => swings.flatMap(({ readings }) => readings)));

describe("the tables of an archive", () => {
  it(`300 archives (seed ${SEED}): a row for each thing, a cell for each column, and the value of the latest correction`, () => {
    fc.assert(
      fc.property(anyArchive, (archive) => {
        const tables = new Map(archiveTables(archive).map((table) => [table.name, table]));
        for (const { columns, rows } of tables.values())
          for (const row of rows) expect(row).toHaveLength(columns.length);
        const readings = readingsOf(archive);
        const table = tables.get("readings");
        const [value, entered] = ["value", "value entered"].map((name) => table?.columns.indexOf(name) ?? -1);
        expect(table?.rows.map((row) => row[value ?? -1])).toEqual(
          readings.map((reading) => {
            const latest = reading.corrections.at(-1);
            if (latest?.kind === "void") return "void";
            return (latest ?? reading).value ?? "not measurable";
          }),
        );
        expect(table?.rows.map((row) => row[entered ?? -1])).toEqual(
          readings.map((reading) => reading.value ?? "not measurable"),
        );
        expect(tables.get("corrections")?.rows).toHaveLength(
          readings.reduce((sum, { corrections }) => sum + corrections.length, 0),
        );
        expect(tables.get("students")?.rows).toHaveLength(archive.students.length);
        expect(tables.get("practice")?.rows).toHaveLength(archive.students.length);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("where it hurts stands in no table, and the readme says where it stands", () => {
    const [archive] = fc.sample(anyArchive, { seed: SEED, numRuns: 1 }) as [Archive];
    const planted = structuredClone(archive) as Archive;
    for (const { events } of planted.students) for (const event of events) event.place = "ankle";
    const tables = archiveTables(planted);
    expect(JSON.stringify(tables)).not.toContain("ankle");
    const readme = (withoutPain: number) =>
      archiveReadme(wordsFor("en"), planted, tables, { day: "2026-09-12", withoutPain });
    expect(readme(0)).toContain("it stands in archive.json alone");
    expect(readme(0)).not.toContain("for the coach in charge and the family");
    expect(readme(2)).toContain("isn’t that coach of 2 students");
    expect(readme(2)).not.toContain("it stands in archive.json alone");
  });
});
