import { downloadAcademyArchive } from "../../_server/archive/load-take-out";

export async function GET(): Promise<Response> {
  return downloadAcademyArchive();
}
