import { afterEach, beforeEach, expect, it } from "vitest";
import { clearAtLook, PASSED_OVER } from "@/app/_server/erase/clear-at-look";
import { noteTraces, type Traces } from "@/app/_server/erase/clear-traces";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
beforeEach(async () => {
  academy = await startPeopleAcademy();
});
afterEach(() => academy.remove());

/** At which of so many looks the file is written anew. */
async function triesAmong(looks: number, comes: Traces): Promise<number[]> {
  const tries: number[] = [];
  for (let look = 1; look <= looks; look++)
    await clearAtLook(academy.db, async () => {
      tries.push(look);
      return comes;
    });
  return tries;
}

it("what a long reader keeps from being cleared is tried less and less often, an hour apart at last", async () => {
  const { academyId } = academy.viewer(academy.ownerId).scope;
  expect(await triesAmong(3, "left")).toEqual([]);
  noteTraces(academy.db, academyId);
  const tries = await triesAmong(400, "left");
  expect(tries.slice(0, 5)).toEqual([1, 3, 6, 11, 20]);
  expect((tries.at(-1) ?? 0) - (tries.at(-2) ?? 0)).toBe(PASSED_OVER.most + 1);
});

it("once cleared, the next erasure's traces are tried at the next look", async () => {
  const { academyId } = academy.viewer(academy.ownerId).scope;
  noteTraces(academy.db, academyId);
  expect(await triesAmong(2, "left")).toEqual([1]);
  expect(await triesAmong(2, "cleared")).toEqual([1, 2]);
  expect(await triesAmong(1, "left")).toEqual([1]);
});

it("the file itself is cleared at a look", async () => {
  noteTraces(academy.db, academy.viewer(academy.ownerId).scope.academyId);
  expect(await clearAtLook(academy.db)).toBe("cleared");
  expect(await triesAmong(2, "left")).toEqual([]);
});
