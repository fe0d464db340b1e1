import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { StudentViewer } from "@/app/_server/gate";
import { addShared, cookieOf, familyAt, follow, linkFor, PUBLIC, stateAddress } from "./family-academy";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

const DAY = 24 * 3_600_000;

let academy: PeopleAcademy;
let dot: StudentViewer;
beforeEach(async () => {
  stateAddress(PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot");
});
afterEach(() => {
  academy.remove();
  stateAddress(null);
});

describe("a cookie of a link", () => {
  it("is https-only and bound to the host behind the public address, and isn’t the link’s secret", async () => {
    const { id, token } = linkFor(dot, "mother");
    const secure = await follow(token, new Headers({ host: "range.example" }));
    expect(secure.headers.get("location")).toBe(`/family/${id}`);
    const [line = ""] = secure.headers.getSetCookie();
    expect(line).toMatch(
      /^__Host-proofband-family-[\w-]{22}=[\w-]{43}; Path=\/; HttpOnly; SameSite=Lax; Max-Age=\d+; Secure$/,
    );
    expect(line).not.toContain(token);
    const [plain = ""] = (await follow(token)).headers.getSetCookie();
    expect(plain).toMatch(/^proofband-family-[\w-]{22}=[\w-]{43}; Path=\/; HttpOnly; SameSite=Lax; Max-Age=\d+$/);
    expect(Number(/Max-Age=(\d+)/.exec(plain)?.[1])).toBeLessThanOrEqual((180 * DAY) / 1000);
  });

  it("of one link opens no other, and cut, lengthened or moved it opens nothing", async () => {
    const [one, two] = [linkFor(dot, "mother"), linkFor(dot, "father")];
    const [first, second] = [await cookieOf(one.token), await cookieOf(two.token)];
    const value = first.split("=")[1] ?? "";
    const name = `proofband-family-${one.id}`;
    const dead = [
      second,
      `proofband-family-${two.id}=${value}`,
      `${name}=${value.slice(0, -1)}`,
      `${name}=${value}x`,
      `${name}=`,
      `${name}=${one.token}`,
      `__Host-${first}`,
      "",
    ];
    for (const cookie of dead) expect([cookie, await familyAt(one.id, cookie)]).toEqual([cookie, null]);
    expect(await familyAt(two.id, `proofband-family-${two.id}=${value}`)).toBeNull();
    const both = await familyAt(two.id, `${first}; ${second}`);
    expect([both?.link.label, both?.student.studentId, both?.roles, both?.scope.students]).toEqual([
      "father",
      dot.student.studentId,
      [],
      [dot.student.studentId],
    ]);
  });
});
