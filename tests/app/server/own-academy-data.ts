import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { closeDatabases } from "@/app/_server/database";
import { admitAs, admitMachine, type Viewer } from "@/app/_server/gate";
import { claimOwnAcademy, startOwnAcademy } from "@/app/_server/settings/own-academy";
import { readPeople } from "@/db/read/people";
import type { Consent } from "@/lib/domain/consent";

/** A consent that holds. */
export const ON_PAPER: Consent = {
  kind: "measure",
  givenBy: "parent",
  giverIs: "guardian",
  from: "2026-01-01",
  until: null,
  withdrawnOn: null,
};

/** An own academy, empty, in a data folder of its own. */
export async function startAcademy(): Promise<{ readonly viewer: Viewer; readonly folder: string; remove(): void }> {
  closeDatabases();
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-test-"));
  process.env.PROOFBAND_DATA = folder;
  await startOwnAcademy({ name: "Range", ownerName: "Coach Lark", zone: "UTC", locale: "en" });
  const viewer = await admitMachine({ choice: "own", locale: null });
  if (!viewer) throw new Error("no academy was started");
  return {
    viewer,
    folder,
    remove() {
      closeDatabases();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Gives that academy its first account, and its viewer. */
export async function enterAsOwner({ db, academy }: Viewer): Promise<Viewer> {
  await claimOwnAcademy({ email: "lark@range.example", passwordHash: "salt:hash" }, "Coach Lark");
  const viewer = await admitAs("own", readPeople(db, academy.id)[0]?.userId ?? "");
  if (!viewer) throw new Error("nobody owns the academy");
  return viewer;
}
