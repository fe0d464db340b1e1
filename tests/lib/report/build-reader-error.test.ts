import { describe, expect, it } from "vitest";
import { buildReaderErrorPage } from "@/lib/report/build-reader-error";
import { wordsFor } from "@/lib/words/catalogue";
import { madePairs } from "../verdict/made-rereads";
import { madeSource, plainly } from "./made-reader-error";

const words = wordsFor("en");
const TEN = [1, -1, 2, -2, 0.5, -0.5, 1, -1, 1.5, -1.5];
const pageOf = (pairs: ReturnType<typeof madePairs>) => plainly(buildReaderErrorPage(words, madeSource(pairs)));

describe("the results of one fundamental", () => {
  it("with nothing read again say so, how many pairs are missing, and show no empty table or drawing", () => {
    const page = pageOf([]);
    expect(page.title).toBe("Wrist hinge: the error of reading isn’t measured yet");
    expect(page.lede).toContain("10 more pairs");
    expect(page.judged.heading).toBe("Verdicts take 1.5°, customary: 10 pairs are missing");
    expect(page.film.heading).toBe("Nothing was read again yet");
    expect([page.film.table, page.film.plot, page.still.table, page.two.table, page.judged.table]).toEqual(
      Array.from({ length: 5 }, () => null),
    );
  });
  it("ten pairs: typical sqrt(17 / 18) = 1.0 with 0.69 and 1.83 of it, no bias 0.0 ± 1.0, verdicts take 1.1 from 2 March on", () => {
    const page = pageOf(madePairs(TEN));
    expect(page.title).toBe("Wrist hinge: a reading is off by about 1.1°");
    expect(page.judged.heading).toBe("Verdicts take 1.1°, films from 2 Mar 2031 on");
    expect(page.film.table?.rows.map((row) => row.cells)).toEqual([
      ["all readers", "10", "0.0 ± 1.0°", "1.0°, 0.7 to 1.8°", "0.9°", "1.1°"],
      ["Wren", "10", "0.0 ± 1.0°", "1.0°, 0.7 to 1.8°", "0.9°", "1.0°"],
    ]);
    expect(page.film.heading).toBe("10 pairs, and no bias is shown: 0.0 ± 1.0°");
  });
  it("a bias whose interval leaves 0 out is named by its way", () => {
    expect(pageOf(madePairs(TEN.map((d) => d + 3))).film.heading).toContain("read higher the second time: +3.0 ± 1.0°");
    expect(pageOf(madePairs(TEN.map((d) => d - 3))).film.heading).toContain("read lower the second time: −3.0 ± 1.0°");
  });
  it("the same still stands apart: shown, with no column of what verdicts take", () => {
    const page = pageOf(madePairs(TEN, { level: "a" }));
    expect(page.still.table?.columns).toHaveLength(5);
    expect(page.film.table).toBeNull();
    expect(page.judged.heading).toContain("customary");
  });
  it("two readers: bias and limits of agreement, the first named less the second", () => {
    const page = pageOf(
      madePairs(
        TEN.map((d) => d + 2),
        { reader: "Lark" },
      ),
    );
    expect(page.two.table?.rows[0]?.cells.slice(0, 3)).toEqual(["Lark less Wren", "10", "+2.0 ± 1.0°"]);
    // 2 ± 1.96 sd, sd = sqrt(17 / 9) = 1.374.
    expect(page.two.table?.rows[0]?.cells[3]).toMatch(/^−0\.7 ± /);
    expect(page.two.table?.rows[0]?.cells[4]).toMatch(/^\+4\.7 ± /);
    expect(page.two.heading).toMatch(/^Readers differ by about \d\.\d°$/);
  });
});
