import { describe, expect, test } from "vitest";
import { readNoteCodings } from "@/db/read/note-codings";
import { insertNoteCoding } from "@/db/write/note-codings";
import { codingsInForce, type PhraseCoding } from "@/lib/domain/phrase-coding";
import { academyScope, NOW, openAcademy } from "../academy-fixture";

const said = (phrase: string, coding: PhraseCoding) => ({ phrase, coding, who: "Coach", recordedAt: NOW });

describe("codings of phrases", () => {
  test("each is kept in order, the latest of a phrase holds, and the same again writes nothing", async () => {
    const db = await openAcademy();
    const say = (phrase: string, coding: PhraseCoding) => insertNoteCoding(db, academyScope(), said(phrase, coding));
    expect(say("# thin", { as: "nothing" })).toBe("recorded");
    expect(say("# thin", { as: "nothing" })).toBe("unchanged");
    expect(say("heavy", { as: "as-read" })).toBe("unchanged");
    expect(say("# thin", { as: "strike", kind: "toe" })).toBe("recorded");
    const rows = readNoteCodings(db, academyScope());
    expect(rows.map((row) => row.coding.as)).toEqual(["nothing", "strike"]);
    expect(codingsInForce(rows)).toEqual([said("# thin", { as: "strike", kind: "toe" })]);
    expect(say("# thin", { as: "as-read" })).toBe("recorded");
    expect(codingsInForce(readNoteCodings(db, academyScope()))).toEqual([]);
    expect(readNoteCodings(db, academyScope())).toHaveLength(3);
  });
});
