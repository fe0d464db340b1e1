import { createHash } from "node:crypto";
import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { contentPolicy } from "@/app/_server/door/security-headers";
import { deadFamilyPage } from "@/app/_server/family/dead-page";
import { wordsFor } from "@/lib/words/catalogue";

const page = deadFamilyPage(wordsFor("en"));
const script = /<script>([\s\S]*?)<\/script>/.exec(page)?.[1] ?? "";
const box = /<p id="kept" hidden data-minutes="([^"]*)" data-balls="([^"]*)">([^<]*)<\/p>/.exec(page);

const LOG = { key: "k", day: "2026-03-01", minutes: "10", balls: "", felt: "hard", hurts: "no" };

/** What the page that opens nothing says and leaves behind in a browser. */
function open(pathname: string, kept: Map<string, string>) {
  const shown = {
    ...{ textContent: box?.[3] ?? "", hidden: true },
    dataset: { minutes: box?.[1] ?? "", balls: box?.[2] ?? "" },
  };
  const localStorage = new Proxy(
    {},
    {
      get: (_target, name) =>
        ({
          getItem: (key: string) => kept.get(key) ?? null,
          removeItem: (key: string) => void kept.delete(key),
        })[String(name)],
      ownKeys: () => [...kept.keys()],
      getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
    },
  );
  const pain = { hidden: true };
  const document = { getElementById: (id: string) => (id === "kept" ? shown : pain) };
  runInNewContext(script, { location: { pathname }, document, localStorage });
  return { hidden: shown.hidden, pain: pain.hidden, said: shown.textContent, left: [...kept.keys()] };
}

describe("the page of a link that opens nothing", () => {
  it("takes out what the phone kept for it, says what it was, and leaves what other pages keep", () => {
    const kept = new Map([
      ["proofband-practice p1 a", JSON.stringify(LOG)],
      ["proofband-practice p1 b", JSON.stringify({ ...LOG, day: "2026-02-28", minutes: "", balls: "30" })],
      ["proofband-practice p1 ask", "ask"],
      ["proofband-practice p1 c", "{"],
      ["proofband-practice p12 a", JSON.stringify(LOG)],
      ["proofband-unsent-d1", "{}"],
    ]);
    const after = open("/family/p1", kept);
    expect([after.hidden, after.pain]).toEqual([false, false]);
    expect(page).toMatch(/<p id="kept-pain" hidden>[^<]*Your coach does not know it yet\.<\/p>/);
    expect(after.said).toMatch(/gone from the phone now: 2026-02-28: 30 balls; 2026-03-01: 10 min$/);
    expect(after.left).toEqual(["proofband-practice p12 a", "proofband-unsent-d1"]);
  });

  it("does so where a press led to it, and says nothing where nothing was kept", () => {
    const kept = new Map([["proofband-practice p1 a", JSON.stringify(LOG)]]);
    expect(open("/api/family/p1/practice", kept)).toMatchObject({ hidden: false, pain: true, left: [] });
    for (const pathname of ["/family/p1", "/family/open/secret", "/family", "/"])
      expect([pathname, open(pathname, new Map([["proofband-practice p2 a", "{}"]]))]).toEqual([
        pathname,
        { hidden: true, pain: true, said: box?.[3], left: ["proofband-practice p2 a"] },
      ]);
  });

  it("runs by its hash alone: the policy of every page names it, and it is one text for every page", () => {
    const hash = createHash("sha256").update(script).digest("base64");
    expect(script.length).toBeGreaterThan(100);
    expect(contentPolicy("n", "production")).toContain(`script-src 'self' 'nonce-n' 'sha256-${hash}' 'strict-dynamic'`);
    expect(/<script>([\s\S]*?)<\/script>/.exec(deadFamilyPage(wordsFor("en-XA")))?.[1]).toBe(script);
  });
});
