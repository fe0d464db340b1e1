import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { addToErasedList, erasedDigest, readErasedList } from "@/app/_server/erase/erased-list";

/** What the disk does to the next lines: takes a whole line and a part of the next, or takes all and can't keep them. */
let disk: "well" | "full" | "unsynced" = "well";
const failed = (code: string): Error => Object.assign(new Error(code), { code });

vi.mock("node:fs", async (load) => {
  const fs = await load<typeof import("node:fs")>();
  return {
    ...fs,
    appendFileSync(handle: number, text: string) {
      if (disk !== "full") return fs.appendFileSync(handle, text);
      fs.appendFileSync(handle, text.slice(0, text.indexOf("\n") + 20));
      throw failed("ENOSPC");
    },
    fsyncSync(handle: number) {
      const is = disk;
      // Once: what puts the list back can be kept.
      if (is === "unsynced") disk = "well";
      if (is === "unsynced") throw failed("EIO");
      return fs.fsyncSync(handle);
    },
  };
});

let folder: string;
let list: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "proofband-list-"));
  list = path.join(folder, "proofband.db.erased");
});
afterEach(() => {
  disk = "well";
  rmSync(folder, { recursive: true, force: true });
});

function line(studentId: string) {
  return { student: erasedDigest({ academyId: "a1", studentId }), day: "2031-01-10", reason: "asked" } as const;
}

describe("the list of erased students on a disk that takes no more", () => {
  it.each([
    ["full", "ENOSPC"],
    ["unsynced", "EIO"],
  ] as const)("%s: says so, and holds nobody whose erasure came to nothing", (how, code) => {
    addToErasedList(list, [line("s1")]);
    const before = readFileSync(list, "utf8");
    disk = how;
    expect(() => addToErasedList(list, [line("s2"), line("s3")])).toThrow(code);
    disk = "well";
    expect(readFileSync(list, "utf8")).toBe(before);
    addToErasedList(list, [line("s3")]);
    expect([...readErasedList(list).keys()].sort()).toEqual(
      [line("s1"), line("s3")].map((each) => each.student).sort(),
    );
  });
});
