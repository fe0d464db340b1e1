import { createElement, type ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { Import } from "@/app/_ui/import/import";
import type { ImportPage } from "@/lib/report/form-model";
import { countOf } from "./made-season-chart";

const draw = (element: ReactElement) => renderToStaticMarkup(element);

const PREVIEW: ImportPage = {
  title: "1 of 3 rows",
  lede: "Nothing is saved yet.",
  upload: null,
  progress: null,
  done: null,
  preview: {
    draftId: "draft-1",
    columns: {
      margin: "The sheet",
      explains: "",
      heading: "One column",
      rowLabel: "Row",
      head: [{ theirs: "hinge", ours: "Wrist hinge", unit: "degrees" }],
      rows: [
        { number: 2, cells: [{ text: "8o", mark: 1 }] },
        { number: 9, cells: [{ text: "NaN", mark: 2 }] },
      ],
      gap: "⋮",
    },
    source: null,
    mapping: {
      margin: "Columns",
      heading: "Change a column",
      explains: "",
      columns: [
        {
          place: 1,
          heading: "Column 1",
          sample: "",
          meaning: {
            name: "answer:map:1",
            label: "is",
            value: "fundamental:hinge",
            groups: [{ label: "", options: [{ value: "fundamental:hinge", label: "Wrist hinge" }] }],
          },
          unit: null,
        },
      ],
      more: "",
      submit: "Read anew",
    },
    questions: {
      margin: "Questions",
      explains: "",
      heading: "One question",
      columns: ["Question", "Why", "Answer"],
      items: [
        {
          id: "digits",
          number: 1,
          heading: "Letters in place of digits?",
          rows: "row 2",
          why: "It may be 80.",
          name: "answer:digits",
          value: "out",
          options: [
            { value: "read", label: "Read as 80", text: { name: "answer-read:digits", label: "Value", value: "80" } },
            { value: "out", label: "Leave out", text: null },
          ],
        },
      ],
      submit: "Keep the answers",
    },
    issues: { margin: "Out", heading: "One problem", items: ["Row 9: not a value."], more: "" },
    notes: null,
    saved: {
      margin: "Saved",
      heading: "One row",
      fates: "One row is ready.",
      all: null,
      lines: ["Dot: one session"],
      submit: "Import 1 row",
      drop: "Drop the file",
      rejected: { href: "/rest", label: "The others" },
    },
  },
};

describe("the preview of an import", () => {
  const markup = draw(createElement(Import, { model: PREVIEW, action: async () => {} }));

  test("is one form that carries its draft, with a button each for answering, importing and dropping", () => {
    expect(countOf(markup, /<form/g)).toBe(1);
    expect(markup).toContain('<input type="hidden" name="draftId" value="draft-1"/>');
    const buttons = [...markup.matchAll(/<button (?=[^>]*name="intent")[^>]*value="(\w+)"/g)];
    // Enter in a field presses the first one: it must be harmless.
    expect(buttons[0]?.[1]).toBe("columns");
    expect(buttons.map(([, value]) => value).sort()).toEqual(["answer", "columns", "drop", "import"]);
  });

  test("a question is a group of choices under its name, the standing answer chosen, a field beside its choice", () => {
    expect(countOf(markup, /<fieldset/g)).toBe(1);
    expect(countOf(markup, /type="radio" name="answer:digits"/g)).toBe(2);
    expect(markup).toMatch(/<input type="radio" name="answer:digits" checked="" value="out"\/>|value="out" checked=""/);
    expect(markup).toContain('name="answer-read:digits" value="80"');
  });

  test("marked cells carry the number under which they are asked about or refused: 1 question, so the problem is 2", () => {
    expect([...markup.matchAll(/<sup>(\d+)<\/sup>/g)].map(([, number]) => number)).toEqual(["1", "2"]);
    expect(markup).toMatch(/<li><span[^>]*>2 <\/span>Row 9: not a value\.<\/li>/);
  });

  test("without a sheet that can be saved there is no button to import", () => {
    const preview = PREVIEW.preview && { ...PREVIEW.preview, saved: { ...PREVIEW.preview.saved, submit: null } };
    const refused = draw(createElement(Import, { model: { ...PREVIEW, preview }, action: async () => {} }));
    expect(refused).not.toContain('value="import"');
  });
});
