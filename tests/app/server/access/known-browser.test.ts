import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { knownCookie, knownTo, markOf } from "@/app/_server/access/known-browser";
import { dataFolderForTests } from "./data-folder";

const folder = dataFolderForTests();
beforeAll(folder.make);
afterAll(folder.remove);

describe("a browser that has logged in", () => {
  it("is known to that account, however its address is written, and to no other", () => {
    const mark = markOf("wren@demo.example");
    expect(knownTo(" Wren@demo.EXAMPLE ", mark)).toBe(mark);
    expect(knownTo("lark@demo.example", mark)).toBeNull();
  });

  it("is a stranger without a mark, and with a wrong one of any length", () => {
    const mark = markOf("wren@demo.example");
    const turned = (mark.startsWith("A") ? "B" : "A") + mark.slice(1);
    for (const wrong of [undefined, "", "x", turned, mark.slice(0, -2), mark + mark, "%", "é", "\u0000"])
      expect([wrong, knownTo("wren@demo.example", wrong)]).toEqual([wrong, null]);
  });

  it("can't pass for two: whatever is written behind the mark, it counts as the mark", () => {
    const mark = markOf("wren@demo.example");
    const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    const ends = [...alphabet].map((end) => mark.slice(0, -1) + end);
    for (const same of [`${mark}=`, `${mark}==`, ` ${mark}`, `${mark}\n`, ...ends])
      expect([null, mark]).toContain(knownTo("wren@demo.example", same));
  });

  it("shows a mark that names nobody", () => {
    expect(markOf("wren@demo.example")).toMatch(/^[\w-]{43}$/);
  });

  it("keeps it under a name of its own for each academy, bound to the host over https", () => {
    expect(knownCookie("demo", "http")).toBe("proofband-demo.known");
    expect(knownCookie("own", "https")).toBe("__Host-proofband-own.known");
  });
});
