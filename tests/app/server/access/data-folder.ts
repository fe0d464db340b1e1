import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

/** A data folder of a test's own, in which the installation's secret is made. */
export function dataFolderForTests() {
  let folder = "";
  return {
    make(): void {
      folder = mkdtempSync(path.join(tmpdir(), "proofband-access-"));
      process.env.PROOFBAND_DATA = folder;
    },
    file: (name: string): string => path.join(folder, name),
    remove(): void {
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
