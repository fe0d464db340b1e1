/** Which clubs the page of a next film shows, and which form stands on it. */
export interface ShownPlan {
  /** Id of a club group; absent: those of what is awaited, else those in hand. */
  readonly club?: string;
  /** Absent: a new form. */
  readonly draft?: string;
}

/** The address of a student's next film. */
export function planHref(studentId: string, { club, draft }: ShownPlan): string {
  const said = Object.entries({ draft, club }).flatMap(([name, value]) => (value ? [[name, value]] : []));
  const asked = said.length === 0 ? "" : `?${new URLSearchParams(said)}`;
  return `/students/${studentId}/plan${asked}`;
}
