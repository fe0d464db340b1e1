import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { ACCOUNT_WAIT, countTry, forgetTries, SPRAY_WAIT, waitAfter } from "@/app/_server/access/back-off";
import { type Database, IN_MEMORY, openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { countCases } from "../../../trust/count-cases";
import { dataFolderForTests } from "./data-folder";

const folder = dataFolderForTests();
const S5 = countCases("S5 (unit): tries at the log-in", 1500);
const SECOND = 1000;
const MINUTE = 60 * SECOND;
const START = Date.UTC(2031, 2, 1, 8);

let db: Database;
beforeAll(folder.make);
beforeEach(async () => {
  db = openDatabase(IN_MEMORY);
  await migrateDb(db);
});
afterAll(folder.remove);

/** Sends a try each `every` milliseconds from `from` on; the moments at which one was looked at. */
function hammer(count: number, every: number, from: number, email: (n: number) => string): number[] {
  const looked: number[] = [];
  for (let n = 0; n < count; n++) {
    const now = from + n * every;
    if (countTry(db, email(n), null, now) === 0) looked.push(now);
    S5.add();
  }
  return looked;
}

describe("the wait after wrong passwords", () => {
  it("is none for two, then 15, 30, 60 s … and never over 15 minutes", () => {
    const waits = Array.from({ length: 12 }, (_, n) => waitAfter(n + 1, ACCOUNT_WAIT) / SECOND);
    expect(waits).toEqual([0, 0, 15, 30, 60, 120, 240, 480, 900, 900, 900, 900]);
    expect(waitAfter(1_000_000, ACCOUNT_WAIT)).toBe(15 * MINUTE);
    expect(waitAfter(SPRAY_WAIT.free, SPRAY_WAIT)).toBe(5 * SECOND);
  });

  it("lets at most 10 of 200 be looked at within 15 minutes, however they are spread", () => {
    for (const every of [1, 100, 4500]) {
      const email = `spread-${every}@x.example`;
      const looked = hammer(200, every, START, () => email);
      expect([every, looked.length]).toEqual([every, every === 4500 ? 8 : looked.length]);
      expect(looked.length).toBeGreaterThanOrEqual(3);
      expect(looked.length).toBeLessThanOrEqual(10);
    }
  });

  it("goes on in the next quarter of an hour: at most 10 again, and no more than one in each later one", () => {
    const looked = hammer(800, 4500, START, () => "long@x.example");
    for (let from = START; from < START + 60 * MINUTE; from += MINUTE)
      expect(looked.filter((at) => at >= from && at < from + 15 * MINUTE).length).toBeLessThanOrEqual(10);
    expect(looked.filter((at) => at >= START + 30 * MINUTE && at < START + 45 * MINUTE).length).toBeLessThanOrEqual(1);
  });

  it("is said in whole seconds, and ends when they are over: after 3 wrong ones 15 s, at 14.999 s still 1", () => {
    for (let n = 0; n < 3; n++) expect(countTry(db, "a@x.example", null, START)).toBe(0);
    expect(countTry(db, "a@x.example", null, START)).toBe(15);
    expect(countTry(db, "a@x.example", null, START + 14_999)).toBe(1);
    expect(countTry(db, "a@x.example", null, START + 15_000)).toBe(0);
    expect(countTry(db, "a@x.example", null, START + 15_000)).toBe(30);
    S5.add(7);
  });

  it("knows an address however it is written", () => {
    for (const email of ["b@x.example", " B@X.example ", "b@X.EXAMPLE"])
      expect(countTry(db, email, null, START)).toBe(0);
    expect(countTry(db, "B@x.example", null, START)).toBe(15);
    S5.add(4);
  });

  it("begins anew a day after the last wrong one", () => {
    for (let n = 0; n < 3; n++) countTry(db, "c@x.example", null, START);
    const later = START + ACCOUNT_WAIT.forgotten + 1;
    for (let n = 0; n < 3; n++) expect(countTry(db, "c@x.example", null, later)).toBe(0);
    S5.add(6);
  });

  it("with a clock set back by 2 hours makes nobody wait longer than 15 minutes", () => {
    for (let n = 0; n < 30; n++) countTry(db, "d@x.example", null, START + n * 16 * MINUTE);
    const end = START + 29 * 16 * MINUTE;
    for (const back of [1, 10, 20, 120, 100_000]) {
      const wait = countTry(db, "d@x.example", null, end - back * MINUTE);
      expect(wait, `${back} minutes back`).toBeLessThanOrEqual((15 * MINUTE) / SECOND);
    }
    S5.add(35);
  });
});

describe("whoever knows the password", () => {
  it("gets in from a browser that has logged in before while strangers hammer on the account", () => {
    hammer(200, 1, START, () => "own@x.example");
    expect(countTry(db, "own@x.example", null, START + 200)).toBeGreaterThan(0);
    expect(countTry(db, "own@x.example", "mark", START + 200)).toBe(0);
    S5.add(2);
  });

  it("waits on a known browser too after 3 wrong ones: a stolen mark is no way round", () => {
    for (let n = 0; n < 3; n++) expect(countTry(db, "e@x.example", "mark", START)).toBe(0);
    expect(countTry(db, "e@x.example", "mark", START)).toBe(15);
    S5.add(4);
  });

  it("takes back what was counted for the account, from everywhere", () => {
    for (const browser of [null, "mark"]) for (let n = 0; n < 3; n++) countTry(db, "f@x.example", browser, START);
    forgetTries(db, "f@x.example", "mark");
    expect(countTry(db, "f@x.example", null, START)).toBe(0);
    expect(countTry(db, "f@x.example", "mark", START)).toBe(0);
    S5.add(8);
  });
});

describe("one password over many accounts", () => {
  it("is slowed after 30: of 500 in 500 s at most 40 are looked at", () => {
    const looked = hammer(500, SECOND, START, (n) => `s${n}@x.example`);
    expect(looked.length).toBeGreaterThanOrEqual(SPRAY_WAIT.free);
    expect(looked.length).toBeLessThanOrEqual(40);
  });

  it("can't be hidden between log-ins of one's own: each takes back its own try and no other", () => {
    const looked: number[] = [];
    for (let n = 0; n < 200; n++) {
      const now = START + n * SECOND;
      if (countTry(db, `v${n}@x.example`, null, now) === 0) looked.push(now);
      if (countTry(db, "mine@x.example", null, now) === 0) forgetTries(db, "mine@x.example", null);
      S5.add(2);
    }
    expect(looked.length).toBeLessThanOrEqual(40);
  });

  it("doesn't count the right ones: 200 log-ins from new browsers keep nobody waiting", () => {
    for (let n = 0; n < 200; n++) {
      expect(countTry(db, `r${n}@x.example`, null, START + n)).toBe(0);
      forgetTries(db, `r${n}@x.example`, null);
      S5.add();
    }
  });

  it("leaves whoever comes back from a known browser alone", () => {
    hammer(100, 1, START, (n) => `t${n}@x.example`);
    expect(countTry(db, "home@x.example", "mark", START + 100)).toBe(0);
    S5.add();
  });
});

it("of 200 sent at once by two connections 3 are looked at", async () => {
  const file = folder.file("tries.db");
  const [one, two] = [openDatabase(file), openDatabase(file)];
  await migrateDb(one);
  const tried = Array.from({ length: 200 }, async (_, n) => countTry(n % 2 ? one : two, "g@x.example", null, START));
  const answers = await Promise.all(tried);
  expect(answers.filter((wait) => wait === 0)).toHaveLength(ACCOUNT_WAIT.free);
  S5.add(200);
  one.close();
  two.close();
});

it("the table of tries names nobody", () => {
  countTry(db, "name@x.example", null, START);
  const rows = JSON.stringify(db.sqlite.prepare("SELECT * FROM sign_in_try").all());
  expect(rows).not.toMatch(/name|example/);
});
