import { requireViewer } from "@/app/_server/gate";

/** Whether the server answers and can read its data. */
export async function GET(): Promise<Response> {
  try {
    await requireViewer();
    return Response.json({ status: "ok" });
  } catch {
    return Response.json({ status: "unavailable" }, { status: 503 });
  }
}
