import { expect, it, vi } from "vitest";
import { z } from "zod";
import { quietFailures, sayFailure } from "@/app/_server/door/quiet-failures";

const made = (text: string, more: object = {}) => Object.assign(new Error(text), more);

it.each([
  "Ari has no films",
  "ari",
  "no scope for ari",
  "not a day: Ari's birthday",
  'unknown alias "Ari"',
  "12 readings of Ari",
  "line one\n    at ari (/x/ari.ts:1:1)\nrefused FAKE-LINE 200",
])("of %j nothing is written down, only what kind of failure it is and where it happened", (text) => {
  const [first, ...places] = sayFailure(made(text)).split("\n");
  expect(first).toBe("Error");
  expect(places.length).toBeGreaterThan(0);
  for (const place of places) expect(place).toMatch(/^ {4}at [\w.@-][^\s:]*:\d+:\d+$/);
  expect(places.join("\n")).not.toMatch(/ari|FAKE|line one/i);
});

it.each(["", "t", "at", "e", ":", "\n", " ", "    at ", process.cwd()])("%j as its text loses no place", (text) => {
  const failure = made(text);
  const frames = (failure.stack ?? "").split("\n").filter((line) => line.includes(`${process.cwd()}/tests/`));
  expect(sayFailure(failure).match(/at tests\/\S+/g)).toHaveLength(frames.length);
});

it("its text may have been changed since it was thrown, and its places are the machine's from the project's root on", () => {
  const failure = made(`of Ari\n    at Ari (/somewhere/Ari.ts:1:1)\n    at Ari (${process.cwd()}/Ari.ts:1:1)`);
  failure.message = "changed";
  expect(sayFailure(failure)).toMatch(/^Error\n {4}at tests\/app\/server\/door\/quiet-failures\.test\.ts:\d+:\d+/);
  expect(sayFailure(failure)).not.toMatch(/Ari/);
  expect(sayFailure(failure)).not.toContain(process.cwd());
});

it("the database's code and the framework's number stay, and neither where it looks like something typed", () => {
  const failure = made("no such table: event", { name: "SqliteError", code: "SQLITE_ERROR", digest: "17" });
  expect(sayFailure(failure).split("\n")[0]).toBe("SqliteError SQLITE_ERROR 17");
  const typed = made("x", { name: "of Ari", code: "Ari", digest: "NEXT_REDIRECT;replace;/students/Ari;303;" });
  expect(sayFailure(typed).split("\n")[0]).toBe("Error");
});

it("what zod found wrong, with the values in it, is not written down", () => {
  const { error } = z.object({ alias: z.enum(["x"]) }).safeParse({ alias: "Ari" });
  expect(sayFailure(error as Error)).not.toMatch(/alias|Ari/);
  expect(sayFailure(error as Error)).toMatch(/ZodError/);
});

it("where it happened stays, and whatever else is printed is printed as it is", () => {
  const say = vi.spyOn(console, "error").mockImplementation(() => undefined);
  quietFailures();
  console.error("⨯", made("of Ari"), { a: 1 });
  const [sign, failure, rest] = say.mock.calls[0] ?? [];
  expect([sign, rest]).toEqual(["⨯", { a: 1 }]);
  expect(String(failure)).toMatch(/quiet-failures\.test\.ts/);
  expect(String(failure)).not.toContain("Ari");
  vi.restoreAllMocks();
});
