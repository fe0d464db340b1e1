import { expect, test } from "vitest";
import { SMALL_GROUP, tellCount } from "@/lib/domain/small-group";

test("A9: of 0 to 4 students of others nothing is counted, of 5 and more everything; one's own always", () => {
  for (let own = 0; own < 4; own++)
    for (let others = 0; others < 2 * SMALL_GROUP; others++) {
      const counted = tellCount(own * 3, others * 7, others);
      expect(counted.told).toBe(others < 5 ? own * 3 : own * 3 + others * 7);
      expect(counted.few).toBe(others > 0 && others < 5 ? "left-out" : "none");
    }
});
