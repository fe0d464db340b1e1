import { appendFileSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addToErasedList, erasedDigest, readErasedList } from "@/app/_server/erase/erased-list";

let folder: string;
let list: string;

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "proofband-list-"));
  list = path.join(folder, "proofband.db.erased");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function line(studentId: string, day = "2031-01-10") {
  return { student: erasedDigest({ academyId: "a1", studentId }), day, reason: "asked" } as const;
}

describe("the list of erased students", () => {
  it("names nobody, is its owner's alone, and holds each student once", () => {
    addToErasedList(list, [line("s1"), line("s2")]);
    addToErasedList(list, [line("s1", "2032-02-02")]);
    expect(statSync(list).mode & 0o777).toBe(0o600);
    const text = readFileSync(list, "utf8");
    expect(text).not.toMatch(/s1|s2|a1/);
    expect(text.trim().split("\n")).toHaveLength(2);
    expect(readErasedList(list).get(line("s1").student)?.day).toBe("2031-01-10");
  });

  it("the same student of another academy is another digest", () => {
    expect(erasedDigest({ academyId: "a1", studentId: "s1" })).not.toBe(
      erasedDigest({ academyId: "a2", studentId: "s1" }),
    );
  });

  it("passes over a line whose writing was broken off, and goes on behind it", () => {
    addToErasedList(list, [line("s1")]);
    appendFileSync(list, '{"student":"abc');
    addToErasedList(list, [line("s2")]);
    expect([...readErasedList(list).keys()].sort()).toEqual([line("s1").student, line("s2").student].sort());
  });

  it("takes back what was added, and nothing else; not where another process has added since", () => {
    addToErasedList(list, [line("s1")]);
    const takeBack = addToErasedList(list, [line("s2")]);
    takeBack();
    expect([...readErasedList(list).keys()]).toEqual([line("s1").student]);
    const late = addToErasedList(list, [line("s3")]);
    addToErasedList(list, [line("s4")]);
    late();
    expect(readErasedList(list).size).toBe(3);
  });

  it("is empty where there is none", () => {
    expect(readErasedList(list).size).toBe(0);
  });
});
