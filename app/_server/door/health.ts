import { ACADEMY_CHOICES, findAcademyDatabase } from "../database";

/** Whether the data that this server keeps can be read; nothing of them is answered. */
export async function answerHealth(): Promise<Response> {
  try {
    for (const choice of ACADEMY_CHOICES) await findAcademyDatabase(choice);
    return Response.json({ status: "ok" });
  } catch {
    return Response.json({ status: "unavailable" }, { status: 503 });
  }
}
