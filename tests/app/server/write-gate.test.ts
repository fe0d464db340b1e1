import { expect, it } from "vitest";
import { closeGate, whenWritable } from "@/app/_server/import/write-gate";

it("whoever comes while the gate is closed waits; a second closing waits for the first", async () => {
  const order: string[] = [];
  const open = await closeGate();
  const writing = whenWritable().then(() => order.push("written"));
  const second = closeGate().then((openAgain) => {
    order.push("closed again");
    return openAgain;
  });
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(order).toEqual([]);
  order.push("opened");
  open();
  await writing;
  expect(order[0]).toBe("opened");
  (await second)();
  await whenWritable();
  expect(new Set(order)).toEqual(new Set(["opened", "written", "closed again"]));
});
