import { describe, expect, it } from "vitest";
import type { Hand } from "@/lib/domain/handedness";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { collectIssues } from "@/lib/ingest/form-fields";
import { readCaptures } from "@/lib/ingest/parse-capture-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");

function read(entries: Readonly<Record<string, string>>, hand: Hand = "right") {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  const { issues, add } = collectIssues();
  const [facing, behind] = readCaptures(data, hand, add);
  if (!facing || !behind) throw new Error("two views");
  return { facing, behind, issues };
}

describe("what was seen, side by side of the picture", () => {
  it("right-hander facing: the target lies to the right, so a near end to the left is plus; a left-hander is the mirror image", () => {
    const seen = { "pointing.face-on": "9", "pointingSide.face-on": "left" };
    expect(read(seen).facing.seen.pointingStickLean).toBe(9);
    expect(read(seen, "left").facing.seen.pointingStickLean).toBe(-9);
  });

  it("from behind: the ball lies to a right-hander's right; a phone to the right is plus, for a left-hander minus", () => {
    const seen = { "beside.down-the-line": "30", "besideSide.down-the-line": "right" };
    expect(read(seen).behind.seen.besideHandsCm).toBe(30);
    expect(read(seen, "left").behind.seen.besideHandsCm).toBe(-30);
    expect(read({ "beside.face-on": "30", "besideSide.face-on": "right" }).facing.seen.besideHandsCm).toBeNull();
  });

  it("every field is kept as typed, blank is not looked at, 0 needs no side", () => {
    const { facing, issues } = read({
      "pointing.face-on": "0",
      "plumb.face-on": "1,5",
      "plumbSide.face-on": "right",
      "lens.face-on": "95",
      "hands.face-on": "70",
      "distance.face-on": "320",
      "frames.face-on": "60",
      "shutter.face-on": "1/500",
      "placedBy.face-on": "grandmother",
    });
    expect(issues).toEqual([]);
    expect(facing.placedBy).toBe("grandmother");
    expect(facing.seen).toEqual({
      ...NOTHING_SEEN,
      pointingStickLean: 0,
      plumbLean: -1.5,
      lensHeightCm: 95,
      handsHeightCm: 70,
      distanceCm: 320,
      framesPerSecond: 60,
      shutterPerSecond: 500,
    });
  });

  it.each([
    ["1000", 1000],
    ["1/1000", 1000],
    ["0.001", 1000],
    ["1/240 s", 240],
  ])("a shutter of %s is one part in %d", (typed, part) => {
    expect(read({ "shutter.face-on": typed }).facing.seen.shutterPerSecond).toBeCloseTo(part, 6);
  });
});

describe("what can't be is asked back with the likely mend", () => {
  it.each([
    [{ "distance.face-on": "3" }, "distance.face-on", "300"],
    [{ "distance.face-on": "3,5" }, "distance.face-on", "350"],
    [{ "lens.face-on": "1.1" }, "lens.face-on", "110"],
    [{ "hands.face-on": "0.7" }, "hands.face-on", "70"],
    [{ "beside.down-the-line": "0.3", "besideSide.down-the-line": "left" }, "beside.down-the-line", "30"],
    [{ "squareness.down-the-line": "off", "offBy.down-the-line": "0.3" }, "offBy.down-the-line", "30"],
  ])("%j looks like metres", (entries, field, mend) => {
    const { issues } = read(entries as unknown as Record<string, string>);
    expect(issues.map((issue) => [issue.field, issue.code])).toEqual([[field, "metres-for-centimetres"]]);
    expect(words.say("form.issue.metres-for-centimetres", issues[0]?.args)).toContain(mend);
  });

  it.each([
    [{ "pointing.face-on": "95", "pointingSide.face-on": "left" }, "pointing.face-on", "capture-impossible"],
    [{ "plumb.face-on": "90", "plumbSide.face-on": "left" }, "plumb.face-on", "capture-impossible"],
    [{ "across.face-on": "-4", "acrossSide.face-on": "left" }, "across.face-on", "side-for-sign"],
    [{ "pointing.face-on": "4" }, "pointingSide.face-on", "side-missing"],
    [{ "pointing.face-on": "4", "pointingSide.face-on": "up" }, "pointingSide.face-on", "not-a-choice"],
    [{ "distance.face-on": "9000" }, "distance.face-on", "capture-impossible"],
    [{ "squareness.face-on": "off", "offBy.face-on": "60" }, "offBy.face-on", "capture-impossible"],
    [{ "squareness.face-on": "off" }, "offBy.face-on", "off-by-missing"],
    [{ "shutter.face-on": "fast" }, "shutter.face-on", "not-a-shutter"],
    [{ "shutter.face-on": "1/0" }, "shutter.face-on", "not-a-shutter"],
    [{ "frames.face-on": "NaN" }, "frames.face-on", "not-a-number"],
  ])("%j", (entries, field, code) => {
    const { issues } = read(entries as unknown as Record<string, string>);
    expect(issues.map((issue) => [issue.field, issue.code])).toEqual([[field, code]]);
    for (const issue of issues) expect(words.say(`form.issue.${issue.code}`, issue.args)).toMatch(/\w/);
  });
});
