/** A test by the lot and a draw of a student in it, as rows. */
export function fairRows(
  studentId: string,
  { academyId, who, at }: { readonly academyId: string; readonly who: string; readonly at: string },
): readonly (readonly [string, Readonly<Record<string, string | number>>])[] {
  const test = `test-${studentId}`;
  const plan = { least: 4, spread: 5, students: 40, looks: 2, days: 42, seed: "ab", day: "2031-01-04" };
  const drills = { first_drill_id: "a", second_drill_id: "b" };
  const place = { club_group: "iron", coach_id: "robin", place: 0, arm: 1, day: "2031-01-04" };
  return [
    [
      "fair_test",
      { id: test, academy_id: academyId, fundamental_id: "hinge", ...drills, ...plan, who: "", recorded_at: at },
    ],
    [
      "fair_allocation",
      { id: `draw-${studentId}`, test_id: test, student_id: studentId, ...place, who, recorded_at: at },
    ],
  ];
}
