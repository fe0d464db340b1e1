import { describe, expect, it } from "vitest";
import { SMALL_GROUP } from "@/lib/domain/small-group";
import { type CountedGroup, type CountedPart, toldGroups } from "@/lib/domain/told-groups";
import { manyCases } from "@/tests/many-cases";

/** Students of one club each, by number. */
const parts = (...ids: readonly number[]): CountedPart[] =>
  ids.map((id) => ({ key: `s${id}/iron`, studentId: `s${id}` }));
const group = (id: string, ...ids: readonly number[]): CountedGroup => ({ id, parts: parts(...ids) });
const upTo = (last: number, first = 1): number[] => Array.from({ length: last - first + 1 }, (_, at) => first + at);
const told = (whole: number, ...kinds: readonly (readonly CountedGroup[])[]) => {
  const found = toldGroups(parts(...upTo(whole)), kinds);
  return found === null ? null : [...found];
};

describe("groups of which counts are told", () => {
  it("of four students in all nothing is told, of five the whole", () => {
    expect(told(4)).toBeNull();
    expect(told(5)).toEqual([]);
  });

  it("where one group is too small the next smallest is hidden too, else it is what is left", () => {
    expect(told(18, [group("big", ...upTo(8)), group("mid", ...upTo(15, 9)), group("few", 16, 17, 18)])).toEqual([
      "big",
    ]);
    expect(told(10, [group("all", ...upTo(10))])).toEqual(["all"]);
    expect(told(12, [group("nine", ...upTo(9)), group("few", 10, 11, 12)])).toEqual([]);
  });

  it("two small groups that are five together hide one another, and nothing else goes", () => {
    expect(told(13, [group("big", ...upTo(8)), group("two", 9, 10), group("three", 11, 12, 13)])).toEqual(["big"]);
  });

  it("a group of one kind that lies within one of another, all but two, is hidden", () => {
    const hands = [group("left", ...upTo(9)), group("right", ...upTo(20, 10))];
    const ages = [group("young", ...upTo(7)), group("old", ...upTo(20, 8))];
    expect(told(20, hands, ages)).toEqual(["left", "right"]);
  });

  it("three groups that leave two students out by adding and subtracting are not all told", () => {
    // a + b − c is the students 1 and 2 alone.
    const a = group("a", 1, 2, ...upTo(9, 3));
    const b = group("b", ...upTo(20, 10));
    const c = group("c", ...upTo(20, 3));
    expect(told(30, [a], [b], [c])).toHaveLength(2);
  });

  it("a student's second club is no way to the student: counts of films and of students are both looked at", () => {
    const film = (student: number, club: string): CountedPart => ({
      key: `s${student}/${club}`,
      studentId: `s${student}`,
    });
    const irons = upTo(10).map((each) => film(each, "iron"));
    const woods = [...upTo(5), 11, 12].map((each) => film(each, "wood"));
    const clubs = [
      { id: "iron", parts: irons },
      { id: "wood", parts: woods },
    ];
    // By films the two are all there is; by students those without irons are 11 and 12.
    expect([...(toldGroups([...irons, ...woods], [clubs]) ?? [])]).toEqual(["wood"]);
  });
});

/** Numbers from 0 to 1 that look like chance: Park and Miller 1988, the minimal standard. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

function simulated(seed: number) {
  const next = chance(seed * 7919 + 1);
  const pick = (shares: readonly number[]): number => {
    let left = next() * shares.reduce((sum, share) => sum + share, 0);
    return shares.findIndex((share) => {
      left -= share;
      return left < 0;
    });
  };
  const size = 12 + Math.floor(next() * 70);
  const students = upTo(size).map((id) => ({
    ...{ id, hand: pick([9, 1]), age: pick([1, 3, 6, 3, 2]), coach: pick([8, 5, 2, 1]) },
    clubs: [0, 1, 2].filter((club) => club === 0 || next() < 0.2),
  }));
  const partsOf = (those: typeof students, club?: number): CountedPart[] =>
    those.flatMap(({ id, clubs }) =>
      clubs.flatMap((each) =>
        club === undefined || each === club ? [{ key: `${id}/${each}`, studentId: `${id}` }] : [],
      ),
    );
  const kinds = [
    ...(["hand", "age", "coach"] as const).map((kind) =>
      [...new Set(students.map((each) => each[kind]))].map((value) => ({
        id: `${kind}-${value}`,
        parts: partsOf(students.filter((each) => each[kind] === value)),
      })),
    ),
    [0, 1, 2].map((club) => ({ id: `club-${club}`, parts: partsOf(students, club) })),
  ];
  return { whole: partsOf(students), kinds };
}

/** Of a sum of told groups, how many students it counts, if each part is counted once or not at all; null: some are counted otherwise. */
function countedOnce(taken: readonly (readonly [CountedGroup, number])[], of: "key" | "studentId"): number | null {
  const times = new Map<string, number>();
  const students = new Map<string, string>();
  for (const [{ parts: own }, sign] of taken)
    for (const name of new Map(own.map((part) => [part[of], part.studentId]))) {
      times.set(name[0], (times.get(name[0]) ?? 0) + sign);
      students.set(...name);
    }
  const found = new Set<string>();
  for (const [name, count] of times) {
    if (count !== 0 && count !== 1) return null;
    if (count === 1) found.add(students.get(name) ?? "");
  }
  return found.size;
}

describe("a simulated academy", () => {
  it("no one to four students can be read or worked out from any two or three told counts", () => {
    let answered = 0;
    for (let seed = 1; seed <= manyCases(160); seed++) {
      const { whole, kinds } = simulated(seed);
      const ids = toldGroups(whole, kinds);
      const answers = [{ id: "", parts: whole }, ...kinds.flat().filter(({ id }) => ids?.has(id))];
      answered += answers.length;
      const signs = [-1, 0, 1];
      for (const [at, first] of answers.entries())
        for (const [place, second] of answers.entries())
          for (const third of answers.slice(place + 1))
            for (const two of signs)
              for (const three of signs)
                for (const of of ["key", "studentId"] as const) {
                  const count = countedOnce(
                    [[first, 1], ...(place === at ? [] : [[second, two] as const]), [third, three]],
                    of,
                  );
                  const small = count !== null && count > 0 && count < SMALL_GROUP;
                  if (small)
                    expect({ seed, first: first.id, second: second.id, third: third.id, two, three, count }).toBe(
                      "told",
                    );
                }
    }
    // A rule that tells nothing would pass as well: of at most 14 groups and everybody a good part is told.
    expect(answered).toBeGreaterThan(5 * manyCases(160));
  });
});
