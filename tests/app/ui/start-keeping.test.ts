import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { askToHand } from "@/app/_ui/keep/listen-to-form";
import { startKeeping } from "@/app/_ui/keep/start-keeping";
import type { KeepModel } from "@/lib/report/keep-model";
import { FakeButton, FakeForm } from "./fake-form";

// No browser here: a form is a list of entries with its events, and what a page sends on while it goes is heard.

interface Sent {
  readonly entries: readonly (readonly [string, string])[];
  readonly changed?: readonly string[];
  readonly turn: number;
}

/** More than a browser sends on. */
const MOST = 64 * 1024;

let form: FakeForm;
let page: EventTarget;
let kept: Map<string, string>;
let beacons: Sent[];
let sendings: Sent[];
let answers: ("kept" | "refused" | "slow-down" | "silent" | "slow")[];
let asked = 0;

beforeEach(() => {
  vi.useFakeTimers();
  form = new FakeForm();
  page = new EventTarget();
  kept = new Map();
  beacons = [];
  sendings = [];
  answers = [];
  vi.stubGlobal("window", page);
  vi.stubGlobal("document", Object.assign(new EventTarget(), { visibilityState: "visible" }));
  vi.stubGlobal("HTMLInputElement", class {});
  vi.stubGlobal("HTMLSelectElement", class {});
  vi.stubGlobal("HTMLButtonElement", FakeButton);
  vi.stubGlobal(
    "FormData",
    class {
      *[Symbol.iterator]() {
        yield* form.entries;
      }
    },
  );
  vi.stubGlobal("localStorage", {
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
  vi.stubGlobal(
    "Blob",
    class {
      readonly size: number;
      constructor(readonly parts: string[]) {
        this.size = parts.join("").length;
      }
    },
  );
  vi.stubGlobal("navigator", {
    sendBeacon(_door: string, { size, parts }: { readonly size: number; readonly parts: string[] }) {
      if (size > MOST) return false;
      beacons.push(JSON.parse(parts.join("")) as Sent);
      return true;
    },
  });
  vi.stubGlobal("fetch", async (_door: string, { body: text }: { readonly body: string }) => {
    asked += 1;
    sendings.push(JSON.parse(text) as Sent);
    const answer = answers.shift() ?? "kept";
    if (answer === "silent") return new Promise(() => {});
    if (answer === "slow") await new Promise((done) => setTimeout(done, 1000));
    const isKept = answer === "kept" || answer === "slow";
    const body = isKept ? { kind: "kept", version: 1, said: "Kept" } : { kind: "refused", said: "Too big" };
    const status = { kept: 200, slow: 200, refused: 413, "slow-down": 429 }[answer];
    return { status, json: async () => body };
  });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const model = (given: Partial<KeepModel> = {}): KeepModel =>
  ({
    ...{ form: "session-form", studentId: "s1", of: "", draft: "d1", version: 0, writer: "w", isOnDisk: "yes" },
    ...{ leading: ["draft"], browserKeeps: ["r.", "day"], both: null, words: {} },
    ...given,
  }) as unknown as KeepModel;

function type(name: string, value: string): void {
  form.entries = [...form.entries.filter(([each]) => each !== name), [name, value]];
  form.dispatchEvent(new Event("input"));
}
const leave = () => page.dispatchEvent(new Event("pagehide"));
const start = (given?: Partial<KeepModel>) =>
  startKeeping(form as unknown as HTMLFormElement, model(given), () => undefined);

it("sends what changed since the server last answered, however large the form is: 1 field of 90 kB", async () => {
  start();
  type("note", "x".repeat(90_000));
  await vi.advanceTimersByTimeAsync(2000);
  type("r.1.hinge", "90");
  leave();
  expect(beacons).toMatchObject([{ entries: [["r.1.hinge", "90"]], changed: ["r.1.hinge"], turn: 2 }]);
  expect(kept.size).toBe(0);
});

it("sends again by itself what was too many requests at once, and not what can't be kept", async () => {
  const sent = async (answer: "slow-down" | "refused") => {
    answers = [answer];
    const before = asked;
    form = new FakeForm();
    start();
    type("r.1.hinge", answer);
    await vi.advanceTimersByTimeAsync(90_000);
    return asked - before;
  };
  expect(await sent("refused")).toBe(1);
  expect(await sent("slow-down")).toBeGreaterThan(1);
});

it("sends once more what is on its way, and nothing where all is kept or nothing was typed", async () => {
  form.entries = [["day", "2026-11-24"]];
  start({ version: 1 });
  leave();
  expect(beacons).toEqual([]);
  answers = ["silent"];
  type("r.1.hinge", "90");
  await vi.advanceTimersByTimeAsync(700);
  leave();
  expect(beacons).toMatchObject([{ entries: [["r.1.hinge", "90"]], changed: ["r.1.hinge"] }]);
});

it("sends all of a form that the server has nothing of; what a browser refuses stays in it without its notes", async () => {
  answers = ["silent"];
  start();
  type("day", "2026-11-24");
  leave();
  expect(beacons[0]).not.toHaveProperty("changed");
  type("note", `rain ${"x".repeat(90_000)}`);
  type("r.1.hinge", "90");
  leave();
  expect(beacons).toHaveLength(1);
  const [stored] = kept.values();
  expect(JSON.parse(stored ?? "{}")).toMatchObject({
    draft: "d1",
    entries: [
      ["day", "2026-11-24"],
      ["r.1.hinge", "90"],
    ],
  });
  expect(stored).not.toContain("rain");
});

it("keeps at once what only waits in memory, and sends nothing of a form that was sent and emptied", async () => {
  form.entries = [["r.1.hinge", "90"]];
  start({ version: 1, isOnDisk: "no" });
  leave();
  expect(beacons[0]?.entries).toEqual([["r.1.hinge", "90"]]);
  await vi.advanceTimersByTimeAsync(700);
  form.dispatchEvent(Object.assign(new Event("submit", { cancelable: true }), { submitter: null }));
  await vi.advanceTimersByTimeAsync(10);
  expect(form.requestSubmit).toHaveBeenCalledOnce();
  form.entries = [["r.1.hinge", ""]];
  leave();
  expect(beacons).toHaveLength(1);
});

/** Hands the form over as a button does; what arrives is noted. */
function handOver(): string[][] {
  const handed: string[][] = [];
  const note = (data: FormData) => void handed.push([...data].map(([name, value]) => `${name}=${value}`));
  expect(askToHand(form as unknown as HTMLFormElement, note)).toBe("asked");
  return handed;
}

it("hands a form over once it is kept, and nothing that waited then goes after it: neither by clock nor as the page goes", async () => {
  const keeping = start({ version: 1 });
  type("drill", "crease");
  await vi.advanceTimersByTimeAsync(300);
  const handed = handOver();
  expect(form.button.attributes.get("aria-disabled")).toBe("true");
  handOver();
  await vi.advanceTimersByTimeAsync(3000);
  expect(handed).toEqual([["drill=crease"]]);
  expect(sendings.map(({ turn }) => turn)).toEqual([1]);
  keeping.stop();
  expect(beacons).toEqual([]);
});

it("sends what was typed under a press alone when the page goes, newer than what the press kept", async () => {
  answers = ["slow"];
  const keeping = start({ version: 1 });
  type("drill", "crease");
  const handed = handOver();
  type("reps", "1");
  await vi.advanceTimersByTimeAsync(1100);
  expect(handed).toEqual([["drill=crease", "reps=1"]]);
  type("reps", "12");
  await vi.advanceTimersByTimeAsync(2000);
  expect(sendings).toHaveLength(1);
  keeping.stop();
  expect(beacons).toMatchObject([{ entries: [["reps", "12"]], changed: ["reps"], turn: 3 }]);
});

it("a keep that waits its turn is older than what the page sends on as it goes", async () => {
  answers = ["slow"];
  const keeping = start({ version: 1 });
  type("reps", "1");
  await vi.advanceTimersByTimeAsync(700);
  type("reps", "12");
  await vi.advanceTimersByTimeAsync(650);
  type("reps", "123");
  keeping.stop();
  await vi.advanceTimersByTimeAsync(3000);
  expect(beacons).toMatchObject([{ entries: [["reps", "123"]], turn: 3 }]);
  expect(sendings.map(({ turn }) => turn)).toEqual([1, 2]);
});

it("a press that comes to nothing frees its buttons and goes again; the page isn't made anew under it", async () => {
  answers = ["slow-down"];
  const keeping = start({ version: 1 });
  expect(keeping.state()).toBe("fresh");
  const press = () => form.dispatchEvent(Object.assign(new Event("submit", { cancelable: true }), { submitter: null }));
  press();
  expect(keeping.state()).toBe("begun");
  await vi.advanceTimersByTimeAsync(10);
  expect(form.button.attributes.size).toBe(0);
  expect(form.requestSubmit).not.toHaveBeenCalled();
  press();
  await vi.advanceTimersByTimeAsync(10);
  expect(form.requestSubmit).toHaveBeenCalledOnce();
  press();
  await vi.advanceTimersByTimeAsync(10);
  expect(form.requestSubmit).toHaveBeenCalledOnce();
  await vi.advanceTimersByTimeAsync(5000);
  expect(form.button.attributes.size).toBe(0);
});
