import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { DRAFT_FORMS } from "@/app/_server/draft/draft-forms";
import { findUnsent, forgetUnsent, storeUnsent } from "@/app/_ui/keep/browser-store";
import type { KeepModel } from "@/lib/report/keep-model";

const AT = "2026-11-24T13:05:00.000Z";
let kept: Map<string, string>;

beforeEach(() => {
  kept = new Map();
  vi.stubGlobal(
    "localStorage",
    new Proxy({} as Storage, {
      get: (_target, name) =>
        ({
          getItem: (key: string) => kept.get(key) ?? null,
          setItem: (key: string, value: string) => void kept.set(key, value),
          removeItem: (key: string) => void kept.delete(key),
        })[String(name)],
      ownKeys: () => [...kept.keys()],
      getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
    }),
  );
});
afterEach(() => vi.unstubAllGlobals());

function keepOf(form: string, draft = "d1"): KeepModel {
  return {
    form,
    draft,
    studentId: "s1",
    of: "",
    browserKeeps: DRAFT_FORMS[form]?.browserKeeps ?? [],
  } as unknown as KeepModel;
}

describe("what a browser keeps while the server can't be reached", () => {
  it("holds the cells, the day, the group and the camera's numbers, and nothing else that was typed", () => {
    const secrets = ["Ari Lindqvist", "her knee hurts", "alignment stick", "IMG_0042.mov", "mum"];
    const [alias = "", note = "", aid = "", film = "", who = ""] = secrets;
    storeUnsent(
      keepOf("session-form"),
      [
        ["r.1.hinge", "92,5"],
        ["r.2.hinge", "n/m"],
        ["r.3.hinge", alias],
        ["day", "2026-11-24"],
        ["clubGroup", "iron"],
        ["lens.face-on", "92"],
        ["acrossSide.face-on", "left"],
        ["note", note],
        ["aid", aid],
        ["club", "7-iron"],
        ["film.face-on", film],
        ["placedBy.face-on", who],
        ["placementLabel.face-on", "garden"],
      ],
      AT,
    );
    const text = [...kept.values()].join();
    for (const secret of [...secrets, "garden", "7-iron"]) expect(text).not.toContain(secret);
    expect(findUnsent(keepOf("session-form"))[0]?.entries.map(([name]) => name)).toEqual([
      "r.1.hinge",
      "r.2.hinge",
      "day",
      "clubGroup",
      "lens.face-on",
      "acrossSide.face-on",
    ]);
  });

  it("holds nothing of a new student", () => {
    expect(
      storeUnsent(
        keepOf("student-form"),
        [
          ["alias", "Ari"],
          ["birthYear", "2014"],
        ],
        AT,
      ),
    ).toBe("nothing");
    expect(kept.size).toBe(0);
  });

  it("finds what is of the same form and student, this form's own first, and forgets what was sent", () => {
    storeUnsent(keepOf("session-form", "d2"), [["r.1.hinge", "1"]], "2026-11-25T00:00:00.000Z");
    storeUnsent(keepOf("session-form", "d1"), [["r.1.hinge", "2"]], AT);
    storeUnsent(keepOf("event-form", "d3"), [["day", "2026-11-24"]], AT);
    kept.set("proofband-unsent-torn", "{");
    expect(findUnsent(keepOf("session-form")).map(({ draft }) => draft)).toEqual(["d1", "d2"]);
    forgetUnsent("d1");
    expect(findUnsent(keepOf("session-form")).map(({ draft }) => draft)).toEqual(["d2"]);
  });

  it("goes on where a browser forbids storing", () => {
    vi.stubGlobal("localStorage", undefined);
    expect(storeUnsent(keepOf("session-form"), [["r.1.hinge", "1"]], AT)).toBe("nothing");
    expect(findUnsent(keepOf("session-form"))).toEqual([]);
    forgetUnsent("d1");
  });
});
