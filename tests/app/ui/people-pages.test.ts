import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { loadAccount } from "@/app/_server/people/load-account";
import { loadCharges } from "@/app/_server/people/load-charges";
import { loadColleague } from "@/app/_server/people/load-colleague";
import { loadPeople } from "@/app/_server/people/load-people";
import { loadSecondStep } from "@/app/_server/people/load-second-step";
import { beginSecondStep } from "@/app/_server/people/second-step-desk";
import { People } from "@/app/_ui/people/people";
import type { PeoplePage } from "@/lib/report/people-model";
import { formOf } from "../server/first-student";
import { addTo, inviteBo } from "../server/inviting";
import { PASSWORD, type PeopleAcademy, startPeopleAcademy } from "../server/people-academy";

const DRAFT = "0f0f0f0f-0f0f-4f0f-8f0f-0f0f0f0f0f0f";
const ACTS = ["save", "password", "end", "begin", "prove", "drop", "revoke", "roles", "give"];

let academy: PeopleAcademy;
let pages: Readonly<Record<string, PeoplePage>>;
beforeAll(async () => {
  academy = await startPeopleAcademy();
  const ada = academy.viewer(academy.ownerId);
  const sent = await academy.signIn("ada@range.example", PASSWORD);
  const logIn = await academy.logIn(sent);
  if (!logIn) throw new Error("not logged in");
  await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
  addTo(ada, "<b>Nia</b>");
  inviteBo(ada, { name: "Cy", email: "cy@range.example" });
  const off = loadSecondStep(ada, logIn, { why: "wrong" });
  await beginSecondStep(ada, sent, formOf({ password: PASSWORD }));
  pages = {
    account: loadAccount(ada, logIn, { draft: DRAFT, why: "short", done: "saved" }),
    off,
    begun: loadSecondStep(ada, logIn, { why: "code" }),
    on: loadSecondStep(ada, { ...logIn, hasSecondStep: true }, {}),
    people: loadPeople(ada, { done: "revoked" }),
    colleague: loadColleague(ada, "bo", { why: "no-role" }),
    charges: loadCharges(ada, idOfRefused(giveStudents(ada, formOf({ coach: "bo" }))), {}),
  };
});
afterAll(() => academy.remove());

function idOfRefused(outcome: ReturnType<typeof giveStudents>): string {
  if (outcome.kind !== "refused") throw new Error("students were given");
  return outcome.draftId;
}

function draw(model: PeoplePage): string {
  const actions = Object.fromEntries(ACTS.map((act) => [act, `/sent/${act}`]));
  return renderToStaticMarkup(createElement(People, { model, actions }));
}

const all = (markup: string, pattern: RegExp): string[] => [...markup.matchAll(pattern)].map((match) => match[1] ?? "");

describe("the pages about accounts and people", () => {
  test("each has one heading of the first rank, no id twice, and a name for every field", () => {
    for (const [page, model] of Object.entries(pages)) {
      const markup = draw(model);
      expect([page, all(markup, /<(h1)[ >]/g)]).toEqual([page, ["h1"]]);
      const ids = all(markup, / id="([^"]*)"/g);
      expect([page, ids.filter((id, at) => ids.indexOf(id) !== at)]).toEqual([page, []]);
      const named = new Set(all(markup, /<label for="([^"]*)"/g));
      const fields = all(markup, /<(?:input|select)(?![^>]*type="(?:hidden|checkbox)")[^>]* id="([^"]*)"/g);
      expect([page, fields.filter((id) => !named.has(id))]).toEqual([page, []]);
      for (const id of all(markup, / aria-describedby="([^"]*)"/g).flatMap((list) => list.split(" ")))
        expect([page, id, ids.includes(id)]).toEqual([page, id, true]);
    }
  });

  test("a refusal is said beside its form, in the page that a browser without scripts gets", () => {
    for (const page of ["account", "off", "begun", "colleague", "charges"])
      expect([page, all(draw(pages[page] as PeoplePage), /(role="alert")/g).length]).toEqual([page, 1]);
    expect(draw(pages.people as PeoplePage)).toContain('role="status"');
  });

  test("no password stands in a page, names are text, and only the giving of students names one", () => {
    for (const [page, model] of Object.entries(pages)) {
      const markup = draw(model);
      expect([page, markup.includes(PASSWORD)]).toEqual([page, false]);
      expect([page, markup.includes("<b>Nia")]).toEqual([page, false]);
      expect([page, markup.includes("Nia")]).toEqual([page, page === "charges"]);
    }
  });

  test("the secret stands as letters and as a picture with a name", () => {
    const markup = draw(pages.begun as PeoplePage);
    expect(all(markup, /<code>([A-Z2-7 ]+)<\/code>/g)).toHaveLength(1);
    expect(markup).toMatch(/<svg[^>]*role="img"[^>]*aria-label="Picture for your code program/);
  });
});
