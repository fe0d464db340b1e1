import { expect, vi } from "vitest";
import { type Kept, NOTHING_KEPT, type PracticeKeeper, startPracticeKeeper } from "@/app/_ui/family/keep-practice";
import { dropAll } from "@/app/_ui/family/practice-store";
import { familyKeep } from "@/lib/report/family-keep";
import { wordsFor } from "@/lib/words/catalogue";
import { LOG_SOURCE } from "../../lib/report/family-log-fixture";

// No browser here: forms are lists of entries with their events, and a server that is there or not.

/** What the page's script is told, and the key with which its form came. */
export const KEEP = familyKeep(wordsFor("en"), LOG_SOURCE);
export const KEY = "00000000-0000-4000-8000-00000000000a";

/** What a browser stores; `take` says whether it takes one more. */
export function fakeStorage(kept: Map<string, string>, take: () => "taken" | "full" = () => "taken"): Storage {
  return new Proxy({} as Storage, {
    get: (_target, name) =>
      ({
        getItem: (key: string) => kept.get(key) ?? null,
        setItem: (key: string, value: string) => {
          if (take() === "full") throw new DOMException("full", "QuotaExceededError");
          kept.set(key, value);
        },
        removeItem: (key: string) => void kept.delete(key),
      })[String(name)],
    ownKeys: () => [...kept.keys()],
    getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
  });
}

/** A form is a list of entries with its events. */
class FakeForm extends EventTarget {
  action = KEEP.action;
  dataset: { log?: string } = { log: "tap" };
  entries: [string, string][] = [];
  reset = vi.fn();
}

/** The entries of a form. */
class FakeFormData {
  constructor(readonly form: FakeForm) {}
  *[Symbol.iterator]() {
    yield* this.form.entries;
  }
}

/** The part of the page around the forms. */
class FakeSection extends EventTarget {
  dataset: Record<string, string> = {};
  readonly yes = { checked: false, defaultChecked: false, value: "yes", defaultValue: "yes" };
  readonly typed = { checked: false, defaultChecked: false, value: "", defaultValue: "" };
  querySelector = () => this.yes;
  querySelectorAll = (what: string) => (what.includes("input") ? [this.yes, this.typed] : []);
}

/** As long as what was begun takes to end, without a clock that stands still. */
export const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

/** A phone with the page open, and what became of what was pressed on it. */
export class FakePhone {
  section = new FakeSection();
  readonly page = new EventTarget();
  readonly stored = new Map<string, string>();
  server: "there" | "away" | "full" | "dead" = "there";
  readonly sent: URLSearchParams[] = [];
  /** Why the server refuses what is sent; empty: it doesn't. */
  refuses: (fields: URLSearchParams) => string = () => "";
  readonly went: string[] = [];
  /** What stands in the page's place once it may be shown no more. */
  shown: readonly string[] | null = null;
  kept: Kept = NOTHING_KEPT;
  /** The page's own running time, in milliseconds. */
  now = 1000;
  readonly #keepers: PracticeKeeper[] = [];

  constructor() {
    vi.stubGlobal("window", this.page);
    vi.stubGlobal("navigator", Object.defineProperty({}, "onLine", { get: () => this.server !== "away" }));
    vi.stubGlobal("performance", { now: () => this.now });
    vi.stubGlobal("location", {
      ...{ href: "https://range.example/family/page", pathname: "/family/page", search: "" },
      assign: (to: URL) => this.went.push(to.pathname + to.search + to.hash),
      reload: () => this.went.push("reload"),
    });
    const main = {
      replaceChildren: (...pieces: { readonly textContent: string }[]) => {
        this.shown = pieces.map(({ textContent }) => textContent);
      },
    };
    const around = {
      visibilityState: "visible",
      createElement: () => ({ textContent: "" }),
      querySelector: () => main,
    };
    vi.stubGlobal("document", Object.assign(new EventTarget(), around));
    vi.stubGlobal("HTMLButtonElement", class {});
    vi.stubGlobal("FormData", FakeFormData);
    vi.stubGlobal("localStorage", fakeStorage(this.stored));
    vi.stubGlobal("fetch", async (_action: string, { body }: { readonly body: URLSearchParams }) => this.#answer(body));
  }

  #answer(body: URLSearchParams) {
    if (this.server === "away") throw new TypeError("Failed to fetch");
    if (this.server !== "there") return { ok: false, status: this.server === "dead" ? 404 : 507 };
    this.sent.push(body);
    const why = this.refuses(body);
    const outcome = why !== "" ? "refused" : body.get("hurts") === "yes" ? "hurts" : "logged";
    return { ok: true, status: 200, json: async () => ({ outcome, why, to: `/family/page?done=${outcome}` }) };
  }

  async start(): Promise<PracticeKeeper> {
    const keeper = startPracticeKeeper(this.section as unknown as HTMLElement, KEEP, (told) => {
      this.kept = told;
    });
    this.#keepers.push(keeper);
    await settle();
    return keeper;
  }

  /** The page made anew, as after an opening. */
  openAgain(): Promise<PracticeKeeper> {
    this.section = new FakeSection();
    return this.start();
  }

  /** Sends a form; `log` null: one that logs nothing. */
  async press(fields: Readonly<Record<string, string>>, log: string | null = "tap"): Promise<FakeForm> {
    const form = new FakeForm();
    form.dataset = log === null ? {} : { log };
    form.entries = Object.entries({ key: KEY, day: "2026-03-01", ...fields });
    const event = Object.assign(new Event("submit", { cancelable: true }), { submitter: null });
    Object.defineProperty(event, "target", { value: form });
    this.section.dispatchEvent(event);
    expect(event.defaultPrevented).toBe(true);
    await settle();
    return form;
  }

  /** Leaves nothing of this phone to the next one. */
  away(): void {
    for (const keeper of this.#keepers) keeper.stop();
    dropAll("page");
    vi.unstubAllGlobals();
  }
}
