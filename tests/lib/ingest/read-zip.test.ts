import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { readZip } from "@/lib/ingest/read-zip";

const bytes = (text: string) => new TextEncoder().encode(text);
const open = (zip: Uint8Array, name: string) => {
  const opened = readZip(zip, () => true);
  if (opened.kind !== "ok") return opened.why;
  const part = opened.open(name);
  return part instanceof Uint8Array ? new TextDecoder().decode(part) : part;
};

describe("an archive", () => {
  it("gives its parts, packed or not, as they were put in", () => {
    for (const level of [0, 6, 9] as const) {
      const zip = zipSync({ "a.xml": bytes("text ".repeat(5000)), "b/c.xml": bytes("ü") }, { level });
      expect([open(zip, "a.xml"), open(zip, "b/c.xml"), open(zip, "d")]).toEqual(["text ".repeat(5000), "ü", null]);
    }
  });

  it("with something before it or behind its end is still found, or said to be broken", () => {
    const zip = zipSync({ a: bytes("x") });
    expect(open(Uint8Array.from([...zip, 0]), "a")).toBe("broken");
    expect(open(zip.slice(0, -1), "a")).toBe("broken");
    expect(open(new Uint8Array(), "a")).toBe("broken");
  });

  it("any byte of a part turned round is found by its checksum", () => {
    const zip = zipSync({ "a.xml": [bytes("0123456789"), { level: 0 }] });
    const at = Buffer.from(zip).indexOf("0123");
    for (let place = at; place < at + 10; place++)
      expect(
        open(
          zip.map((byte, index) => (index === place ? byte ^ 1 : byte)),
          "a.xml",
        ),
      ).toBe("broken");
  });

  it.each(["../a", "a/../b", "/a", "c:a", "a\\b", ""])("a part called %j is refused", (name) => {
    expect(open(zipSync({ [name]: bytes("x"), ok: bytes("y") }), "ok")).toBe("odd-names");
  });

  it("parts whose names differ in capitals alone are refused: not every program takes them for two", () => {
    expect(open(zipSync({ a: bytes("x"), A: bytes("y") }), "a")).toBe("odd-names");
  });
});
