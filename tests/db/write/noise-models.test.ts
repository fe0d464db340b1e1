import { expect, test } from "vitest";
import { readNoiseModels } from "@/db/read/noise-models";
import * as writes from "@/db/write/noise-models";
import { academyScope, NOW, openAcademy } from "../academy-fixture";

const { insertNoiseModel } = writes;

const fitted = (pool: string, body: string) => ({
  pool,
  body,
  nameOf: (number: number) => `${pool}-${number}`,
  learnedUpTo: "2031-02-01",
  poolSessions: 50,
  fittedAt: NOW,
});

test("noise models are numbered from one within their pool and academy, and come back as they were", async () => {
  const db = await openAcademy();
  const scope = academyScope();
  const names = [fitted("hinge", "a"), fitted("tilt", "b"), fitted("hinge", "c")].map(
    (model) => insertNoiseModel(db, scope, model).name,
  );
  expect(names).toEqual(["hinge-1", "tilt-1", "hinge-2"]);
  expect(insertNoiseModel(db, academyScope("a2"), fitted("hinge", "d")).number).toBe(1);
  expect(readNoiseModels(db, scope).map((model) => `${model.name} ${model.body}`)).toEqual([
    "hinge-1 a",
    "hinge-2 c",
    "tilt-1 b",
  ]);
  const { nameOf, ...kept } = fitted("hinge", "c");
  expect(readNoiseModels(db, scope, "hinge")[1]).toEqual({ ...kept, number: 2, name: nameOf(2) });
});

test("a noise model can't be changed: one name is one model, and there is no way to write it anew", async () => {
  const db = await openAcademy();
  const named = { ...fitted("hinge", "a"), nameOf: () => "only" };
  insertNoiseModel(db, academyScope(), named);
  expect(() => insertNoiseModel(db, academyScope(), { ...named, body: "b" })).toThrow(/UNIQUE/);
  expect(readNoiseModels(db, academyScope()).map((model) => model.body)).toEqual(["a"]);
  expect(Object.keys(writes)).toEqual(["insertNoiseModel"]);
});
