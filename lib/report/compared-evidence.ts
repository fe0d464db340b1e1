import type { Fundamental } from "@/lib/domain/fundamental";
import type { BeforeAfterResult, Comparison, DrillResult, Estimate } from "@/lib/drills/comparison";
import { COMPARE_THRESHOLDS } from "@/lib/verdict/compare-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayNumber, saySigned } from "@/lib/words/number-words";
import { sayEffect } from "@/lib/words/say-comparison";
import { valueTicks } from "./axis";
import type { TableModel } from "./basic-model";
import type { ComparedDrillsPage, DrawnEffect } from "./compared-drills-model";
import { valueRange } from "./value-range";

type Evidence = NonNullable<ComparedDrillsPage["evidence"]>;

/** As messages choose by it. */
const AGAINST = { waiting: "waiting", "no-drill-recorded": "unrecorded", "other-drills": "others" } as const;

/** Ticks of the axis, about. */
const TICKS = 5;

function cell(words: Words, fundamental: Fundamental, effect: Estimate | null): string {
  return effect === null
    ? words.say("compared.no-figure")
    : words.say("compared.figure", sayEffect(words, fundamental, effect));
}

/** Of a drill with fewer students than any figure is shown of, not even the plain one: it would be some few people's. */
function plainOf(result: DrillResult, beforeAfter: readonly BeforeAfterResult[]): Estimate | null {
  if (result.students < COMPARE_THRESHOLDS.estimated.value) return null;
  return beforeAfter.find(({ drill }) => drill === result.drill)?.change ?? null;
}

function sayCount(words: Words, students: number): string {
  return students < COMPARE_THRESHOLDS.estimated.value
    ? words.say("compared.under", { count: COMPARE_THRESHOLDS.estimated.value })
    : String(students);
}

function saySays(words: Words, { says, students, effect, against }: DrillResult): string {
  return words.say(`compared.says.${says}`, {
    students,
    against: AGAINST[against],
    need: COMPARE_THRESHOLDS.judged.value,
    few: students < COMPARE_THRESHOLDS.estimated.value ? "yes" : "no",
    shown: effect === null ? "no" : "yes",
  });
}

function columnsOf(words: Words, columns: readonly string[]): TableModel["columns"] {
  return columns.map((column) => ({
    label: words.say(`compared.column.${column}`),
    align: ["students", "kept-of", "sessions"].includes(column) ? "end" : "start",
  }));
}

function toneOf({ says }: DrillResult): "quiet" | "plain" {
  return says === "too-few" ? "quiet" : "plain";
}

/** Every drill in the order of how many students it was given to, on one axis, with the plain figure beside it for contrast. */
export function comparedEvidence(
  words: Words,
  comparison: Comparison,
  fundamental: Fundamental,
  hrefOf: (drill: string) => string | undefined,
): Evidence {
  const { drills, beforeAfter, reference } = comparison;
  const plains = new Map(drills.map((result) => [result.drill, plainOf(result, beforeAfter)]));
  const values = drills.flatMap(({ drill, effect }) => [
    ...(effect === null ? [] : [effect.low95, effect.high95]),
    ...(plains.get(drill) ? [plains.get(drill)?.estimate ?? 0] : []),
  ]);
  const { low, high } = valueRange([0, ...values]);
  const ticks = valueTicks(low, high, TICKS, (value, decimals) => sayNumber(words, value, decimals)).map(
    ({ at }) => at,
  );
  const drawn = drills.map((result): DrawnEffect => {
    const { effect, says } = result;
    const plain = plains.get(result.drill) ?? null;
    return {
      ...{ from: low, to: high, ticks },
      effect: effect === null ? null : { low: effect.low95, value: effect.estimate, high: effect.high95 },
      look: says === "works" ? "works" : says === "too-few" ? "few" : "plain",
      plain: plain?.estimate ?? null,
      sentence: words.say("compared.drawn", {
        drill: result.drill,
        figure: cell(words, fundamental, effect),
        plain: plain === null ? "none" : sayEffect(words, fundamental, plain).size,
      }),
    };
  });
  const against = AGAINST[reference.kind === "none" ? "other-drills" : reference.kind];
  return {
    margin: words.say("compared.margin.evidence"),
    explains: words.say("compared.evidence.explains"),
    heading: words.say("compared.evidence.heading", { drills: drills.length }),
    legend: (["plain", "few", "before-after"] as const).map((look) => ({
      look,
      label: words.say(`compared.legend.${look}`, { against }),
    })),
    drawnLabel: words.say("compared.column.drawn", { against }),
    drawn,
    table: {
      caption: words.say("compared.evidence.caption", { against }),
      columns: columnsOf(words, ["drill", "effect", "students", "plain", "says"]),
      rows: drills.map((result) => ({
        ...wayTo(hrefOf(result.drill)),
        cells: [
          result.drill,
          cell(words, fundamental, result.effect),
          sayCount(words, result.students),
          cell(words, fundamental, plains.get(result.drill) ?? null),
          saySays(words, result),
        ],
        tone: toneOf(result),
      })),
    },
    details: {
      caption: words.say("compared.details.caption"),
      columns: columnsOf(words, ["drill", "kept", "kept-of", "share", "sessions"]),
      rows: drills.map((result) => ({
        cells: [
          result.drill,
          cell(words, fundamental, result.retained),
          result.retained === null ? words.say("compared.no-figure") : sayCount(words, result.retainedStudents),
          sayShareEffect(words, result.bandShare),
          result.students < COMPARE_THRESHOLDS.estimated.value
            ? words.say("compared.no-figure")
            : String(result.sessions),
        ],
        tone: toneOf(result),
      })),
    },
  };
}

function wayTo(href: string | undefined): { readonly href?: string } {
  return href === undefined ? {} : { href };
}

/** An effect on the swings inside the band, of 100. */
function sayShareEffect(words: Words, effect: Estimate | null): string {
  if (effect === null) return words.say("compared.no-figure");
  const hundred = (value: number): string => saySigned(words, Math.round(value * 100), 0);
  const between = words.say("number.range", { low: hundred(effect.low95), high: hundred(effect.high95) });
  return words.say("compared.figure", { size: hundred(effect.estimate), between });
}
