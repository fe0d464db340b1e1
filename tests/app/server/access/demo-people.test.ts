import { expect, it } from "vitest";
import { addDemoPeople, DEMO_PEOPLE } from "@/app/_server/access/demo-people";
import { readAddedAt, readPeople } from "@/db/read/people";
import { startAcademy } from "../own-academy-data";

it("the demo's people came no later than the day that is always its today, and are added once", async () => {
  const { viewer, remove } = await startAcademy();
  const { db } = viewer;
  // Whom they have in charge isn't here.
  db.sqlite.pragma("foreign_keys = OFF");
  const academy = { ...viewer.academy, kind: "demo", fixedToday: "2026-09-12" } as const;
  await addDemoPeople({ ...viewer, academy });
  await addDemoPeople({ ...viewer, academy });
  expect(readPeople(db, academy.id).map(({ name }) => name)).toEqual(DEMO_PEOPLE.map(({ name }) => name).sort());
  const days = [...readAddedAt(db, academy.id).values()].map((at) => at.slice(0, 10));
  expect(days).toEqual(DEMO_PEOPLE.map(() => "2026-09-12"));
  remove();
});
