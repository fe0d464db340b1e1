import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { AcademyPart, MonthChart } from "./academy-model";
import { type AcademySource, rosterOf } from "./academy-source";
import { provedMonths } from "./proved-months";

/** Months that a chart shows at most. Own choice: a season, and no column narrower than its count. */
const MOST_MONTHS = 12;

/** The months from one day's to another's, the earliest first; the latest twelve of them. */
export function monthsShown(from: string, to: string): readonly string[] {
  const months: string[] = [];
  let [year = 0, month = 1] = from.split("-").map(Number);
  for (let at = from.slice(0, 7); at <= to.slice(0, 7); ) {
    months.push(at);
    [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
    at = `${year}-${String(month).padStart(2, "0")}`;
  }
  return months.slice(-MOST_MONTHS);
}

/** Gains and slips that stand or stood on the roster's list, by the month from which they surely hold; earlier months than shown are left out. */
export function buildMonths(
  words: Words,
  source: AcademySource,
): {
  readonly gains: number;
  readonly slips: number;
  readonly shown: Pick<AcademyPart, "table" | "links"> & { readonly chart: MonthChart };
} {
  const months = monthsShown(source.from, source.today);
  const found = provedMonths(source.tracks).filter(({ month }) => months.includes(month));
  const count = (verdict: "gain" | "slip", month?: string): number =>
    found.filter((each) => each.verdict === verdict && (month === undefined || each.month === month)).length;
  const rows = months.map((month) => ({ month, gains: count("gain", month), slips: count("slip", month) }));
  const [gains, slips] = [count("gain"), count("slip")];
  const href = (verdict: "gain" | "slip", month: string) => rosterOf(source, { since: `${verdict}-${month}` });
  return {
    gains,
    slips,
    shown: {
      chart: {
        sentence: words.say("academy.proved.sentence", { gains, slips, months: months.length }),
        gains: words.say("academy.proved.gains"),
        slips: words.say("academy.proved.slips"),
        months: rows.map((row) => ({ ...row, label: sayDay(words, `${row.month}-01`, "month") })),
        most: Math.max(1, ...rows.flatMap((row) => [row.gains, row.slips])),
      },
      table: {
        caption: words.say("academy.proved.caption"),
        columns: (["month", "gains", "slips"] as const).map((name) => ({
          label: words.say(`academy.proved.${name}`),
          align: name === "month" ? ("start" as const) : ("end" as const),
        })),
        rows: rows.map(({ month, gains: up, slips: down }) => ({
          cells: [sayDay(words, `${month}-01`, "month-year"), String(up), String(down)],
          ways: [null, up === 0 ? null : href("gain", month), down === 0 ? null : href("slip", month)],
          tone: up + down === 0 ? ("quiet" as const) : ("plain" as const),
        })),
      },
      links: [],
    },
  };
}
