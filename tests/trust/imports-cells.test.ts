import { describe, expect, it } from "vitest";
import { planLines, readFile } from "../lib/ingest/import-setup";
import { countCases } from "./count-cases";

describe("I4: headers", () => {
  const ran = countCases("I4", 12);
  it.each([
    ["hinge,hinge", "doubled"],
    ["hinge,Wrist hinge", "doubled"],
    ["hinge,", "blank"],
    ["hinge, ", "blank"],
    ["hinge,zzz", "unknown"],
    ["hinge,__proto__", "unknown"],
    ["hinge,constructor", "unknown"],
    ["hinge,prototype", "unknown"],
    ["hinge,toString", "unknown"],
    ["hinge,hasOwnProperty", "unknown"],
    ["hinge,value", "other-form"],
    ["hinge,tilt-kept", "derived"],
  ])("%s: the second is left out in sight", (heads, why) => {
    ran.add();
    const preview = readFile(`student,date,club,swing,${heads}\nBea,2026-03-08,7-iron,1,66,99\n`);
    expect(preview.columns[5]).toMatchObject({ field: null, why });
    expect(planLines(preview)).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66"]);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });
});

describe("I5: what a cell means, a fixed table", () => {
  const ran = countCases("I5", 40);
  const read = (cell: string): number | "n/m" | string => {
    const preview = readFile(
      `student|date|club|swing|foot-line\nBea|2026-03-08|7-iron|1|"${cell}"\nBea|2026-03-08|7-iron|2|1.5\n`,
    );
    const swing = preview.plan?.sessions[0]?.session.swings.find(({ number }) => number === 1);
    if (swing) return swing.readings[0]?.value ?? "n/m";
    return (
      preview.issues[0]?.code ??
      preview.questions[0]?.code ??
      preview.notes.find(({ code }) => code === "no-reading")?.code ??
      ""
    );
  };
  it.each([
    ["", "no-reading"],
    [" ", "no-reading"],
    ["\u00a0", "no-reading"],
    ["-", "n/m"],
    ["–", "n/m"],
    ["n/m", "n/m"],
    ["not measurable", "n/m"],
    ["NaN", "not-finite"],
    ["Infinity", "not-finite"],
    ["-Infinity", "not-finite"],
    ["∞", "not-finite"],
    ["#N/A", "not-finite"],
    ["#DIV/0!", "not-finite"],
    ["#REF!", "not-finite"],
    ["#VALUE!", "not-finite"],
    ["1e400", "too-large"],
    ["-1e400", "too-large"],
    ["1e-400", "too-small"],
    ["0x10", "not-a-number"],
    ["0b1", "not-a-number"],
    ["12°", 12],
    ["12 °", 12],
    ["12 deg", 12],
    ["−3", -3],
    ["-3", -3],
    ["–3", -3],
    ["+3", 3],
    ["１２", "full-width"],
    ["-0", 0],
    ["0", 0],
    ["0.0", 0],
    ["0,0", 0],
    ["1.5e1", 15],
    ["3.", "not-a-number"],
    [".5", 0.5],
    ["5 cm", "other-unit"],
    ["5 apples", "unknown-unit"],
    ["±2", "plus-minus"],
    ["8o", "look-alike"],
    ["1,234", "comma"],
    ["1 2", "not-a-number"],
    ["--3", "not-a-number"],
    ["3-", "not-a-number"],
    ["true", "not-a-number"],
    ["null", "not-a-number"],
    ["=1+1", "not-a-number"],
    ["'-3", -3],
    ["٣", "not-a-number"],
    ["½", "not-a-number"],
    ["2026-03-08", "not-a-number"],
    ["12:30", "not-a-number"],
  ] as const)("%j is %s", (cell, meaning) => {
    ran.add();
    const found = read(cell);
    expect(Object.is(found, -0) ? "minus nought" : found).toBe(meaning);
  });
});
