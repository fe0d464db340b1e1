import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { Form } from "@/app/_ui/form/form";
import { Glyph } from "@/app/_ui/glyph/glyph";
import { Table } from "@/app/_ui/table/table";
import type { FieldModel, FormModel } from "@/lib/report/form-model";
import { countOf } from "./made-season-chart";

function madeField(name: string, more: Partial<FieldModel>): FieldModel {
  return {
    name,
    label: `Label ${name}`,
    hint: "",
    kind: "text",
    value: "",
    options: [],
    required: "no",
    error: "",
    ...more,
  };
}

function madeForm(fields: readonly FieldModel[], refusal: string): FormModel {
  return {
    heading: "A form",
    explains: "What it is for",
    parts: [{ margin: "One part", explains: "", fields }],
    grid: null,
    submit: "Save",
    refusal,
    hidden: [{ name: "asOf", value: "2026-09-12" }],
  };
}

const formMarkup = (model: FormModel) => renderToStaticMarkup(createElement(Form, { model, action: "/somewhere" }));

describe("a form", () => {
  test("goes to its path by POST without any script, hidden fields with it", () => {
    const markup = formMarkup(madeForm([madeField("alias", {})], ""));
    expect(markup).toMatch(
      /<form [^>]*action="\/somewhere"[^>]*method="post"|<form [^>]*method="post"[^>]*action="\/somewhere"/,
    );
    expect(markup).toContain('<input type="hidden" name="asOf" value="2026-09-12"/>');
  });

  test("ties what is wrong to its field, lists it on top with a way there, and keeps what was typed", () => {
    const wrong = madeField("birth", { value: "19x2", error: "A year has four digits.", hint: "Such as 2014." });
    const markup = formMarkup(madeForm([madeField("alias", {}), wrong], "Nothing was saved."));
    expect(markup).toMatch(/<input id="field-birth"[^>]*aria-describedby="hint-birth error-birth"/);
    expect(markup).toMatch(/<input id="field-birth"[^>]*aria-invalid="true"/);
    expect(markup).toContain('<p id="error-birth"');
    expect(markup).toContain('<a href="#field-birth">Label birth</a> A year has four digits.');
    expect(markup).toContain('value="19x2"');
    expect(countOf(markup, /role="alert"/g)).toBe(1);
    expect(markup).not.toContain('href="#field-alias"');
  });

  test("says nothing of a refusal before it was sent", () => {
    expect(formMarkup(madeForm([madeField("alias", {})], ""))).not.toContain('role="alert"');
  });

  test("every field has a label of its own or stands in a named group", () => {
    const options = [
      { value: "left", label: "Left" },
      { value: "right", label: "Right" },
    ];
    const markup = formMarkup(
      madeForm(
        [
          madeField("alias", {}),
          madeField("note", { kind: "textarea" }),
          madeField("hand", { kind: "radio", options, value: "right" }),
          madeField("club", { kind: "select", options }),
        ],
        "",
      ),
    );
    for (const name of ["alias", "note", "club"]) expect(markup).toContain(`<label for="field-${name}">`);
    expect(markup).toContain("<legend>Label hand</legend>");
    expect(markup).toMatch(/<input type="radio"[^>]*checked=""[^>]*value="right"/);
  });
});

describe("a table", () => {
  const markup = renderToStaticMarkup(
    createElement(Table, {
      model: {
        caption: "The readings",
        columns: [
          { label: "Session", align: "start" },
          { label: "Mean", align: "end" },
        ],
        rows: [
          { cells: ["9 Sep", "8.0"], tone: "plain" },
          { cells: ["6 Jun", "10.0"], tone: "quiet" },
        ],
      },
    }),
  );

  test("scrolls in a region that a keyboard reaches and that is named by its caption", () => {
    const [, id] = /<section[^>]*tabindex="0"[^>]*aria-labelledby="([^"]+)"/i.exec(markup) ?? [];
    expect(markup).toContain(`<caption id="${id}">The readings</caption>`);
  });

  test("names its columns and its rows", () => {
    expect(countOf(markup, /<th scope="col"/g)).toBe(2);
    expect(countOf(markup, /<th scope="row"/g)).toBe(2);
  });
});

test("the five shapes differ from each other without their colour, and are silent", () => {
  const shapes = (["gain", "slip", "moved", "steady", "open"] as const).map((glyph) =>
    renderToStaticMarkup(createElement(Glyph, { glyph })),
  );
  const outlines = shapes.map((shape) => [...shape.matchAll(/ d="([^"]*)"/g)].map(([, d]) => d).join(" "));
  expect(new Set(outlines).size).toBe(5);
  for (const shape of shapes) expect(shape).toContain('aria-hidden="true"');
});
