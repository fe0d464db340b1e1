import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { seededUniform, startChild } from "./child";

// D9: five time zones of the machine; days of 23 and 25 hours; instants near midnight.

const SEED = 20261129;
const MACHINE_ZONES = ["UTC", "Europe/Berlin", "America/St_Johns", "Pacific/Kiritimati", "Australia/Lord_Howe"];
/** Zones of academies, each with its days of 23 and of 25 hours, or of 23.5 and 24.5. */
const TURNS: readonly [string, readonly string[]][] = [
  ["Europe/Berlin", ["2026-03-29", "2026-10-25"]],
  ["America/St_Johns", ["2026-03-08", "2026-11-01"]],
  ["Australia/Lord_Howe", ["2026-10-04", "2026-04-05"]],
  ["America/Santiago", ["2026-09-06", "2026-04-05"]],
  ["Asia/Kolkata", ["2026-03-29", "2026-12-31"]],
];
const PER_DAY = 5;
const MINUTE = 60_000;

/** Minutes by which a zone is ahead at an instant, as the zone itself names them: another way than the program's. */
function aheadAt(zone: string, instant: number): number {
  const parts = new Intl.DateTimeFormat("en", { timeZone: zone, timeZoneName: "longOffset" }).formatToParts(instant);
  const name = parts.find((part) => part.type === "timeZoneName")?.value ?? "";
  const [, sign = "+", hours = "0", minutes = "0"] = /GMT([+-])(\d\d):(\d\d)/.exec(name) ?? [];
  return (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}

function dayByOffset(zone: string, instant: string): string {
  const at = Date.parse(instant);
  return new Date(at + aheadAt(zone, at) * MINUTE).toISOString().slice(0, 10);
}

/** Within minutes of the midnight with which a day begins there, or of the one with which it ends. */
function nearMidnight(): { zone: string; instant: string }[] {
  const uniform = seededUniform(SEED);
  return TURNS.flatMap(([zone, days]) =>
    days.flatMap((day) =>
      Array.from({ length: PER_DAY }, (_, at) => {
        const midnight = Date.parse(`${day}T00:00:00Z`) + (at % 2) * 24 * 60 * MINUTE;
        const there = midnight - aheadAt(zone, midnight - aheadAt(zone, midnight) * MINUTE) * MINUTE;
        return { zone, instant: new Date(there + (uniform() - 0.5) * 8 * MINUTE).toISOString() };
      }),
    ),
  );
}

it("D9: the same date, order and verdict in whatever zone the machine stands", async () => {
  const cases = nearMidnight();
  const answers = await Promise.all(
    MACHINE_ZONES.map(async (zone) => {
      const folder = mkdtempSync(path.join(tmpdir(), "proofband-zone-"));
      const child = startChild("zone-process.ts", [JSON.stringify(cases)], { PROOFBAND_DATA: folder, TZ: zone });
      const answer = await child.saying("answer ");
      await child.ended;
      rmSync(folder, { recursive: true, force: true });
      return JSON.parse(answer.slice("answer ".length)) as {
        days: [string, number][];
        verdicts: unknown[];
        sessions: unknown[];
      };
    }),
  );
  const [first, ...others] = answers;
  for (const other of others) expect(other).toEqual(first);
  expect(first?.days.map(([day]) => day)).toEqual(cases.map(({ zone, instant }) => dayByOffset(zone, instant)));
  expect(first?.sessions.length).toBe(5);
  expect(first?.verdicts.length).toBe(2);
  console.log(`D9: ${cases.length} instants x ${MACHINE_ZONES.length} zones, seed ${SEED}`);
}, 120_000);
