import { dictionary } from "@zxcvbn-ts/language-common";
import { describe, expect, it } from "vitest";
import { checkPassword, LONGEST_PASSWORD, SHORTEST_PASSWORD } from "@/app/_server/access/password-rules";
import { cpuTime } from "../../../cpu-time";
import { countCases } from "../../../trust/count-cases";

// The rule: NIST SP 800-63B-4, 3.1.1.2 (length, a list of common ones, no kinds of characters). The list: the common passwords
// of @zxcvbn-ts/language-common.
const S5 = countCases("S5 (unit): passwords that won't do", 60);
const ABOUT = ["Coach Wren", "wren.hill@demo.example", "wren.hill"];

function check(password: string): ReturnType<typeof checkPassword> {
  S5.add();
  return checkPassword(password, ABOUT);
}

describe("a password", () => {
  it(`has ${SHORTEST_PASSWORD} to ${LONGEST_PASSWORD} characters, counted as people count`, () => {
    expect([SHORTEST_PASSWORD, LONGEST_PASSWORD]).toEqual([15, 256]);
    expect(check("correct horses")).toBe("short");
    expect(check("correct horse 1")).toBeNull();
    expect(check("🏌🎯🌳🍎🚲🏠🐦🌲🐟🌙⭐🔥🍋🎈")).toBe("short");
    expect(check("🏌🎯🌳🍎🚲🏠🐦🌲🐟🌙⭐🔥🍋🎈🎻")).toBeNull();
    const long = Array.from({ length: 64 }, (_, n) => `${n} tree `).join("");
    expect(check(long.slice(0, LONGEST_PASSWORD))).toBeNull();
    expect(check(long.slice(0, LONGEST_PASSWORD + 1))).toBe("long");
    expect(check("")).toBe("short");
  });

  it("needs no figure, capital or mark", () => {
    for (const password of ["two larches in the wind", "windy larches twice over", "длинная тихая фраза"])
      expect(check(password)).toBeNull();
  });

  it("isn't one thing typed over and over", () => {
    for (const password of ["aaaaaaaaaaaaaaaa", "abababababababab", "1212121212121212", "aAaAaAaAaAaAaAaA"])
      expect([password, check(password)]).toEqual([password, "monotone"]);
    for (const password of ["1234567890123456", "abcdefghijklmnop", "9876543210987654", "aaaabbbbccccddddeeee"])
      expect([password, check(password)]).toEqual([password, "monotone"]);
    for (const password of ["linnetlinnetlinnet", "PasswordPassword", "qwerty1qwerty1qwerty1", "abcdefghabcdefgh"])
      expect([password, check(password)]).toEqual([password, "monotone"]);
  });

  it("isn't a common one, nor one with figures and marks behind it", () => {
    const listed = (dictionary["passwords-common"] as readonly string[]).filter(
      (each) => each.length >= SHORTEST_PASSWORD,
    );
    expect(listed.length).toBeGreaterThan(0);
    for (const password of listed) expect([password, check(password)]).not.toEqual([password, null]);
    for (const password of ["password1234567890", "Password!!!!!!!!", "sunshine-2031-2031", "1234567890123456"])
      expect([password, check(password)]).not.toEqual([password, null]);
  });

  it("isn't the owner's name or address with a little round it", () => {
    for (const password of [
      "Coach Wren 2031",
      "wren.hill@demo.example",
      "wren.hill wren.hill!",
      "WrenHillWren2031",
      "coachwrencoach1",
    ])
      expect([password, check(password)]).toEqual([password, "personal"]);
    expect(check("a wren builds its nest low")).toBeNull();
  });

  it("is judged without a name as with one, when nothing of it is in there", () => {
    expect(checkPassword("two larches in the wind", [])).toBeNull();
    expect(checkPassword("two larches in the wind", ["", " ", "a"])).toBeNull();
  });

  it(`of ${LONGEST_PASSWORD} characters is judged within 50 ms of a processor, also one made to be slow`, () => {
    for (const password of ["ab".repeat(127) + "c".repeat(2), `${"a".repeat(255)}b`, "abcde".repeat(51)]) {
      // What is slow is so each time; the process tidies its memory now and then.
      const quickest = Math.min(...[1, 2, 3].map(() => cpuTime(() => check(password))));
      expect(quickest).toBeLessThan(50);
    }
  });
});
