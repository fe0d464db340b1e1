import type { Brief } from "@/lib/report/brief-model";

const STANDS = {
  key: "watch b/hinge/iron 2026-09-01",
  state: "stands",
  label: "Dealt with",
  name: "Dealt with: Bea",
} as const;

/** A brief in which every part of its page stands once. */
export const BRIEF: Brief = {
  next: {
    margin: "Next",
    note: "One thing",
    heading: "Open Dot",
    text: "Because",
    alters: "Pain would come first.",
    link: { href: "/students/a", label: "Dot’s season" },
    putAway: { ...STANDS, label: "Show the next" },
  },
  quiet: null,
  known: {
    margin: "What we know",
    heading: "Nine levels",
    text: "Nothing is proved yet.",
  },
  margin: "Lists",
  weeks: 6,
  lists: [
    {
      word: "watch",
      heading: "One owned fundamental to look at again",
      explains: "Early signs.",
      items: [
        {
          student: { href: "/students/b", label: "Bea" },
          fundamental: { href: "/students/b/hinge?club=iron", label: "Hinge" },
          text: "Two films below its level.",
          putAway: STANDS,
        },
      ],
      more: { href: "/students?show=watch", label: "and 7 more" },
      all: { word: "watch", label: "All away" },
      choice: { label: "Weeks", links: [{ href: "/students?weeks=8", label: "8 weeks", current: "no" }] },
    },
  ],
  aside: { href: "/students?aside=shown", label: "Two put away" },
};
