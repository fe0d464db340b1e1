import type { Archive } from "@/lib/domain/archive";
import { alias, ofAll } from "./archive-of-student";
import { type ArchiveTable, table } from "./archive-table";

function decisionTable(archive: Archive): ArchiveTable {
  const drills = new Map(archive.rules.drills.map((drill) => [drill.id, drill.name]));
  const decisions = ofAll(archive, ({ assignments }) =>
    assignments.flatMap((given) => given.decisions.map((decided) => ({ given, decided }))),
  );
  return table("drill-decisions", decisions, {
    student: alias,
    drill: ({ row }) => drills.get(row.given.drillId) ?? null,
    decision: ({ row }) => row.decided.decision,
    why: ({ row }) => row.decided.why,
    date: ({ row }) => row.decided.day,
    "measured again before": ({ row }) => row.decided.remeasureWas,
    who: ({ row }) => row.decided.who,
    entered: ({ row }) => row.decided.recordedAt,
  });
}

/** What was decided about drills, put in hand, told to be filmed, and the rules of when a fundamental is owned. */
export function planTables(archive: Archive): ArchiveTable[] {
  return [
    decisionTable(archive),
    table(
      "priorities",
      ofAll(archive, (student) => student.priorities),
      {
        student: alias,
        "club group": ({ row }) => row.clubGroup,
        "put in hand": ({ row }) => row.fundamentalId,
        reason: ({ row }) => row.reason,
        date: ({ row }) => row.day,
        who: ({ row }) => row.who,
        entered: ({ row }) => row.recordedAt,
      },
    ),
    table(
      "film-plans",
      ofAll(archive, (student) => student.filmPlans),
      {
        student: alias,
        "club group": ({ row }) => row.clubGroup,
        date: ({ row }) => row.madeOn,
        "promised by": ({ row }) => row.dueOn,
        plan: ({ row }) => row.body,
        reminded: ({ row }) => row.remindedAt,
        who: ({ row }) => row.who,
        entered: ({ row }) => row.recordedAt,
        "taken back": ({ row }) => row.voidedAt,
      },
    ),
    table("owning-rules", archive.rules.owningRules, {
      number: (rule) => rule.number,
      date: (rule) => rule.fromDay,
      sessions: (rule) => rule.sessions,
      "span days": (rule) => rule.spanDays,
      "rest days": (rule) => rule.restDays,
      share: (rule) => rule.share,
      "share low": (rule) => rule.shareLow,
      who: (rule) => rule.who,
      why: (rule) => rule.why,
      entered: (rule) => rule.recordedAt,
    }),
  ];
}
