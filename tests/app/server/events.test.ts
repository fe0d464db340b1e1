import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { addEvent, changeRebaselines, moveEventBack } from "@/app/_server/season/event-desk";
import { loadEvent, loadEventForm, loadEvents } from "@/app/_server/season/load-events";
import { loadFundamentalSource } from "@/app/_server/season/load-fundamental";
import { addStudent } from "@/app/_server/season/student-desk";
import { Form } from "@/app/_ui/form/form";
import { HappenPage } from "@/app/_ui/happen/happen-page";
import { PartForm } from "@/app/_ui/happen/part-form";
import { digestTables } from "@/db/digest";
import { readEventLog } from "@/db/read/events";
import { buildSeasonChart } from "@/lib/report/build-season-chart";
import { buildTableCsv, findTable } from "@/lib/report/table-downloads";
import { wordsFor } from "@/lib/words/catalogue";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { fillSeason, filmDays } from "./reread-season";

const words = wordsFor("en");
let viewer: Viewer;
let remove: () => void;

const form = formOf;
const dot = (): StudentViewer => firstStudent(viewer);
const who = { hand: "right", birthYear: "2014", clubs: "", zone: "UTC", consentGivenBy: "a parent" };

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  await addStudent(viewer, form({ alias: "Dot", ...who, consentOnPaper: "yes" }));
  fillSeason(viewer, dot().student);
});
afterAll(() => remove());

const day = (at: number): string => filmDays(viewer)[at] ?? "";
async function record(entries: Readonly<Record<string, string>>): Promise<string> {
  const outcome = await addEvent(dot(), form(entries));
  if (outcome.kind !== "added") throw new Error(JSON.stringify(loadEventForm(dot(), outcome.draftId, {}).form));
  return outcome.eventId;
}
const hinge = () => loadFundamentalSource(dot(), "hinge", "iron");
const markupOf = (eventId: string): string => {
  const room = loadEvent(dot(), eventId, randomUUID());
  if (!room) throw new Error("no such event");
  const { page, rebaseline, back } = room;
  const forms = [
    rebaseline && createElement(PartForm, { key: "a", model: rebaseline, action: "/x" }),
    createElement(Form, { key: "b", model: back, action: "/x" }),
  ];
  return renderToStaticMarkup(createElement(HappenPage, { model: page }, forms));
};

