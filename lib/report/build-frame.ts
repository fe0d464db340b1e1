import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { LogInEndModel, LogInLeft } from "./basic-model";
import type { FrameModel } from "./page-model";

function logInWords(words: Words): LogInEndModel["words"] {
  return {
    soon: words.say("log-in.soon", { at: "{at}" }),
    latest: words.say("log-in.latest", { at: "{at}" }),
    stay: words.say("log-in.stay"),
    stays: words.say("log-in.stays", { at: "{at}" }),
    unreached: words.say("log-in.unreached", { at: "{at}" }),
    over: words.say("log-in.over"),
    signIn: words.say("draft.sign-in"),
  };
}

/** What stands around every page. */
export function buildFrame(
  words: Words,
  source: {
    readonly academyName: string;
    readonly viewer: string;
    readonly today: string;
    readonly kind: "demo" | "own";
    readonly tries: number | null;
    /** The first page of this viewer. */
    readonly home: string;
    /** Whether this viewer may open a page at all. */
    readonly opens: (page: string) => boolean;
    /** Absent: nothing to say. */
    readonly notice?: string;
    /** Absent: no log-in that ends. */
    readonly left?: LogInLeft;
  },
): FrameModel {
  return {
    product: words.say("product"),
    academyName: source.academyName,
    viewer: source.viewer,
    account: "/account",
    asOf: words.say("frame.as-of", { day: sayDay(words, source.today, "full") }),
    demo:
      source.kind === "own"
        ? null
        : {
            line: words.say("frame.demo", { day: sayDay(words, source.today, "full") }),
            about: source.tries === null ? "" : words.say("frame.demo-about", { tries: source.tries }),
            start: { href: "/start", label: words.say("frame.start-own") },
          },
    notice: source.notice ?? "",
    logIn: source.left ? { left: source.left, words: logInWords(words) } : null,
    home: source.home,
    signOut: words.say("nav.sign-out"),
    navigation: ["students", "record", "import", "academy", "people", "settings"]
      .filter((id) => source.opens(`/${id}`))
      .map((id) => ({ id, href: `/${id}`, label: words.say(`nav.${id}`) })),
    skip: words.say("frame.skip"),
    foot: source.opens("/decides") ? [{ href: "/decides", label: words.say("decides.link") }] : [],
    chartWords: {
      goalBand: words.say("chart.goal-band"),
      table: words.say("chart.table"),
      liveChart: words.say("chart.live"),
    },
  };
}
