import type { RosterPage } from "@/lib/report/page-model";
import { BRIEF } from "./brief-fixture";
import { TOOLS } from "./made-roster-tools";
import { STRIP } from "./made-strip";

const CELL = {
  fundamentalId: "foot-line",
  href: "/students/a/foot-line",
  strip: STRIP,
  position: "outside, 7.5 ± 1.8°",
  glyph: "slip" as const,
  word: "Real slip",
};

/** A roster of one student, each of its words its own. */
export const ROSTER: RosterPage = {
  title: "One slip",
  lede: "Two students.",
  departed: null,
  consents: null,
  proved: {
    margin: "Proved",
    since: "Tue 8 Sep",
    heading: "One is new",
    columns: ["Verdict", "Student", "From", "Change", "Happened", "Chance", "Band", "Season"],
    rows: [
      {
        glyph: "slip",
        word: "Real slip",
        student: "Dot",
        fundamental: "Foot line",
        href: "/students/a/foot-line",
        levels: "2.2° → 7.5°",
        size: "+5.3 ± 2.3°",
        tone: "away",
        days: "6–21 Jul",
        sure: "1 in 45",
        position: "outside",
        strip: STRIP,
      },
    ],
    empty: "Nothing new",
    download: { href: "/api/tables?of=roster&table=0", label: "Proved as CSV" },
    seen: { label: "Seen", explains: "Clears the list.", asOf: "2026-09-12" },
  },
  families: {
    margin: "Families",
    heading: "",
    more: "",
    items: [{ student: { href: "/students/b/family", label: "Bea" }, text: "the family waits for an answer" }],
  },
  brief: BRIEF,
  evidence: {
    margin: "Evidence",
    explains: "In order of work.",
    heading: "Two tracks",
    key: [{ glyph: "slip", label: "Real slip 1" }],
    groups: [{ label: "Before", span: 2 }],
    columns: [
      { id: "foot-line", name: "Foot line", band: "−3 to 4°" },
      { id: "hinge", name: "Hinge", band: "85 to 95°" },
    ],
    heads: {
      student: { label: "Student name", href: "/students?sort=name", sorted: "ascending", explains: "put by name" },
      inHand: { label: "In hand", href: "/students?sort=work", sorted: null, explains: "put by need" },
      last: { label: "Last", href: "/students?sort=last", sorted: null, explains: "put by last film" },
    },
    contactLabel: "Solid",
    notMeasured: "not measured",
    rows: [
      {
        studentId: "a",
        href: "/students/a",
        alias: "Dot",
        detail: "10, right",
        inHand: { name: "Foot line", position: "outside, 7.5 ± 1.8°", glyph: "slip", word: "Real slip" },
        cells: [CELL, null],
        places: "One outside",
        contact: "9 of 20",
        lastSession: "9 Sep",
        away: "away since July",
      },
    ],
    download: { href: "/api/roster/csv", label: "CSV" },
    sort: { label: "Sort", links: [{ href: "?sort=name", label: "by name", current: "yes" }] },
    pages: {
      label: "Pages",
      links: [{ href: "?page=1", label: "1", current: "yes" }],
      state: "Students 1 to 60 of 61",
      before: null,
      next: { href: "?page=2", label: "Next page" },
    },
    tools: TOOLS,
    skip: { href: "#roster", label: "To the students" },
  },
  settle: {
    margin: "Settle",
    heading: "One question",
    items: [{ student: "Eli", text: "Two films", href: "/students/e" }],
    more: "and 4 more questions",
  },
  start: null,
};
