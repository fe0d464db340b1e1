import { describe, expect, test } from "vitest";
import { readPreference } from "@/db/read/preferences";
import { insertPreference } from "@/db/write/preferences";
import { academyScope, openAcademy } from "../academy-fixture";

describe("what a viewer prefers", () => {
  test("the last said under a name holds; another viewer, name or academy has said nothing", async () => {
    const db = await openAcademy();
    expect(readPreference(db, academyScope(), "Wren", "grid-letters")).toBeUndefined();
    insertPreference(db, academyScope(), { viewer: "Wren", name: "grid-letters", value: "off" });
    insertPreference(db, academyScope(), { viewer: "Wren", name: "grid-letters", value: "on" });
    insertPreference(db, academyScope("a2"), { viewer: "Wren", name: "grid-letters", value: "off" });
    expect(readPreference(db, academyScope(), "Wren", "grid-letters")).toBe("on");
    expect(readPreference(db, academyScope("a2"), "Wren", "grid-letters")).toBe("off");
    expect(readPreference(db, academyScope(), "Lark", "grid-letters")).toBeUndefined();
    expect(readPreference(db, academyScope(), "Wren", "grid-arrangement")).toBeUndefined();
  });
});
