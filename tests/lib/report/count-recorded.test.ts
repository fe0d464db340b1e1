import fc from "fast-check";
import { expect, test } from "vitest";
import { countRecorded, type RecordedFilm } from "@/lib/report/count-recorded";
import { FILM_STATES } from "@/lib/report/film-state";

const film = (studentId: string, state: RecordedFilm["state"] = "counted"): RecordedFilm => ({ studentId, state });

test("each student who was filmed is on a drill, left without one on purpose, or not recorded; nobody else counts", () => {
  const films = [film("a"), film("a", "phone"), film("b"), film("c", "in-lesson"), film("d")];
  expect(countRecorded(films, new Set(["a", "x"]), new Set(["a", "b", "y"]))).toEqual({
    ...{ filmed: 4, drilled: 1, waiting: 1, neither: 2, films: 5, counted: 3 },
  });
});

test("the parts make up the whole, whatever was filmed", () => {
  const ids = fc.constantFrom("a", "b", "c", "d", "e");
  const films = fc.array(fc.record({ studentId: ids, state: fc.constantFrom(...FILM_STATES) }));
  const some = fc.uniqueArray(ids).map((list) => new Set(list));
  fc.assert(
    fc.property(films, some, some, (all, drilled, waiting) => {
      const counts = countRecorded(all, drilled, waiting);
      expect(counts.drilled + counts.waiting + counts.neither).toBe(counts.filmed);
      expect([counts.filmed <= counts.films, counts.counted <= counts.films]).toEqual([true, true]);
      // Two halves of the students count as much as all of them.
      const half = (of: (id: string) => boolean) =>
        countRecorded(
          all.filter(({ studentId }) => of(studentId)),
          drilled,
          waiting,
        );
      expect(half((id) => id < "c").neither + half((id) => id >= "c").neither).toBe(counts.neither);
    }),
  );
});
