import { describe, expect, it } from "vitest";
import { fileResponse } from "@/app/_server/door/download";

describe("names of downloads", () => {
  const names = [
    "a\r\nx: y",
    'a";b',
    "../../etc",
    "..",
    "a\u202Egpj.exe",
    "ä/ö\\ü.zip",
    "\u0000",
    "",
    ".",
    "a b",
    "%0d%0a",
    "x".repeat(300),
  ];
  it.each([...names, ...names.map((name) => `proofband-${name}.zip`)])(
    "J4: %j becomes a plain name in one header",
    (name) => {
      const answer = fileResponse(name, "text/plain", "x");
      expect([...answer.headers.keys()].sort()).toEqual(["content-disposition", "content-type"]);
      expect(answer.headers.get("content-disposition")).toMatch(/^attachment; filename="[a-z0-9][a-z0-9.-]{0,99}"$/);
      expect(answer.headers.get("content-disposition")).not.toContain("..");
    },
  );
});
