import os from "node:os";
import { parseArgs } from "node:util";
import { bigImportFigures } from "./big-import-bench";
import { engineFigures } from "./engine-bench";
import { familyFigures } from "./family-bench";
import { importFigures } from "./import-bench";
import { type Measured, saidFigures, yardstick } from "./measured";
import { pageFigures } from "./pages-bench";
import { rosterFigures } from "./roster-bench";

const { values } = parseArgs({
  options: {
    readings: { type: "string", default: "500000" },
    students: { type: "string", default: "2000" },
    /** A folder in which the roster's academy, or the family's, is left for another run; without it one is made and thrown away. */
    kept: { type: "string" },
    imported: { type: "string", default: "100000" },
    only: { type: "string" },
  },
});

const PARTS: Readonly<Record<string, () => readonly Measured[] | Promise<readonly Measured[]>>> = {
  engine: engineFigures,
  import: importFigures,
  "big-import": () => bigImportFigures(Number(values.imported)),
  roster: () => rosterFigures(Number(values.students), values.kept),
  family: () => familyFigures(values.kept),
  pages: () => pageFigures(Number(values.readings)),
};

async function bench(): Promise<void> {
  const wanted = Object.entries(PARTS).filter(([name]) => values.only === undefined || values.only === name);
  if (wanted.length === 0) throw new RangeError(`--only takes one of ${Object.keys(PARTS).join(", ")}: ${values.only}`);
  const figures: Measured[] = [yardstick()];
  for (const [name, part] of wanted) {
    console.error(`measuring: ${name}`);
    figures.push(...(await part()));
  }
  console.log(`Node ${process.version}, ${os.cpus().length} x ${os.cpus()[0]?.model ?? "unknown processor"}\n`);
  console.log(saidFigures(figures));
}

bench().then(
  () => process.exit(0),
  (error: unknown) => {
    console.error(error instanceof Error ? error.message : String(error));
    process.exit(1);
  },
);
