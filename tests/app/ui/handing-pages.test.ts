import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { handOver } from "@/app/_server/people/handing-desk";
import { loadHanding } from "@/app/_server/people/load-handing";
import { loadInherit } from "@/app/_server/people/load-inherit";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { People } from "@/app/_ui/people/people";
import { Roster } from "@/app/_ui/roster/roster";
import type { PeoplePage } from "@/lib/report/people-model";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { form } from "../server/inviting";
import { fillSeason } from "../server/reread-season";

const DRAFT = "0f0f0f0f-0f0f-4f0f-8f0f-0f0f0f0f0f0f";
const HOSTILE = "<script>alert(1)</script> & “quotes”";

let academy: HandingAcademy;
let markups: Readonly<Record<string, string>>;

function draw(model: PeoplePage): string {
  const actions = Object.fromEntries(["hand", "back", "seen", "ten"].map((act) => [act, `/sent/${act}`]));
  return renderToStaticMarkup(createElement(People, { model, actions }));
}

beforeAll(async () => {
  academy = await startHandingAcademy();
  const bo = academy.as("bo");
  fillSeason(bo, bo.student);
  const refused = handOver(bo, form({ coach: "nobody", note: HOSTILE }));
  const first = draw(loadHanding(bo, refused.kind === "refused" ? refused.draftId : DRAFT, {}));
  handOver(bo, form({ kind: "cover", coach: "cy", until: academy.later(3), note: HOSTILE }));
  const covering = draw(loadHanding(academy.as("cy"), DRAFT, {}));
  const running = draw(loadHanding(bo, DRAFT, { done: "handed" }));
  handOver(bo, form({ coach: "cy", note: HOSTILE }));
  const cy = academy.as("cy");
  const roster = await loadRoster(cy, { sort: undefined, page: undefined, done: "handed" });
  markups = {
    ...{ refused: first, covering, running },
    handed: draw(loadHanding(cy, DRAFT, { to: "bo" })),
    inherited: draw(await loadInherit(cy, { why: "none" })),
    roster: renderToStaticMarkup(
      createElement(Roster, {
        model: roster,
        seenAction: "/sent/seen",
        dealtAction: "/sent/dealt",
        viewActions: { keep: "/keep", forget: "/forget" },
      }),
    ),
  };
}, 60_000);
afterAll(() => academy.remove());

const all = (markup: string, pattern: RegExp): string[] => [...markup.matchAll(pattern)].map((match) => match[1] ?? "");

describe("the pages of handing over", () => {
  test("each has one heading of the first rank, no id twice, and a name for every field", () => {
    for (const [page, markup] of Object.entries(markups)) {
      expect([page, all(markup, /<(h1)[ >]/g)]).toEqual([page, ["h1"]]);
      const ids = all(markup, / id="([^"]*)"/g);
      expect([page, ids.filter((id, at) => ids.indexOf(id) !== at)]).toEqual([page, []]);
      const named = new Set(all(markup, /<label for="([^"]*)"/g));
      const fields = all(
        markup,
        /<(?:input|select|textarea)(?![^>]*type="(?:hidden|checkbox|radio)")[^>]* id="([^"]*)"/g,
      );
      expect([page, fields.filter((id) => !named.has(id))]).toEqual([page, []]);
      for (const id of all(markup, / aria-describedby="([^"]*)"/g).flatMap((list) => list.split(" ")))
        expect([page, id, ids.includes(id)]).toEqual([page, id, true]);
    }
  });

  test("what somebody typed stands as text, and is there after a refusal", () => {
    for (const [page, markup] of Object.entries(markups))
      expect([page, markup.includes("<script")]).toEqual([page, false]);
    for (const page of ["refused", "running", "covering", "handed", "inherited"])
      expect([page, markups[page]?.includes("&lt;script&gt;alert(1)")]).toEqual([page, true]);
  });

  test("a refusal and what was done are announced; whoever covers gets no form, whoever has them gets one", () => {
    expect(all(markups.refused ?? "", /(role="alert")/g)).toHaveLength(1);
    expect(all(markups.inherited ?? "", /(role="alert")/g)).toHaveLength(1);
    expect(markups.running).toContain('role="status"');
    expect(markups.covering).not.toContain("/sent/");
    expect(markups.running).toMatch(/\/sent\/back.*\/sent\/hand/s);
    expect(markups.handed).toMatch(/<option value="bo" selected="">/);
    expect(markups.inherited).toMatch(/\/sent\/seen.*\/sent\/ten/s);
  });

  test("the new coach's roster names the student and leads to what came", () => {
    expect(markups.roster).toContain("/handing-over/inherit");
    expect(markups.roster).toMatch(/role="status"[^>]*>It is saved/);
  });
});
