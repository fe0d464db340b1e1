import type { CalendarDay } from "@/lib/domain/calendar-day";
import { option } from "./import-log";
import { type ParsedDay, parseDay } from "./parse-day";
import { columnOf, type ImportContext, type RowDraft, setBack } from "./row-draft";

/** Finds the day of each row. The order of day and month is one question a file, unless other rows settle it. */
export function settleDays(rows: readonly RowDraft[], context: ImportContext): void {
  const { log } = context;
  const column = columnOf(context, "day");
  if (!column) {
    log.issue({ code: "no-date-column", row: null });
    for (const row of rows) row.state = "refused";
    return;
  }
  const cache = new Map<string, ParsedDay>();
  const read = rows.map((row) => {
    const text = row.cells[column.at] ?? "";
    const parsed = cache.get(text) ?? parseDay(text);
    cache.set(text, parsed);
    return { row, text: text.trim(), parsed };
  });
  const refuse = (row: RowDraft, code: string, text: string, taken = "", mend: string | null = null) => {
    log.issue({
      code,
      row: row.row,
      column: column.header,
      value: text,
      args: { taken, today: context.input.today },
      mend,
      at: column.at,
    });
    row.state = "refused";
  };
  const accept = (row: RowDraft, day: CalendarDay, text: string) => {
    if (day > context.input.today) refuse(row, "future-date", text);
    else row.day = day;
  };
  const ambiguous: { row: RowDraft; text: string; parsed: Extract<ParsedDay, { kind: "ambiguous" }> }[] = [];
  const serial: { row: RowDraft; text: string; parsed: Extract<ParsedDay, { kind: "serial" }> }[] = [];
  const orders = new Set<string>();
  for (const { row, text, parsed } of read) {
    if (parsed.kind === "blank") refuse(row, "date-missing", text);
    else if (parsed.kind === "issue")
      refuse(row, parsed.code, text, parsed.taken, parsed.taken === "" ? null : "write-date");
    else if (parsed.kind === "ambiguous") ambiguous.push({ row, text, parsed });
    else if (parsed.kind === "serial") serial.push({ row, text, parsed });
    else {
      if (parsed.order) orders.add(parsed.order);
      if (parsed.note) log.note(parsed.note, row.row, column.header, { value: text, taken: parsed.day });
      accept(row, parsed.day, text);
    }
  }
  const [first] = ambiguous;
  if (first) {
    const [only] = orders;
    const order = orders.size === 1 && only ? only : askOrder();
    for (const { row, text, parsed } of ambiguous) {
      if (order === null) setBack([row], "waiting");
      else if (order === "leave-out") {
        setBack([row], "left-out");
        log.note("left-out", row.row, column.header, { value: text });
      } else {
        const day = order === "day-first" ? parsed.dayFirst : parsed.monthFirst;
        log.note(order === "day-first" ? "read-day-first" : "read-month-first", row.row, column.header, {
          value: text,
          taken: day,
        });
        accept(row, day, text);
      }
    }
  }
  function askOrder(): string | null {
    if (!first) return null;
    const late = (kind: "dayFirst" | "monthFirst") =>
      ambiguous.filter(({ parsed }) => parsed[kind] > context.input.today).length;
    const options = [
      option("day-first", { day: first.parsed.dayFirst }),
      option("month-first", { day: first.parsed.monthFirst }),
    ];
    if (late("dayFirst") > late("monthFirst")) options.reverse();
    const answer = log.ask(
      {
        id: "date-order",
        code: orders.size > 1 ? "date-order-mixed" : "date-order",
        args: { value: first.text, dayFirst: first.parsed.dayFirst, monthFirst: first.parsed.monthFirst },
        options: [...options, option("leave-out")],
        at: column?.at,
      },
      ambiguous.map(({ row }) => row.row),
    );
    return answer?.option ?? null;
  }
  const [count] = serial;
  if (!count) return;
  const answer = log.ask(
    {
      id: "day-number",
      code: "day-number",
      args: { value: count.text },
      options: [
        option("from-1900", { day: count.parsed.from1900 }),
        option("from-1904", { day: count.parsed.from1904 }),
        option("leave-out"),
      ],
      at: column.at,
    },
    serial.map(({ row }) => row.row),
  );
  for (const { row, text, parsed } of serial) {
    if (!answer) setBack([row], "waiting");
    else if (answer.option === "leave-out") {
      setBack([row], "left-out");
      log.note("left-out", row.row, column.header, { value: text });
    } else {
      const day = answer.option === "from-1900" ? parsed.from1900 : parsed.from1904;
      log.note("read-day-number", row.row, column.header, { value: text, taken: day });
      accept(row, day, text);
    }
  }
}
