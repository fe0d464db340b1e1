import { expect, it } from "vitest";
import { buildTellPage, fileTextOf, messageOf } from "@/lib/report/build-tell";
import { wordsFor } from "@/lib/words/catalogue";
import { madeTelling } from "./made-telling";

const words = wordsFor("en");
const page = (over: Partial<Parameters<typeof buildTellPage>[1]> = {}) =>
  buildTellPage(words, {
    ...{ family: words, telling: madeTelling(), share: "given", shown: { message: "m", file: "f" }, done: null },
    dayOf: (instant) => instant.slice(0, 10),
    ...over,
  });

it("offers a message, a file and a letter; each press bears what was shown", () => {
  const { message, file, letter, refused, told } = page();
  expect(message?.message.text).toBe(messageOf(words, madeTelling()).text);
  expect(message?.keep.hidden).toEqual({ studentId: "s1", kind: "message", shown: "m" });
  expect(file?.keep.hidden).toEqual({ studentId: "s1", kind: "file", shown: "f" });
  expect(file?.download.href).toBe("/api/students/s1/tell/file");
  expect(letter?.links[0]?.href).toBe("/students/s1/tell/letter");
  expect([refused, told]).toEqual([null, null]);
  expect(fileTextOf(words, madeTelling())).toContain("What changed");
});

it("without consent to share it offers nothing and leads to it; no address makes it say what wasn't done", () => {
  const { message, file, letter, refused } = page({ share: "missing" });
  expect([message, file, letter]).toEqual([null, null, null]);
  expect(refused?.links.map(({ href }) => href)).toEqual(["/students/s1/consent"]);
  expect(page({ done: "kept" }).notices).toEqual(["Kept as told, word for word."]);
  expect(page({ done: "anything" }).notices).toEqual([]);
});

it("a message says what was left out for its length", () => {
  const telling = madeTelling({ filming: `${"a".repeat(580)}.` });
  expect(page({ telling }).message?.note).toContain("the tip for the next video");
  expect(page().message?.note).toBe("");
});

it("in two languages: what is told in the family’s, marked as such, and whatever the coach reads in the coach’s", () => {
  const german = wordsFor("de");
  const student = { ...madeTelling().student, language: "de" } as const;
  const { message, language, file } = page({ family: german, telling: madeTelling({ student }) });
  expect(message?.message.lang).toBe("de");
  expect(message?.message.text).toContain("Tut etwas weh? Hört auf und sagt es heute einem Erwachsenen.");
  expect(message?.margin).toBe("Message");
  expect(file?.heading).toBe("One file to keep");
  expect(language.heading).toBe("The family reads German");
  expect(language.presses.map(({ label, hidden }) => [label, hidden])).toEqual([
    ["Let the family read English", { studentId: "s1", language: "en" }],
  ]);
});
