import type { RosterTools } from "@/lib/report/roster-tools-model";

/** The form above a roster, as for a page of a test. */
export const TOOLS: RosterTools = {
  action: "/students#roster",
  search: { name: "q", label: "Find", hint: "", kind: "text", value: "", options: [], required: "no", error: "" },
  submit: "Show",
  more: { summary: "Filter and sort", open: "no", fields: [] },
  hidden: [],
  state: "2 of 61 students",
  filters: [{ href: "?sort=work", label: "without hinge" }],
  filtersLabel: "Filters",
  all: { href: "?sort=work", label: "All 61" },
  kept: "",
  back: { href: "/students", label: "Back to my view" },
  keep: { label: "Keep this view", explains: "It opens like this.", query: "" },
  forget: "Forget my view",
  none: null,
};
