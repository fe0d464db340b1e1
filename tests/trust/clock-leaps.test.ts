import { describe, expect, it, vi } from "vitest";
import { IDLE_SECONDS } from "@/app/_server/access/auth";
import { findLinkOfPage } from "@/app/_server/family/find-family-link";
import { admitFamilyLink } from "@/app/_server/family-gate";
import { keepToday } from "@/app/_server/keeping/daily-job";
import { look } from "@/app/_server/keeping/keeper";
import { sayClockIsRight } from "@/app/_server/keeping/keeping-desk";
import { findLeap, latestInstant } from "@/app/_server/keeping/watch-clock";
import { insertFamilyLink } from "@/db/write/family-links";
import { share } from "../app/server/family-academy";
import { PASSWORD } from "../app/server/people-academy";
import {
  aliases,
  clockedAcademy,
  depart,
  HOUR,
  lookAt,
  runDays,
  START,
  student,
  viewer,
  withClockedAcademy,
} from "./clocked-academy";
import { countCases } from "./count-cases";

// D8: the clock goes back 2 hours, or ahead 10 years. D9: the nightly job on days of 23 and 25 hours.

const clock = countCases("D8 clock and what ends by it", 6);

withClockedAcademy();

describe("D8: a clock that leaps erases nothing that nobody has confirmed, and brings nothing back", () => {
  it.each([
    ["ahead 10 years", "2041-01-11T04:00:00.000Z"],
    ["ahead 49 hours", "2031-01-13T05:00:00.000Z"],
    ["back 3 days", "2031-01-08T03:00:00.000Z"],
  ])("%s: nothing is announced or erased until somebody says that the clock is right", async (_name, iso) => {
    depart(await student("Ari"), "2028-01-10");
    await lookAt("2031-01-11T04:00:00.000Z");
    const { db } = await viewer();
    db.sqlite.prepare("UPDATE retention_notice SET due_day = '2031-01-01'").run();
    db.sqlite.prepare("DELETE FROM preference WHERE name = 'kept-day'").run();
    await lookAt(iso);
    const from = Date.parse(iso);
    for (let day = 1; day < 4; day++) await lookAt(new Date(from + day * 24 * HOUR).toISOString());
    expect(await aliases()).toContain("Ari");
    expect(findLeap(await viewer())).not.toBeNull();
    sayClockIsRight(await viewer());
    // What was announced is read first: it stands as long as if it were announced on the day of the press.
    const day = (plus: number): string => new Date(from + (3 + plus) * 24 * HOUR).toISOString().slice(0, 10);
    await runDays(day(1), day(29));
    expect(findLeap(await viewer())).toBeNull();
    expect(await aliases()).toContain("Ari");
    await runDays(day(30), day(30));
    expect(await aliases()).not.toContain("Ari");
    clock.add();
  });

  it.each([
    ["back 2 hours", 2 * HOUR],
    ["ahead 10 years and back", 10 * 365.25 * 24 * HOUR],
  ])("%s: a family's link that had ended opens nothing again", async (_name, by) => {
    await lookAt("2031-01-10T12:30:00.000Z");
    const ari = await student("Ari");
    share(ari);
    const end = "2031-01-10T12:45:00.000Z";
    insertFamilyLink(ari.db, ari.student, {
      ...{ id: "ends", tokenHash: "ends", label: "mother", who: "Ada", expiresAt: end },
      madeAt: "2031-01-10T12:00:00.000Z",
    });
    const opens = async (): Promise<boolean> => {
      const found = await findLinkOfPage("ends");
      return found !== null && admitFamilyLink(found, { locale: null }) !== null;
    };
    expect(await opens()).toBe(true);
    await lookAt(new Date(Date.parse("2031-01-10T12:40:00.000Z") + by).toISOString());
    expect(latestInstant(await viewer()) > end).toBe(true);
    expect(await opens()).toBe(false);
    vi.setSystemTime(Date.parse("2031-01-10T12:40:00.000Z"));
    expect(new Date().toISOString() < end).toBe(true);
    expect(await opens()).toBe(false);
    await look(await viewer());
    expect(await opens()).toBe(false);
    clock.add();
  });

  it.each([
    ["back 2 hours", 2 * HOUR],
    ["back 10 years", 10 * 365 * 24 * HOUR],
  ])("%s: a log-in that had ended stays ended, and one can log in anew", async (_name, by) => {
    vi.setSystemTime(START);
    const sent = await clockedAcademy().signIn("ada@range.example", PASSWORD);
    expect(await clockedAcademy().logIn(sent)).not.toBeNull();
    vi.setSystemTime(START + by + IDLE_SECONDS * 1000 + HOUR);
    await look(await viewer());
    vi.setSystemTime(START + HOUR);
    expect(await clockedAcademy().logIn(sent)).toBeNull();
    await look(await viewer());
    expect(await clockedAcademy().logIn(await clockedAcademy().signIn("ada@range.example", PASSWORD))).not.toBeNull();
    clock.add();
  });
});

describe("D9: the day's work is done once a day of the academy, also on days of 23 and 25 hours", () => {
  const nights = countCases("D9 the nightly job, once a day", 50);

  it.each(["UTC", "Europe/Berlin", "America/New_York", "Asia/Kolkata", "Australia/Lord_Howe"])("%s", async (zone) => {
    const { db } = await viewer();
    db.sqlite.prepare("UPDATE academy SET zone = ?").run(zone);
    for (const from of ["2031-03-28T00:10:00.000Z", "2031-10-24T00:10:00.000Z"]) {
      db.sqlite.prepare("UPDATE academy SET clock_seen_at = ?").run(from);
      db.sqlite.prepare("DELETE FROM preference WHERE name IN ('kept-day', 'clock-leap')").run();
      const days: string[] = [];
      for (let hour = 0; hour < 6 * 24; hour++) {
        vi.setSystemTime(Date.parse(from) + hour * HOUR);
        const here = await viewer();
        if ((await keepToday(here)).kind === "done") days.push(here.today);
      }
      // Five whole days are among six, wherever the first one begins.
      expect(new Set(days).size).toBe(days.length);
      expect(days.length).toBeGreaterThanOrEqual(5);
      nights.add(5);
    }
  });
});
