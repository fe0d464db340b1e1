import {
  type OwningRule,
  owningRuleOn,
  plannedRules,
  type RecordedOwningRule,
  replacedBy,
} from "@/lib/domain/owning-rule";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayOwning } from "@/lib/words/say-owning";
import type { HappenPage, HappenPart } from "./happen-model";

/** What the page of an academy's owning rule rests on. */
export interface OwningSource {
  /** In the order of entry. */
  readonly rules: readonly RecordedOwningRule[];
  readonly builtIn: OwningRule;
  readonly today: string;
}

/** The rule of a day. */
export function owningOn({ rules, builtIn }: OwningSource, day: string): OwningRule {
  return owningRuleOn(rules, day) ?? builtIn;
}

/** From which day a rule holds; of one that never decided, which took its place. */
function sayFrom(words: Words, rules: OwningSource["rules"], rule: RecordedOwningRule): string {
  const day = sayDay(words, rule.from, "full");
  const other = replacedBy(rules, rule);
  return other === null ? day : words.say("owning.history.replaced", { day, number: other.number });
}

function historyPart(words: Words, { rules, builtIn }: OwningSource): HappenPart {
  const columns = ["number", "from", "sessions", "span", "rest", "share", "low", "why", "who"];
  const numbers = ({ sessions, spanDays, restDays, share, shareLow }: OwningRule): string[] =>
    [sessions, spanDays, restDays, Math.round(100 * share), Math.round(100 * shareLow)].map(String);
  return {
    margin: words.say("owning.history"),
    explains: "",
    heading: words.say("owning.history.heading", { rules: rules.length }),
    paragraphs: [],
    facts: [],
    table: {
      caption: words.say("owning.history.caption"),
      columns: columns.map((name) => ({
        label: words.say(`owning.history.${name}`),
        align: ["sessions", "span", "rest", "share", "low"].includes(name) ? ("end" as const) : ("start" as const),
      })),
      rows: [
        ...[...rules].reverse().map((rule) => ({
          cells: [String(rule.number), sayFrom(words, rules, rule), ...numbers(rule), rule.why, rule.who],
          tone: replacedBy(rules, rule) === null ? ("plain" as const) : ("quiet" as const),
        })),
        {
          cells: [
            words.say("owning.history.built-in"),
            words.say("owning.history.since-ever"),
            ...numbers(builtIn),
            "",
            "",
          ],
          tone: "quiet" as const,
        },
      ],
    },
    open: null,
  };
}

/** The page of an academy's owning rule: what holds, what is planned, and every rule that held before. */
export function buildOwningPage(words: Words, source: OwningSource): HappenPage {
  const { rules, today } = source;
  const now = owningRuleOn(rules, today);
  const planned = plannedRules(rules, today);
  return {
    title:
      now === null
        ? words.say("owning.title.built-in")
        : words.say("owning.title", { day: sayDay(words, now.from, "full") }),
    documentTitle: words.say("document-title", { page: words.say("owning") }),
    lede: words.say("owning.lede"),
    back: { href: "/settings", label: words.say("goals.back.settings") },
    actions: [],
    parts: [
      {
        margin: words.say("owning.now"),
        explains: words.say("owning.explains"),
        heading: words.say("owning.now.heading"),
        paragraphs: [
          sayOwning(words, owningOn(source, today)),
          ...planned.map((rule) =>
            words.say("owning.planned", { day: sayDay(words, rule.from, "full"), rule: sayOwning(words, rule) }),
          ),
          words.say("owning.rest-unknown"),
          words.say("owning.lost"),
        ],
        facts: [],
        table: null,
        open: null,
      },
      historyPart(words, source),
    ],
    cautions: [],
  };
}
