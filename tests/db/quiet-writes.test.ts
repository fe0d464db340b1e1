import { afterEach, beforeEach, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { quietChanges, totalChanges, writeQuietly } from "@/db/quiet-writes";
import { startAcademy } from "../app/server/own-academy-data";

let viewer: Viewer;
let remove: () => void;
beforeEach(async () => {
  ({ viewer, remove } = await startAcademy());
  viewer.db.sqlite.exec("CREATE TABLE note_of_test (id INTEGER)");
});
afterEach(() => remove());

const write = () => void viewer.db.sqlite.exec("INSERT INTO note_of_test VALUES (1)");
const loud = () => totalChanges(viewer.db) - quietChanges(viewer.db);

it("what is written quietly inside another quiet writing is counted once, and what is loud stays so", () => {
  const before = { loud: loud(), quiet: quietChanges(viewer.db) };
  writeQuietly(viewer.db, () => {
    write();
    writeQuietly(viewer.db, write);
    write();
  });
  expect([quietChanges(viewer.db) - before.quiet, loud() - before.loud]).toEqual([3, 0]);
  write();
  expect(loud() - before.loud).toBe(1);
});

it("what was written before it failed is quiet as well", () => {
  const before = loud();
  const fail = () => {
    write();
    throw new Error("no");
  };
  expect(() => writeQuietly(viewer.db, fail)).toThrow("no");
  expect(loud()).toBe(before);
});
