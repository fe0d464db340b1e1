import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import type { Words } from "@/lib/words/catalogue";
import type { TableModel } from "./basic-model";

/** What puts a student on a list of the roster's brief, on the page that says what decides. */
export interface DecidesBrief {
  readonly margin: string;
  readonly heading: string;
  readonly table: TableModel;
  readonly paragraphs: readonly string[];
}

const NAMES = Object.keys(BRIEF_THRESHOLDS) as readonly (keyof typeof BRIEF_THRESHOLDS)[];

/** Every threshold of the brief, a row each: which list, from when, why, and who says so. */
export function buildDecidesBrief(words: Words): DecidesBrief {
  return {
    margin: words.say("decides.brief"),
    heading: words.say("decides.brief.heading"),
    table: {
      caption: words.say("decides.brief.caption"),
      columns: ["list", "from", "reason", "source"].map((column) => ({
        label: words.say(`decides.brief.column.${column}`),
        align: "start" as const,
      })),
      rows: NAMES.map((name) => ({
        cells: [
          words.say(`decides.brief.${name}`),
          words.say(`decides.brief.${name}.from`, { value: BRIEF_THRESHOLDS[name].value }),
          words.say(`decides.brief.${name}.reason`),
          words.say(`decides.brief.${name}.source`),
        ],
        tone: "plain" as const,
      })),
    },
    paragraphs: [words.say("decides.brief.1")],
  };
}
