import { redirect } from "next/navigation";
import { requireStudent } from "../../../../../_server/gate";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly fundamental: string }>;
  readonly searchParams: Promise<{ readonly club?: string }>;
}

/** The address of a fundamental's goal leads to the student's goals, where its form is kept under the student. */
export default async function GoalRoute({ params, searchParams }: Asked) {
  const { studentId, fundamental } = await params;
  await requireStudent("/students/[studentId]/[fundamental]/goal", studentId);
  const { club } = await searchParams;
  redirect(`/students/${studentId}/goals?${new URLSearchParams({ fundamental, ...(club ? { club } : {}) })}`);
}