describe("an event from its form to the chart and back", () => {
  it("a growth is drawn, keeps its height, and begins nothing anew by itself", async () => {
    const before = (await hinge()).verdict;
    const eventId = await record({ kind: "growth", day: day(4), heightCm: "151", note: "" });
    const source = await hinge();
    expect(source.verdict).toEqual(before);
    const chart = buildSeasonChart(words, { ...source, from: null });
    expect(chart.events.map((event) => event.label)).toEqual([expect.stringMatching(/^growth, /)]);
    expect(readEventLog(viewer.db, dot().student, null)[0]).toMatchObject({ who: "Coach Lark", rebaselines: [] });
    expect(markupOf(eventId)).toContain("It is drawn, and nothing begins anew");
  });

  it("says before pressing what beginning anew does, does it, says what it did; the reverse gives the very verdict back", async () => {
    const eventId = readEventLog(viewer.db, dot().student, null)[0]?.id ?? "";
    const judged = async () => {
      const { history, verdict } = await hinge();
      return { history, verdict };
    };
    const before = await judged();
    const line = /begins anew on .*: the 4 sessions before stay in the chart, unjudged, and 4 since then count\./;
    expect(markupOf(eventId)).toMatch(line);
    const without = await changeRebaselines(dot(), eventId, form({ rebaselines: "hinge" }));
    if (without.kind !== "refused") throw new Error("taken without a reason");
    expect(loadEvent(dot(), eventId, without.draftId)?.rebaseline?.parts[0]?.fields[0]?.value).toBe("hinge");
    const done = await changeRebaselines(dot(), eventId, form({ rebaselines: "hinge", why: "grew 4 cm" }));
    expect(done).toEqual({ kind: "changed" });
    const anew = await hinge();
    expect(anew.history.sessions.map((entry) => entry.apart?.kind ?? "judged")).toEqual([
      ...Array(4).fill("before"),
      ...Array(4).fill("judged"),
    ]);
    expect(markupOf(eventId)).toMatch(/One track begins anew/);
    expect(markupOf(eventId)).toContain("grew 4 cm");
    expect(await changeRebaselines(dot(), eventId, form({ why: "measured wrongly" }))).toEqual({ kind: "changed" });
    expect(await judged()).toEqual(before);
    expect(loadEvent(dot(), eventId, randomUUID())?.page.parts.at(-1)?.table?.rows).toHaveLength(2);
  });

  it("taken back it begins nothing anew and is drawn nowhere; put back, the tables hold what they held", async () => {
    const eventId = readEventLog(viewer.db, dot().student, null)[0]?.id ?? "";
    await changeRebaselines(dot(), eventId, form({ rebaselines: "hinge", why: "after all" }));
    const kept = ["event", "rebaseline_change", "height"];
    const before = [await digestTables(viewer.db, kept), (await hinge()).verdict];
    expect(await moveEventBack(dot(), eventId, "take")).toBe("updated");
    expect((await hinge()).events).toEqual([]);
    expect((await hinge()).history.begins).toBeNull();
    expect(loadEvent(dot(), eventId, randomUUID())?.rebaseline).toBeNull();
    expect(loadEvents(dot()).parts[0]?.table?.rows[0]?.tone).toBe("quiet");
    expect(await moveEventBack(dot(), eventId, "take")).toBe("unchanged");
    expect(await moveEventBack(dot(), eventId, "put")).toBe("updated");
    expect([await digestTables(viewer.db, kept), (await hinge()).verdict]).toEqual(before);
  });

  it("a wrong day is mended by an event that stands in for it and begins the same anew", async () => {
    const wrong = readEventLog(viewer.db, dot().student, null)[0]?.id ?? "";
    const { form: prefilled } = loadEventForm(dot(), randomUUID(), { instead: wrong });
    expect(prefilled.parts[0]?.fields.map(({ name, value }) => [name, value])).toEqual([
      ["day", day(4)],
      ["heightCm", "151"],
      ["note", ""],
    ]);
    const right = await record({ kind: "growth", day: day(3), heightCm: "151", note: "", instead: wrong });
    const log = readEventLog(viewer.db, dot().student, null);
    expect(log.map(({ id, voidedAt, rebaselines }) => [id, voidedAt !== null, rebaselines])).toEqual([
      [right, false, ["hinge"]],
      [wrong, true, ["hinge"]],
    ]);
    expect((await hinge()).history.begins).toBe(day(3));
    const twice = await addEvent(dot(), form({ kind: "growth", day: day(2), instead: wrong }));
    expect(twice.kind).toBe("refused");
  });

  it("of an injury a place is kept and no words, not in a refused form either; the chart doesn't say where", async () => {
    const typed = { kind: "injury", day: day(1), endDay: day(2), place: "wrist", note: "scaphoid fracture" };
    const outcome = await addEvent(dot(), form(typed));
    if (outcome.kind !== "refused") throw new Error("taken");
    const kept = viewer.db.sqlite.prepare<[], string>("SELECT group_concat(body) FROM draft").pluck().get();
    expect(kept).not.toContain("scaphoid");
    const eventId = await record({ ...typed, note: "" });
    expect(markupOf(eventId)).toContain("wrist");
    expect(markupOf(eventId)).toContain("licensed");
    const chart = buildSeasonChart(words, { ...(await hinge()), from: null });
    // The page says where; the file of its table doesn't.
    const cells = (place: "said" | "left-out") =>
      buildTableCsv(findTable(loadEvents(dot(), place), 0) ?? { caption: "", columns: [], rows: [] });
    expect(cells("said")).toContain(words.say("happen.place.wrist"));
    expect(cells("left-out")).not.toContain(words.say("happen.place.wrist"));
    expect(cells("left-out").split("\n").length).toBe(cells("said").split("\n").length);
    const pause = chart.events.find((event) => event.label.startsWith("pause, "));
    expect((pause?.to ?? 0) - (pause?.from ?? 0)).toBe(10);
    expect(JSON.stringify(chart)).not.toContain("wrist");
  });

  it("no form says a verdict", () => {
    for (const kind of ["growth", "new-club", "break", "injury", "reader-change", "season-start"]) {
      const markup = renderToStaticMarkup(
        createElement(Form, { model: loadEventForm(dot(), randomUUID(), { kind }).form, action: "/x" }),
      );
      expect(markup).not.toMatch(/Real gain|Real slip|Holding|Not settled|degrees/);
    }
  });
});
