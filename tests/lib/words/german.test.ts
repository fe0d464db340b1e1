import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { german } from "@/lib/words/german";
import { isForFamily } from "./family-keys";

const FOLDER = path.resolve(import.meta.dirname, "../../../lib/words/messages");
const messagesOf = (language: string): Readonly<Record<string, string>> =>
  Object.assign(
    {},
    ...readdirSync(path.join(FOLDER, language)).map((file) =>
      JSON.parse(readFileSync(path.join(FOLDER, language, file), "utf8")),
    ),
  );
const english = messagesOf("en");

/** What reads the same in both: arguments with marks between them. */
const ALIKE = [
  "ask.and",
  "day.stretch",
  "day.stretch-in-month",
  "family-page.months",
  "family-page.numbers.video",
  "family-page.said.level",
  "family-page.strip",
  "family-story.told.sentence",
  "family.kept.line",
  "family.practice.day",
  "family.practice.nothing",
  "number.plus-minus",
  "unit.deg.with",
  "unit.pct-span.with",
  "unit.pct-stance.with",
];

type Ast = ReturnType<IntlMessageFormat["getAst"]>;

/** The arguments of a message with what each chooses among, `other` apart: `{videos, select, no {…}}` is `videos:no`. */
function argumentsOf(ast: Ast): readonly string[] {
  return ast.flatMap((part) => {
    if (!("options" in part)) return part.type === 0 || part.type === 7 ? [] : [part.value];
    // Of a plural each language chooses its own numbers.
    const choices = part.type === 5 ? Object.keys(part.options).filter((choice) => choice !== "other") : [];
    const within = Object.values(part.options).flatMap(({ value }) => argumentsOf(value));
    return [part.value, ...choices.map((choice) => `${part.value}:${choice}`), ...within];
  });
}
const named = (message: string): readonly string[] =>
  [...new Set(argumentsOf(new IntlMessageFormat(message, "en", undefined, { ignoreTag: true }).getAst()))].toSorted();

describe("German", () => {
  it("has every message that a family reads, and none that English hasn't", () => {
    expect(Object.keys(english).filter((key) => isForFamily(key) && !Object.hasOwn(german, key))).toEqual([]);
    expect(Object.keys(german).filter((key) => !Object.hasOwn(english, key))).toEqual([]);
    expect(Object.keys(german).filter((key) => !isForFamily(key))).toEqual([]);
  });
  it("every file is in the catalogue, and no key stands in two files", () => {
    expect(messagesOf("de")).toEqual(german);
    const keys = readdirSync(path.join(FOLDER, "de")).flatMap((file) =>
      Object.keys(JSON.parse(readFileSync(path.join(FOLDER, "de", file), "utf8"))),
    );
    expect(keys.length).toBe(Object.keys(german).length);
  });
  it("takes the arguments of the English message and knows all its choices", () => {
    const differing = Object.entries(german).filter(([key, message]) => {
      const mine = named(message);
      return named(english[key] ?? "").join() !== mine.join();
    });
    expect(differing.map(([key]) => key)).toEqual([]);
  });
  it("no message is the English one, but for those of arguments alone", () =>
    expect(
      Object.keys(german)
        .filter((key) => german[key] === english[key])
        .sort(),
    ).toEqual(ALIKE));
  it("whatever only a coach reads is English, and a message that nobody wrote throws", () => {
    expect(wordsFor("de").say("tell.lede")).toBe(wordsFor("en").say("tell.lede"));
    expect(wordsFor("de").say("family.good.heading")).toBe("Was gut ist");
    expect(() => wordsFor("de").say("no.such.key")).toThrow("no.such.key");
    expect(wordsFor("fr").locale).toBe("en");
  });
});
