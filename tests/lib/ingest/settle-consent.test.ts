import { describe, expect, it } from "vitest";
import type { KnownStudent } from "@/lib/ingest/import-preview";
import { BEA, codes, NO_CONSENT, planLines, readFile, sayAll, silentRows } from "./import-setup";

const file = "student,date,club,swing,hinge\nBea,2026-03-08,7-iron,1,66\nUma,2026-03-08,7-iron,1,67\n";
const uma = (consent: KnownStudent["consent"]) => ({ students: [BEA, { ...NO_CONSENT, consent }] });

describe("a student's rows in a file", () => {
  it("come in with a consent in force", () => expect(planLines(readFile(file, {}, uma("given")))).toHaveLength(2));

  it.each(["lapsed", "withdrawn", "own-age", "not-yet"] as const)(
    "are set aside where the consent is %s, with what to do, and nobody else's are",
    (consent) => {
      const preview = readFile(
        file,
        { "answer:consent:s4": "on-paper", "answer-givenBy:consent:s4": "x" },
        uma(consent),
      );
      expect(codes(preview.issues)).toEqual([`consent-${consent}`]);
      expect(preview.issues[0]).toMatchObject({ rows: [3], mend: "consent-anew" });
      expect(preview.questions).toEqual([]);
      expect(preview.consents).toEqual([]);
      expect(planLines(preview)).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66"]);
      expect(preview.restRows).toEqual([3]);
      expect(silentRows(preview)).toEqual([]);
      expect(sayAll(preview).join(" ")).toMatch(/Enter a consent on the student’s own page/);
    },
  );

  it("wait where there never was one, until somebody says who gave it", () => {
    expect(readFile(file, {}, uma("none")).waitingRows).toEqual([3]);
    const answered = { "answer:consent:s4": "on-paper", "answer-givenBy:consent:s4": "father" };
    expect(readFile(file, answered, uma("none")).rowsReady).toBe(2);
    expect(readFile(file, { "answer:consent:s4": "on-paper" }, uma("none")).rowsReady).toBe(1);
  });
});
