import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { eraseWhenMeant } from "@/app/_server/erase/erase-desk";
import { forgetOthersErasures } from "@/app/_server/erase/forget-in-memory";
import { logFamilyPractice } from "@/app/_server/family/family-desk";
import { heldLinkKey, typedKey } from "@/app/_server/family/family-keys";
import { makeFamilyLink } from "@/app/_server/family/link-desk";
import type { FamilyViewer } from "@/app/_server/family-gate";
import type { StudentViewer } from "@/app/_server/gate";
import { holdOnce, seeHeld } from "@/app/_server/people/shown-once";
import { addShared, cookieOf, familyAt, linkFor, PUBLIC } from "./family-academy";
import { formOf } from "./first-student";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
beforeEach(async () => {
  vi.stubEnv("PROOFBAND_ORIGIN", PUBLIC);
  academy = await startPeopleAcademy();
});
afterEach(() => {
  academy.remove();
  vi.unstubAllEnvs();
});

/** A student whose family has saved one form and had one refused, and a link for them that waits to be shown. */
async function held(alias: string) {
  const viewer = addShared(academy, alias);
  const { id, token } = linkFor(viewer, "mother");
  const family = await familyAt(id, await cookieOf(token));
  if (!family) throw new Error(alias);
  const practice = { key: randomUUID(), day: viewer.today, minutes: "5", hurts: "no" };
  expect(logFamilyPractice(family, formOf(practice))).toBe("logged");
  expect(logFamilyPractice(family, formOf({ ...practice, minutes: "five" }))).toBe("refused");
  const made = makeFamilyLink(viewer, formOf({ label: "father" }));
  if (made.kind !== "made") throw new Error(alias);
  return { viewer, family, key: practice.key, made: made.id };
}

const inMemory = ({ viewer, family, made }: { viewer: StudentViewer; family: FamilyViewer; made: string }) =>
  [typedKey(family), heldLinkKey(viewer, made)].map((key) => seeHeld(key) !== null);

it("of a family nothing waits in memory, and no answer to its forms is on file, once the student is erased; others’ stay", async () => {
  const [dot, bea] = [await held("Dot"), await held("Bea")];
  holdOnce("join of somebody", "kept");
  const receipts = () =>
    academy.db.sqlite.prepare("SELECT key FROM form_receipt WHERE kind LIKE 'family-practice%'").pluck().all();
  expect([inMemory(dot), inMemory(bea), receipts().toSorted()]).toEqual([
    [true, true],
    [true, true],
    [dot.key, bea.key].toSorted(),
  ]);
  await eraseWhenMeant(dot.viewer, formOf({ reason: "asked", alias: "Dot" }));
  expect([inMemory(dot), inMemory(bea), receipts()]).toEqual([[false, false], [true, true], [bea.key]]);
  // Another process erases, and nobody here knows whom.
  forgetOthersErasures(bea.viewer);
  academy.db.sqlite
    .prepare(
      "INSERT INTO erasure SELECT 'another', academy_id, who, erased_at, reason, sessions, readings FROM erasure",
    )
    .run();
  forgetOthersErasures(bea.viewer);
  expect([inMemory(bea), seeHeld("join of somebody")]).toEqual([[false, false], "kept"]);
});
