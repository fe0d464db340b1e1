import { describe, expect, it } from "vitest";
import { readAdvisoryFile, readAudit, standingOf } from "@/app/_commands/advisory-file";

// H3. The answer below has the form of npm 11's `npm audit --json`, its packages are invented.
const ANSWER = JSON.stringify({
  auditReportVersion: 2,
  vulnerabilities: {
    reed: {
      name: "reed",
      severity: "high",
      via: [{ source: 1, name: "reed", title: "Reads too far", severity: "high", range: "<1.4.2", url: "" }],
      nodes: ["node_modules/reed"],
    },
    marsh: { name: "marsh", severity: "high", via: ["reed"], nodes: ["node_modules/marsh"] },
  },
  metadata: { vulnerabilities: { total: 2 } },
});
const READS_TOO_FAR = { package: "reed", severity: "high", title: "Reads too far", range: "<1.4.2" };
const component = (name: string, version: string) => ({ name, version, sha512: "" });

describe("what npm audit answered", () => {
  it("is each warning once: of a package that depends on the one at fault there is none", () => {
    expect(readAudit(ANSWER)).toEqual([READS_TOO_FAR]);
    expect(readAudit('{"vulnerabilities":{}}')).toEqual([]);
  });

  it("a refusal, a broken answer and none are no answer", () => {
    for (const text of ['{"message":"405 Method Not Allowed","statusCode":405}', '{"error":{}}', "<html>", ""])
      expect(readAudit(text)).toBeNull();
  });
});

describe("an older answer", () => {
  const file = { askedOn: "2026-11-12", asked: ["reed@1.4.1", "sedge@2.0.0"], advisories: [READS_TOO_FAR] };

  it("holds for 14 days, and no answer is of tomorrow", () => {
    const on = (today: string) => standingOf(file, [], today);
    expect(on("2026-11-26")).toMatchObject({ ageDays: 14, tooOld: false });
    expect(on("2026-11-27")).toMatchObject({ ageDays: 15, tooOld: true });
    expect(on("2026-11-11")).toMatchObject({ ageDays: -1, tooOld: true });
  });

  it("names each package that nobody asked about, a new version too, and no warning about one that is gone", () => {
    const today = "2026-11-26";
    const same = standingOf(file, [component("reed", "1.4.1"), component("sedge", "2.0.0")], today);
    expect([same.unasked, same.advisories]).toEqual([[], [READS_TOO_FAR]]);
    const other = standingOf(file, [component("sedge", "2.0.1"), component("rush", "1.0.0")], today);
    expect([other.unasked, other.advisories]).toEqual([["rush@1.0.0", "sedge@2.0.1"], []]);
  });

  it("is read as it was written, and anything else is none", () => {
    expect(readAdvisoryFile(JSON.stringify(file))).toEqual(file);
    for (const text of ["", "{}", JSON.stringify({ ...file, askedOn: "yesterday" })])
      expect(readAdvisoryFile(text)).toBeNull();
  });
});
