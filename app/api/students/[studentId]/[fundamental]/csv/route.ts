import { downloadFundamental } from "../../../../../_server/archive/load-downloads";

interface Asked {
  readonly params: Promise<{ readonly studentId: string; readonly fundamental: string }>;
}

export async function GET(request: Request, { params }: Asked): Promise<Response> {
  const { studentId, fundamental } = await params;
  return downloadFundamental(studentId, fundamental, new URL(request.url).searchParams.get("club") ?? undefined);
}
