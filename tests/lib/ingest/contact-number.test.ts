import { describe, expect, it } from "vitest";
import { contactNumber } from "@/lib/ingest/contact-number";

const ahead = (text: string, balls: number | null = null) => contactNumber(text.split(" "), [], balls);
const behind = (text: string) => contactNumber([], text.split(" "), null);

describe("the number that belongs to a strike", () => {
  it.each([
    ["3", 3, null],
    ["2/5", 2, 5],
    ["4 of 5", 4, 5],
    ["3 out of the 5", 3, 5],
    ["a couple of", 2, null],
    ["a", 1, null],
  ])("before it, %s: %s of %s", (text, count, of) => expect(ahead(text)).toEqual({ count, of }));

  it.each(["2-3", "2 or 3", "ball 3", "5 iron", "a bit", "a touch", "", "1st"])("%j counts nothing", (text) =>
    expect(ahead(text)).toBeNull(),
  );

  it("all, every and all but one count of known balls alone", () => {
    expect(ahead("all", 5)).toEqual({ count: 5, of: 5 });
    expect(ahead("every", 5)).toEqual({ count: 5, of: 5 });
    expect(ahead("all but one", 5)).toEqual({ count: 4, of: 5 });
    expect(ahead("all but 6", 5)).toBeNull();
    for (const text of ["all", "every", "all but one"]) expect(ahead(text)).toBeNull();
  });

  it.each([
    ["x3", 3, null],
    ["3", 3, null],
    ["3 times", 3, null],
    ["twice", 2, null],
    ["2/5", 2, 5],
    ["2 of 5", 2, 5],
  ])("after it, %s: %s of %s", (text, count, of) => expect(behind(text)).toEqual({ count, of }));

  it("a number after it that counts something else is left alone", () => expect(behind("5 minutes")).toBeNull());
});
